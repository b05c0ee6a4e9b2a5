using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Finder;

/// <summary>A way in which somebody asked about a subject, and the facts the words state.</summary>
public sealed record AskedQuestion(string Sheet, string Text, int Line)
{
    public List<AskedFact> Facts { get; } = [];
}

/// <summary>A fact that a question states, and the very words that state it.</summary>
public sealed record AskedFact(string Fact, string Value, string Words, int Line);

/// <summary>Reads .asked files: "Asked: sheet", then questions, and under each "fact is value: words". Every fault at once.</summary>
public static class AskedReader
{
    public static IReadOnlyList<AskedQuestion> Read(string file, string text, Func<string, Sheet?> find, IReadOnlyList<string> sheets, List<Finding> findings)
    {
        var questions = new List<AskedQuestion>();
        Sheet? sheet = null;
        var named = false;
        void Fault(FindingKind kind, int line, string message) => findings.Add(new(kind, file, line, message));
        using var reader = new StringReader(text);
        for (var number = 1; reader.ReadLine() is { } raw; number++)
        {
            var line = Words.Tidy(raw);
            if (line.Length == 0 || line.StartsWith("# ", StringComparison.Ordinal)) continue; // a player's number begins with #, too
            if (!named)
            {
                named = true;
                if (!line.StartsWith("Asked:", StringComparison.Ordinal)) { Fault(FindingKind.UnreadableLine, number, "the file does not say whose questions these are; begin with 'Asked: sheet'"); return questions; }
                var name = line["Asked:".Length..].Trim();
                sheet = find(name);
                if (sheet is null) { Fault(FindingKind.UnknownWord, number, $"there is no sheet '{name}'; {Words.Offer(name, sheets)}"); return questions; }
                continue;
            }
            var inset = raw.TakeWhile(char.IsWhiteSpace).Count();
            if (inset >= 4 && questions.Count == 0) Fault(FindingKind.UnreadableLine, number, "a fact stands before any question; write the question above it, two spaces in");
            else if (inset >= 4) FactLine(sheet!, questions[^1], line, number, Fault);
            else if (inset >= 2) questions.Add(new(sheet!.Name, line, number));
            else Fault(FindingKind.UnreadableLine, number, $"cannot read '{new SourceLine(number, line).Short}'; a question stands two spaces in, and its facts four");
        }
        if (!named) Fault(FindingKind.UnreadableLine, 0, "the file does not say whose questions these are; begin with 'Asked: sheet'");
        return questions;
    }

    private static void FactLine(Sheet sheet, AskedQuestion question, string line, int number, Action<FindingKind, int, string> fault)
    {
        var fact = sheet.Facts.Where(f => line.StartsWith(f.Name + " is ", StringComparison.OrdinalIgnoreCase)).MaxBy(f => f.Name.Length);
        if (fact is null)
        {
            var cut = line.IndexOf(" is ", StringComparison.Ordinal);
            if (cut < 0) fault(FindingKind.UnreadableLine, number, $"cannot read '{new SourceLine(number, line).Short}'; write 'fact is value: words of the question'");
            else fault(FindingKind.UnknownWord, number, $"'{sheet.Name}' has no fact '{line[..cut]}'; {Words.Offer(line[..cut], [.. sheet.Facts.Select(f => f.Name)])}");
            return;
        }
        var rest = line[(fact.Name.Length + 4)..];
        var value = fact.Values.Where(v => rest.StartsWith(v + ":", StringComparison.OrdinalIgnoreCase)).MaxBy(v => v.Length);
        if (value is null)
        {
            var typed = rest.Split(':')[0];
            fault(FindingKind.UnknownWord, number, rest.Contains(':')
                ? $"'{fact.Name}' has no value '{typed}'; {Words.Offer(typed, fact.Values)}"
                : $"no words say that {fact.Name} is {typed}; add a colon and the words of the question");
            return;
        }
        var words = rest[(value.Length + 1)..].Trim();
        if (words == "") fault(FindingKind.BlankCell, number, $"no words say that {fact.Name} is {value}; add the words of the question behind the colon");
        else if (!question.Text.Contains(words, StringComparison.Ordinal)) fault(FindingKind.UnknownWord, number, $"the words '{words}' do not stand in the question above; copy them letter for letter");
        else if (question.Facts.FirstOrDefault(f => f.Fact == fact.Name) is { } twice && twice.Value != value)
            fault(FindingKind.ImpossibleValue, number, $"{fact.Name} is {value} here and {twice.Value} in line {twice.Line}");
        else question.Facts.Add(new(fact.Name, value, words, number));
    }
}
