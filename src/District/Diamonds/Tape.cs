using System.Globalization;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Diamonds;

/// <summary>Lengths as a tape tells them: feet and inches to the nearest eighth, or metres; and read again.</summary>
public static class Tape
{
    /// <summary>The international foot: 0.3048 m exactly (agreement of 1959).</summary>
    public const double MetresInAFoot = 0.3048;

    private const int Eighths = 8;

    /// <summary>"84 ft 10 1/4 in", to the nearest eighth of an inch; "3/8 in" and "7 in" below a foot; a minus sign where it is less than nothing.</summary>
    public static string Told(double feet)
    {
        var eighths = (long)Math.Round(Math.Abs(feet) * 12 * Eighths, MidpointRounding.AwayFromZero);
        var (whole, rest) = (eighths / (12 * Eighths), eighths % (12 * Eighths));
        var (inches, part) = (rest / Eighths, rest % Eighths);
        var words = new List<string>();
        if (whole > 0) words.Add($"{whole} ft");
        if (part > 0)
        {
            var of = Eighths;
            while (part % 2 == 0) (part, of) = (part / 2, of / 2);
            words.Add(inches > 0 ? $"{inches} {part}/{of} in" : $"{part}/{of} in");
        }
        else if (inches > 0) words.Add($"{inches} in");
        var text = words.Count == 0 ? "0 ft" : string.Join(' ', words);
        return feet < 0 && eighths > 0 ? "-" + text : text;
    }

    /// <summary>How lengths are told on a sheet: feet and inches, or metres.</summary>
    public static Func<double, string> Telling(bool metres) => metres ? InMetres : Told;

    /// <summary>"25.863 m", to the millimetre.</summary>
    public static string InMetres(double feet) => (feet * MetresInAFoot).ToString("0.000", CultureInfo.InvariantCulture) + " m";

    /// <summary>Reads "127 ft 3 1/2 in", 127' 3 1/2", "6 in", "127.29 ft" or "38.8 m", in feet; null when it is none of these or not more than nothing.</summary>
    public static double? Read(string text, out string fault)
    {
        fault = "";
        var typed = Words.Tidy(Words.Tidy(text).Replace("\u2032", "'", StringComparison.Ordinal).Replace("''", "\"", StringComparison.Ordinal).Replace("'", " ft ", StringComparison.Ordinal)
            .Replace("\u2033", "\"", StringComparison.Ordinal).Replace("\u201d", "\"", StringComparison.Ordinal).Replace("\"", " in", StringComparison.Ordinal));
        if (typed.StartsWith('-')) { fault = $"'{typed}' is less than nothing; a tape reads more than 0"; return null; }
        if (!Quantity.TryRead(typed, out var quantity) || quantity.IsNone) { fault = $"'{typed}' is no length; write '127 ft 3 1/2 in', '127.29 ft' or '38.80 m'"; return null; }
        double? feet = quantity.Unit switch { "ft" => quantity.Value, "in" => quantity.Value / 12, "m" => quantity.Value / MetresInAFoot, _ => null };
        if (feet is null) fault = $"'{quantity.Unit}' is no unit of a tape; it may be ft and in, or m";
        else if (feet <= 0) { fault = $"'{typed}' is nothing; a tape reads more than 0"; return null; }
        return feet;
    }
}
