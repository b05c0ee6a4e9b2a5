using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Gear;

/// <summary>What the marks on a bat are under one code and day: its own, an old one of its own, another body's, or none.</summary>
public static class BatMarks
{
    private const string Sheet = "bat", Current = "current mark";

    /// <summary>The mark the code asks for on its day.</summary>
    public static string Asked(Code code) => code.Value(Parameter(code))!.Value;

    private static Parameter Parameter(Code code) => code.Book.Sheet(Sheet)!.Parameters.First(p => p.Name == Current);

    /// <summary>The marks that may be read on a bat, whoever asks for them.</summary>
    public static IEnumerable<string> Readable(Code code) => Parameter(code).Values.Where(v => v != Wood);

    /// <summary>The marks read, as a value of the sheet's "marks shown"; null, with the reason, when one is no mark anybody knows.</summary>
    public static string? Shown(Code code, IReadOnlyList<string> marks, out string fault)
    {
        fault = "";
        var parameter = Parameter(code);
        if (marks is ["none"]) return "no mark";
        foreach (var mark in marks)
            if (!parameter.Values.Contains(mark, StringComparer.OrdinalIgnoreCase)) { fault = $"'{mark}' is no mark; {Words.Offer(mark, [.. Readable(code), "none"])}"; return null; }
        var asked = Asked(code);
        var (own, old) = (marks.Any(m => Words.Same(m, asked)), marks.Any(m => Earlier(code, parameter).Contains(m, StringComparer.OrdinalIgnoreCase)));
        return (own, old) switch { (true, true) => "current mark beside an old one", (true, false) => "current mark", (false, true) => "old mark only", _ => "mark of another body only" };
    }

    private const string Wood = "one piece of wood";

    /// <summary>What the same code asked for on earlier days and asks for no more.</summary>
    private static IEnumerable<string> Earlier(Code code, Parameter parameter)
    {
        var days = parameter.Lines.Select(l => l.Scope.Until ?? l.Scope.From?.AddDays(-1)).OfType<DateOnly>().Where(d => d < code.Date).Distinct();
        foreach (var day in days)
            if (Code.Of(code.Book, code.Address.At(day), day, []) is { } then && then.Value(parameter) is { } value && !Words.Same(value.Value, Asked(code))) yield return value.Value;
    }

    /// <summary>The books and divisions that ask for a mark on the code's day, in words; empty when none does.</summary>
    public static IReadOnlyList<string> AskedElsewhere(Code code, string mark)
    {
        var roster = code.Book.Roster;
        var names = new List<string>();
        foreach (var body in roster.Bodies.Where(b => b.Game == code.Game))
        {
            var divisions = roster.Divisions.Where(d => Code.Of(code.Book, new(code.Game, d, [new(body.Name, [])], code.Date), code.Date, []) is { } other && Words.Same(Asked(other), mark)).ToList();
            if (divisions.Count == roster.Divisions.Count) names.Add(body.Title);
            else if (divisions.Count > 0) names.Add($"{body.Title} ({string.Join(", ", divisions)})");
        }
        return names;
    }
}
