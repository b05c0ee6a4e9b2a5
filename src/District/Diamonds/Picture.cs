using System.Globalization;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Diamonds;

/// <summary>Who or what stands somewhere in a picture.</summary>
public enum Figure { Runner, Fielder, Batter, Pitcher, Ball, Foot, Umpire, Hand, Clock, Now }

/// <summary>When a fact has a value, a figure stands at a spot.</summary>
public sealed record Placing(string Said, Figure Figure, string Spot);

/// <summary>A fact that is a number, shown on the line of its view by a figure.</summary>
public sealed record Scaling(string Fact, Figure Figure, double Low, double High);

/// <summary>How a subject is pictured: a view, and what stands where for which fact.</summary>
public sealed record Picture(string Sheet, View View, IReadOnlyList<Placing> Placings, IReadOnlyList<Scaling> Scalings)
{
    private const string Form = "write 'fact is value: runner at spot', figures being runner, fielder, batter, pitcher, ball, foot, umpire, hand, clock, now";
    private const string ScaleForm = "write 'fact: clock from 0 to 30' for a fact that is a number";

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
        var scalings = new List<Scaling>();
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
            if (view.Scale)
            {
                if (Scaled(line.Text, sheet) is { } scaling) scalings.Add(scaling);
                else Fault(FindingKind.UnreadableLine, line.Number, $"cannot read '{line.Short}'; {ScaleForm} of '{sheet.Name}'");
                continue;
            }
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
        return findings.Count > before ? null : new(sheet!.Name, view!, placings, scalings);
    }

    private static Scaling? Scaled(string text, Sheet sheet)
    {
        var words = text.Split([':', ' '], StringSplitOptions.RemoveEmptyEntries);
        if (words is not [.., var figure, "from", var low, "to", var high] || !Enum.TryParse<Figure>(figure, ignoreCase: true, out var known) || !Enum.IsDefined(known)) return null;
        var fact = text[..Math.Max(0, text.LastIndexOf(':'))].Trim();
        if (!double.TryParse(low, CultureInfo.InvariantCulture, out var from) || !double.TryParse(high, CultureInfo.InvariantCulture, out var to) || to <= from) return null;
        return sheet.Facts.Any(f => f.Band is not null && Words.Same(f.Name, fact)) ? new(fact, known, from, to) : null;
    }
}
