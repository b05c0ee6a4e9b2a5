using Umpirage.District.Gear;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Web;

/// <summary>A list of gear as it stands at the desk, and what comes of every piece.</summary>
/// <param name="Pieces">The pieces in a list's own text; a piece with a fault has not been added.</param>
public sealed record GearList(string Pieces, GearFile? File, IReadOnlyList<Looked> Looked, IReadOnlyList<string> Faults)
{
    public const int Longest = 6000, MostTicks = 40;

    private const string Here = "this list";

    /// <param name="piece">Lines of one more piece; empty when there is none.</param>
    public static GearList Of(Codebook book, GearAsked asked, string piece, DateOnly today)
    {
        var pieces = asked.Pieces.Trim('\n');
        var all = piece == "" ? pieces : pieces == "" ? piece : $"{pieces}\n{piece}";
        if (all.Trim() == "") return new("", null, [], []);
        List<string> head = [$"Gear: {asked.For}", $"code: {asked.Code}@{CodeAddress.Day(asked.On)}"];
        var findings = new List<Finding>();
        var file = GearFile.Read(Here, string.Join('\n', head) + "\n" + all, findings);
        var looked = Inspector.Inspect(book, file, Here, today, findings);
        List<string> faults = [.. findings.OrderBy(f => f.Line).Select(f => f.Line > head.Count && piece == "" ? $"line {f.Line - head.Count}: {f.Message}" : f.Message).Distinct()];
        return faults.Count > 0 || looked is null ? new(piece == "" ? all : pieces, null, [], faults) : new(all, file, looked, []);
    }

    /// <summary>A piece as a list writes it, from what was ticked, measured and said.</summary>
    /// <param name="seen">What was seen in the finder's words, by the fact it was ticked under.</param>
    public static string Piece(string name, IReadOnlyList<string> ticks, IReadOnlyList<(string Fact, string Number, string Unit)> numbers, IReadOnlyDictionary<string, string> seen)
    {
        // brackets and line ends are the list's own signs
        static string Clean(string text) => string.Join(' ', text.Split(['(', ')', '\r', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries));
        string With(string line, string fact) => seen.GetValueOrDefault(fact) is { Length: > 0 } words ? $"  {line} ({Clean(words)})" : $"  {line}";
        List<string> lines = [Clean(name)];
        const string Marks = "marks: ";
        List<string> marks = [.. ticks.Where(t => t.StartsWith(Marks, StringComparison.Ordinal)).Select(t => t[Marks.Length..])];
        if (marks.Count > 0) lines.Add(With(Marks + string.Join(", ", marks), GearQuestion.MarksFact));
        foreach (var tick in ticks.Where(t => t.Contains(" is ", StringComparison.Ordinal) && !t.StartsWith(Marks, StringComparison.Ordinal))) lines.Add(With(tick, tick[..tick.IndexOf(" is ", StringComparison.Ordinal)]));
        foreach (var (fact, number, unit) in numbers.Where(n => n.Number != "")) lines.Add(With($"{fact} is {Clean(number)}{(number.Any(char.IsLetter) ? "" : " " + unit)}", fact));
        return string.Join('\n', lines);
    }
}
