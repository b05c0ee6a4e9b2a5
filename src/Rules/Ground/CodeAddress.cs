using System.Globalization;

namespace Umpirage.Rules.Ground;

/// <summary>
/// Names one code on one day: game, division, the layers named on top, and the date: <c>softball/12U+Tarnholt@2026-05-16</c>.
/// A layer may carry arguments, as an agreement between two leagues does: <c>interleague(Tarnholt,Wrenfall)</c>, host first.
/// </summary>
public sealed record CodeAddress(string Game, string Division, IReadOnlyList<CodeAddress.Named> Layers, DateOnly? Date)
{
    /// <summary>A layer's name with its arguments, host first.</summary>
    public sealed record Named(string Name, IReadOnlyList<string> Arguments)
    {
        public override string ToString() => Arguments.Count == 0 ? Name : $"{Name}({string.Join(",", Arguments)})";
    }

    public const string Form = "game/division, then +layer as needed, then @date: softball/12U+Tarnholt@2026-05-16";

    /// <summary>Reads an address; null when it has not the form.</summary>
    public static CodeAddress? Read(string text)
    {
        DateOnly? date = null;
        var at = text.LastIndexOf('@');
        if (at >= 0)
        {
            if (!TryDate(text[(at + 1)..].Trim(), out var day)) return null;
            date = day;
            text = text[..at];
        }
        var slash = text.IndexOf('/');
        if (slash <= 0) return null;
        var parts = text[(slash + 1)..].Split('+').Select(p => p.Trim()).ToList();
        if (parts.Any(p => p.Length == 0)) return null;
        var layers = new List<Named>();
        foreach (var part in parts.Skip(1))
        {
            var open = part.IndexOf('(');
            if (open < 0) { layers.Add(new(part, [])); continue; }
            if (open == 0 || !part.EndsWith(')')) return null;
            layers.Add(new(part[..open].Trim(), [.. part[(open + 1)..^1].Split(',').Select(a => a.Trim()).Where(a => a.Length > 0)]));
        }
        return new(text[..slash].Trim(), parts[0], layers, date);
    }

    public static bool TryDate(string text, out DateOnly date) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out date);

    public static string Day(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    public CodeAddress At(DateOnly date) => this with { Date = date };

    public override string ToString() =>
        $"{Game}/{Division}{string.Concat(Layers.Select(l => "+" + l))}{(Date is { } d ? "@" + Day(d) : "")}";
}
