using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>Reads phrase files into a book and holds them against the sheets; every fault at once.</summary>
public static class PhraseReader
{
    private const string Form = "write 'fact is value: sentence', 'fact: sentence with {number}' for a number, '? decision: question', 'else decision: answer | answer', 'setting: sentence' or 'begins with: fact | fact'";

    /// <summary>Reads all phrase files. What cannot be read goes to <paramref name="findings"/>; the rest still counts.</summary>
    public static PhraseBook Read(IEnumerable<SourceText> texts, Codebook book, List<Finding> findings)
    {
        var phrases = new PhraseBook();
        foreach (var text in texts) File(phrases, text, book, findings);
        return phrases;
    }

    private static void File(PhraseBook phrases, SourceText source, Codebook book, List<Finding> findings)
    {
        string? name = null;
        Sheet? sheet = null;
        void Fault(FindingKind kind, int line, string message) => findings.Add(new(kind, source.File, line, message));
        foreach (var line in SourceLine.Of(source.Text))
        {
            if (line.Text.StartsWith("Phrases:", StringComparison.Ordinal))
            {
                name = line.Text[8..].Trim();
                sheet = book.Sheet(name);
                if (sheet is null && name != PhraseBook.Everywhere) Fault(FindingKind.UnknownWord, line.Number, $"there is no sheet '{name}'; {Words.Offer(name, [.. book.Sheets.Select(s => s.Name)])}");
                continue;
            }
            if (name is null) { Fault(FindingKind.UnreadableLine, line.Number, "the file names no sheet; begin with 'Phrases: sheet'"); return; }
            if (sheet is null && name != PhraseBook.Everywhere) return;
            var colon = line.Text.IndexOf(": ", StringComparison.Ordinal);
            if (colon <= 0) { Fault(FindingKind.UnreadableLine, line.Number, $"cannot read '{line.Short}'; {Form}"); continue; }
            var (key, rest) = (line.Text[..colon].Trim(), line.Text[(colon + 2)..].Trim());
            var fresh = true;
            if (key.StartsWith("? ", StringComparison.Ordinal))
            {
                if (sheet is not null && !Decision(sheet, key[2..], line.Number, Fault)) continue;
                fresh = phrases.Asking(name, key[2..], rest);
            }
            else if (key.StartsWith("else ", StringComparison.Ordinal))
            {
                if (sheet is null || !Decision(sheet, key[5..], line.Number, Fault)) continue;
                fresh = phrases.Other(name, key[5..], [.. rest.Split('|').Select(a => a.Trim())]);
            }
            else if (key.StartsWith("caution ", StringComparison.Ordinal) && sheet is null)
            {
                if (book.Sheets.All(s => !Words.Same(s.Group, key[8..]))) Fault(FindingKind.UnknownWord, line.Number, $"there is no group '{key[8..]}'; {Words.Offer(key[8..], [.. book.Sheets.Select(s => s.Group).Distinct()])}");
                fresh = phrases.Warn(key[8..], rest);
            }
            else if (key == "setting" && sheet is not null) fresh = phrases.Set(name, rest);
            else if (key == "begins with" && sheet is not null)
            {
                List<string> facts = [.. rest.Split('|').Select(f => f.Trim())];
                foreach (var unknown in facts.Where(f => !sheet.Facts.Any(x => Words.Same(x.Name, f)))) Fault(FindingKind.UnknownWord, line.Number, $"'{sheet.Name}' has no fact '{unknown}'; {Words.Offer(unknown, [.. sheet.Facts.Select(f => f.Name)])}");
                fresh = phrases.Lead(name, facts);
            }
            else if (key.StartsWith("unit ", StringComparison.Ordinal) && rest.Split('|') is [var one, var many]) phrases.Unit(key[5..], one.Trim(), many.Trim());
            else if (sheet is not null && Known(sheet, key, rest, line.Number, Fault)) fresh = phrases.Say(name, key, rest);
            if (!fresh) Fault(FindingKind.ImpossibleValue, line.Number, $"'{key}' has a sentence already");
        }
    }

    private static bool Decision(Sheet sheet, string decision, int line, Action<FindingKind, int, string> fault)
    {
        if (sheet.Decisions.Any(d => Words.Same(d.Name, decision))) return true;
        fault(FindingKind.UnknownWord, line, $"'{sheet.Name}' decides no '{decision}'; {Words.Offer(decision, [.. sheet.Decisions.Select(d => d.Name)])}");
        return false;
    }

    private static bool Known(Sheet sheet, string said, string sentence, int line, Action<FindingKind, int, string> fault)
    {
        var number = sentence.Contains("{number}", StringComparison.Ordinal) || sentence.Contains("{n}", StringComparison.Ordinal);
        if (sheet.Facts.FirstOrDefault(f => Words.Same(f.Name, said)) is { } fact)
        {
            if (fact.Band is not null && number) return true;
            fault(FindingKind.UnreadableLine, line, fact.Band is null ? $"'{fact.Name}' is no number; {Form}" : $"the sentence for '{fact.Name}' has no place for its number; write {{number}} for the number with its unit, or {{n}} for the number alone");
            return false;
        }
        if (sheet.Facts.Any(f => f.Values.Any(v => Words.Same(said, $"{f.Name} is {v}")))) return true;
        fault(FindingKind.UnknownWord, line, $"'{said}' is no fact of '{sheet.Name}' with one of its values; {Words.Offer(said, [.. sheet.Facts.SelectMany(f => f.Values.Select(v => $"{f.Name} is {v}"))])}");
        return false;
    }

    /// <summary>What has no sentence yet, sheet by sheet, and sentences that stand for two facts.</summary>
    public static IEnumerable<Finding> Missing(PhraseBook phrases, Codebook book)
    {
        foreach (var sheet in book.Sheets.OrderBy(s => s.File, StringComparer.Ordinal))
        {
            var known = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
            Finding Fault(int line, string message) => new(FindingKind.BlankCell, sheet.File, line, message);
            foreach (var fact in sheet.Facts)
            {
                if (fact.Band is { Edges.Count: > 0 })
                {
                    if (!phrases.HasNumber(sheet.Name, fact.Name)) yield return Fault(fact.Line, $"codes/phrases has no sentence for '{fact.Name}'; {Form}");
                    continue;
                }
                foreach (var value in fact.Values)
                    if (phrases.Fact(sheet.Name, fact.Name, value) is not { } sentence) yield return Fault(fact.Line, $"codes/phrases has no sentence for '{fact.Name} is {value}'; {Form}");
                    else if (!known.TryAdd(sentence, $"{fact.Name} is {value}")) yield return Fault(fact.Line, $"codes/phrases says '{sentence}' for '{fact.Name} is {value}' and for '{known[sentence]}'; they have to be told apart");
            }
            foreach (var decision in sheet.Decisions)
                if (!phrases.Asks(sheet.Name, decision.Name)) yield return Fault(decision.Line, $"codes/phrases has no question for '{decision.Name}'; {Form}");
        }
    }
}
