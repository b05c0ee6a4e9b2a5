using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Diamonds;

/// <summary>Who or what stands somewhere in a picture.</summary>
public enum Figure { Runner, Fielder, Batter, Pitcher, Ball, Foot, Umpire }

/// <summary>When a fact has a value, a figure stands at a spot.</summary>
public sealed record Placing(string Said, Figure Figure, string Spot);

/// <summary>How a subject is pictured: a view, and what stands where for which fact.</summary>
public sealed record Picture(string Sheet, View View, IReadOnlyList<Placing> Placings)
{
    private const string Form = "write 'fact is value: runner at spot', figures being runner, fielder, batter, pitcher, ball, foot, umpire";

    /// <summary>What stands in the picture of a play of which this is said.</summary>
    public IEnumerable<Placing> Of(IReadOnlyList<string> said) => Placings.Where(p => said.Any(s => Words.Same(s, p.Said)));

    /// <summary>Reads a .picture file: "Picture: sheet", "view: name", then placings. Null, with every fault, when it cannot be used.</summary>
    public static Picture? Read(string file, string text, Codebook book, List<Finding> findings)
    {
        var before = findings.Count;
        void Fault(FindingKind kind, int line, string message) => findings.Add(new(kind, file, line, message));
        Sheet? sheet = null;
        View? view = null;
        var placings = new List<Placing>();
        foreach (var line in SourceLine.Of(text))
        {
            if (line.Text.StartsWith("Picture:", StringComparison.Ordinal))
            {
                var name = line.Text[8..].Trim();
                sheet = book.Sheet(name);
                if (sheet is null) Fault(FindingKind.UnknownWord, line.Number, $"there is no sheet '{name}'; {Words.Offer(name, [.. book.Sheets.Select(s => s.Name)])}");
                continue;
            }
            if (line.Text.StartsWith("view:", StringComparison.Ordinal))
            {
                var name = line.Text[5..].Trim();
                view = Views.Named(name);
                if (view is null) Fault(FindingKind.UnknownWord, line.Number, $"there is no view '{name}'; it may be {Words.Or([.. Views.All.Select(v => v.Name)])}");
                continue;
            }
            if (sheet is null || view is null) continue;
            var colon = line.Text.LastIndexOf(": ", StringComparison.Ordinal);
            var at = colon < 0 ? -1 : line.Text.IndexOf(" at ", colon, StringComparison.Ordinal);
            if (at < 0) { Fault(FindingKind.UnreadableLine, line.Number, $"cannot read '{line.Short}'; {Form}"); continue; }
            var (said, figure, spot) = (line.Text[..colon].Trim(), line.Text[(colon + 2)..at].Trim(), line.Text[(at + 4)..].Trim());
            if (!sheet.Facts.Any(f => f.Values.Any(v => Words.Same(said, $"{f.Name} is {v}")))) Fault(FindingKind.UnknownWord, line.Number, $"'{said}' is no fact of '{sheet.Name}' with one of its values");
            if (!Enum.TryParse<Figure>(figure, ignoreCase: true, out var known) || !Enum.IsDefined(known)) Fault(FindingKind.UnknownWord, line.Number, $"'{figure}' is no figure; {Form}");
            if (!view.Spots.ContainsKey(spot)) Fault(FindingKind.UnknownWord, line.Number, $"the view '{view.Name}' has no spot '{spot}'; {Words.Offer(spot, [.. view.Spots.Keys])}");
            placings.Add(new(said, known, spot));
        }
        if (sheet is null && findings.Count == before) Fault(FindingKind.UnreadableLine, 0, "the picture names no sheet; begin with 'Picture: sheet'");
        if (view is null && findings.Count == before) Fault(FindingKind.UnreadableLine, 0, $"the picture names no view; add 'view: name', one of {Words.Or([.. Views.All.Select(v => v.Name)])}");
        return findings.Count > before ? null : new(sheet!.Name, view!, placings);
    }
}
