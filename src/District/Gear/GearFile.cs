using Umpirage.Rules.Ground;

namespace Umpirage.District.Gear;

/// <summary>Something found on a piece of gear, in the words of its sheet ("bat condition is damaged"), and what was seen, in the finder's own.</summary>
public sealed record Remark(string Said, string Seen, int Line);

/// <summary>A piece of gear that was looked over.</summary>
public sealed record GearItem(GearKind Kind, string Name, int Line)
{
    public List<Remark> Remarks { get; } = [];

    /// <summary>The approval marks that can be read; null when nobody wrote any down.</summary>
    public IReadOnlyList<string>? Marks { get; set; }

    public string MarksSeen { get; set; } = "";
}

/// <summary>Gear looked over before or in a game, as somebody typed it: the code, when it was found, and the pieces.</summary>
public sealed record GearFile(string Title, string Code, string Found, IReadOnlyList<GearItem> Items)
{
    private const string Form = "a piece stands at the line's beginning ('bat A'), what was found on it two spaces in ('bat condition is damaged (a dent you can feel)', 'marks: BBCOR .50', 'length is 30 in')";

    /// <summary>Reads a list of gear. Every line that cannot be used is a finding; the rest is still there to be looked at.</summary>
    public static GearFile Read(string file, string text, List<Finding> findings)
    {
        var before = findings.Count;
        string title = "", code = "", found = "";
        var items = new List<GearItem>();
        var astray = false;
        void Fault(FindingKind kind, int line, string message) => findings.Add(new(kind, file, line, message));
        using var reader = new StringReader(text);
        for (var number = 1; reader.ReadLine() is { } raw; number++)
        {
            var line = Words.Tidy(raw);
            if (line == "" || line[0] == '#') continue;
            var colon = line.IndexOf(':');
            var (key, value) = colon < 0 ? ("", "") : (line[..colon].Trim(), line[(colon + 1)..].Trim());
            // what stands under a line that could not be read is not a second fault
            if (astray && char.IsWhiteSpace(raw[0])) continue;
            if (!char.IsWhiteSpace(raw[0]))
            {
                astray = false;
                switch (key)
                {
                    case "Gear": title = value; continue;
                    case "code": code = value; continue;
                    case "found": found = value; continue;
                }
                if (GearKind.At(line) is not { } kind) { astray = true; Fault(FindingKind.UnreadableLine, number, $"cannot read '{Short(line)}'. {(Words.Near(line.Split(' ')[0], GearKind.All.Select(k => k.Name)) is { Count: > 0 } near ? Words.Upper(Words.Meant(near)) + " " : "")}A line at the beginning is Gear:, code:, found:, or a piece: {GearKind.Names}, with its name"); continue; }
                if (items.Any(i => Words.Same(i.Name, line))) Fault(FindingKind.ImpossibleValue, number, $"'{line}' stands here twice; give each piece its own name");
                items.Add(new(kind, line, number));
                continue;
            }
            if (items.Count == 0) { Fault(FindingKind.UnreadableLine, number, $"'{Short(line)}' belongs to no piece; {Form}"); continue; }
            var (said, seen) = Apart(line);
            if (key == "marks")
            {
                (said, seen) = Apart(value);
                items[^1].Marks = [.. said.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)];
                items[^1].MarksSeen = seen;
                if (items[^1].Kind.Name != "bat") Fault(FindingKind.UnreadableLine, number, $"marks are read from bats; of a {items[^1].Kind.Name} write what the sheet '{items[^1].Kind.Sheet}' asks");
                else if (items[^1].Marks!.Count == 0) Fault(FindingKind.BlankCell, number, "no mark is named; write 'marks: none' when none can be read");
            }
            else if (said.Contains(" is ", StringComparison.Ordinal)) items[^1].Remarks.Add(new(said, seen, number));
            else Fault(FindingKind.UnreadableLine, number, $"cannot read '{Short(line)}'; {Form}");
        }
        if (code == "") Fault(FindingKind.BlankCell, 0, $"no code is named; add 'code: {CodeAddress.Form}' or the name the league plays it under");
        foreach (var bat in items.Where(i => i.Kind.Name == "bat" && i.Marks is null && !i.Remarks.Any(r => r.Said.StartsWith("marks shown is ", StringComparison.Ordinal))))
            Fault(FindingKind.BlankCell, bat.Line, $"nobody wrote down which marks {bat.Name} carries; add 'marks:' and what can be read, or 'marks: none'");
        if (items.Count == 0 && findings.Count == before) Fault(FindingKind.UnreadableLine, 0, $"no gear is listed; {Form}");
        return new(title, code, found, items);
    }

    private static string Short(string line) => line.Length <= 60 ? line : line[..57] + "...";

    /// <summary>The words of the sheet, and behind them in brackets what was seen.</summary>
    private static (string Said, string Seen) Apart(string line)
    {
        var open = line.IndexOf('(');
        return open > 0 && line.EndsWith(')') ? (line[..open].Trim(), line[(open + 1)..^1].Trim()) : (line, "");
    }
}
