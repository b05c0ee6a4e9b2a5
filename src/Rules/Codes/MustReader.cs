using System.Globalization;
using System.Text.RegularExpressions;
using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>Reads and tests what the values of a sheet have to obey.</summary>
internal static partial class MustReader
{
    [GeneratedRegex(@"^\[(?<a>[^\]]{1,80})\] (?<op><|<=|=|>|>=) \[(?<b>[^\]]{1,80})\]( x (?<x>[0-9.]{1,12}))?( within (?<w>[0-9.]{1,12})( in)?)?$", RegexOptions.ExplicitCapture)]
    private static partial Regex Form();

    /// <summary>True when it holds or one of the values is none. Otherwise <paramref name="said"/> says why not, or is null when the line cannot be read.</summary>
    public static bool Holds(Must must, CodeSheet under, out string? said)
    {
        said = null;
        var match = Form().Match(must.Text);
        if (!match.Success || Number(match.Groups["a"].Value) is not var (a, textA) || Number(match.Groups["b"].Value) is not var (b, textB)) return false;
        if (a.IsNone || b.IsNone) return true;
        if (a.Unit != b.Unit || Factor("x", 1) is not { } factor || Factor("w", 0) is not { } within) return false;
        if (a.Unit == "ft") within /= 12;
        var (left, right) = (a.Value, b.Value * factor);
        var holds = match.Groups["op"].Value switch
        {
            "<" => left < right, "<=" => left <= right, ">" => left > right, ">=" => left >= right, _ => Math.Abs(left - right) <= within + 1e-9,
        };
        if (!holds) said = $"{textA} is {a}, {textB} is {b}";
        return holds;

        (Quantity, string)? Number(string name) =>
            under.Bound.Parameters.FirstOrDefault(p => Words.Same(p.Name, name.Trim())) is { Unit: not null } parameter && under.Values[parameter].Quantity is { } q ? (q, parameter.Name) : null;

        double? Factor(string group, double otherwise) => !match.Groups[group].Success ? otherwise
            : double.TryParse(match.Groups[group].Value, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) ? value : null;
    }
}
