using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Plays;

/// <summary>How a play of the casebook came out: ruled as published, or in which ways not.</summary>
public sealed record Outcome(Play Play, Ruling? Ruling, IReadOnlyList<string> Misses)
{
    public bool AsPublished => Misses.Count == 0;
}

/// <summary>Rules plays and holds them against what was published.</summary>
public static class Casebook
{
    public static Outcome Hold(Codebook book, Play play, DateOnly today)
    {
        var findings = new List<Finding>();
        if (Rule(book, play, today, findings) is not { } ruling) return new(play, null, [.. findings.Select(f => f.ToString())]);
        var misses = findings.Select(f => f.ToString()).ToList();
        if (!ruling.IsPossible) misses.Add(ruling.InWords);
        else if (play.Expect.Count == 0) misses.Add($"{play.File}: nothing is expected");
        else misses.AddRange(play.Expect.SelectMany(e => Miss(play, ruling, e)));
        return new(play, ruling, misses);
    }

    /// <summary>The ruling on a play; null, with every reason, when its code, sheet or words cannot be read.</summary>
    public static Ruling? Rule(Codebook book, Play play, DateOnly today, List<Finding> findings, string? otherCode = null)
    {
        if (Table(book, otherCode ?? play.Code, play.Sheet, today, play.File, findings) is not { } table) return null;
        var before = findings.Count;
        var situation = Timeline.Tell(Situation.Read(table.Sheet, play.File, play.Given, findings), play.File, play.Happened, findings);
        return findings.Count > before ? null : Usual.Rule(table, situation, [.. play.Happened.Select(h => h.Text)]);
    }

    /// <summary>The worked-out sheet for an address; null with the reasons.</summary>
    public static Table? Table(Codebook book, string address, string sheetName, DateOnly today, string file, List<Finding> findings)
    {
        void Fault(string message) => findings.Add(new(FindingKind.UnknownWord, file, 0, message));
        if (book.Sheet(sheetName) is not { } sheet) { Fault($"there is no sheet '{sheetName}'; {Words.Offer(sheetName, [.. book.Sheets.Select(s => s.Name)])}"); return null; }
        if (Code(book, address, today, Fault) is not { } code) return null;
        if (!sheet.Speaks(code.Game)) { Fault($"'{sheet.Name}' is for {sheet.OnlyFor} only"); return null; }
        if (book.Bind(sheet, code.Stack, findings) is not { } bound || CodeSheet.Of(bound, code, findings) is not { } under) return null;
        var table = Codes.Table.Of(under);
        if (table.Faults.Count > 0 || table.TooEntangled) { Fault($"the sheet '{sheet.Name}' has gaps or conflicts under {code.Address}; run check"); return null; }
        return table;
    }

    /// <summary>Takes a code by its address or by the name under which a league plays it, with or without a date.</summary>
    public static Code? Code(Codebook book, string address, DateOnly today, Action<string> fault)
    {
        var at = address.LastIndexOf('@');
        var (name, day) = at < 0 ? (address, "") : (address[..at], address[at..]);
        if (book.Roster.PlayedAs.TryGetValue(name.Trim(), out var played)) address = played + day;
        if (CodeAddress.Read(address) is not { } read) { fault($"'{address}' is not a code; {(Words.Near(name.Trim(), book.Roster.PlayedAs.Keys) is { Count: > 0 } near ? $"{Words.Meant(near)} Or " : "")}write {CodeAddress.Form}"); return null; }
        var faults = new List<string>();
        var code = Codes.Code.Of(book, read, today, faults);
        foreach (var f in faults) fault(f);
        return code;
    }

    private static IEnumerable<string> Miss(Play play, Ruling ruling, Expected expected)
    {
        var place = $"{play.File}, line {expected.Line}: ";
        if (ruling.Find(expected.Decision) is not { } decided)
        {
            yield return place + $"the sheet does not decide '{expected.Decision}'; {Words.Offer(expected.Decision, [.. ruling.Decisions.Select(d => d.Term.Name)])}";
            yield break;
        }
        if (decided.Term.ValueIndex(expected.Value) < 0) yield return place + $"'{expected.Decision}' has no value '{expected.Value}'; {Words.Offer(expected.Value, decided.Term.Values)}";
        else if (decided.Values.Count > 1) yield return place + $"{decided.Term.Name} is still open: {Words.Or(decided.Values)}; published: {expected.Value}; ask '{Questions.Next(ruling.Table, ruling.Situation)?.Name}'";
        else if (!Words.Same(decided.Values[0], expected.Value)) yield return place + $"{decided.Term.Name} is {decided.Values[0]} by {Words.Or([.. decided.By.Select(b => b.Id)])}; published: {expected.Value}";
        else if (expected.By is { } by && !decided.By.Any(b => Words.Same(b.Id, by))) yield return place + $"{decided.Term.Name} is {expected.Value} by {Words.Or([.. decided.By.Select(b => b.Id)])}, not by {by}";
    }
}
