using System.Globalization;

namespace Umpirage.Rules.Ground;

/// <summary>
/// A number with its unit as a rule book prints it: "35 ft", "84 ft 10 1/4 in", "1 1/2 revolutions", "10 s". Feet and inches together are
/// held in the first unit named. <see cref="None"/> means the code sets no such number.
/// </summary>
public sealed record Quantity(double Value, string Unit, string Text)
{
    public static Quantity None { get; } = new(double.PositiveInfinity, "", "none");

    public bool IsNone => double.IsInfinity(Value);

    /// <summary>Reads a quantity; false when the text is not a number, optional fraction, and a unit.</summary>
    public static bool TryRead(string text, out Quantity quantity)
    {
        quantity = None;
        if (Words.Same(text, "none")) return true;
        var parts = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var at = 0;
        if (!Number(parts, ref at, out var first)) return false;
        var unit = new List<string>();
        while (at < parts.Length && !char.IsAsciiDigit(parts[at][0])) unit.Add(parts[at++]);
        var name = string.Join(' ', unit);
        if (name == "") return false;
        if (at < parts.Length)
        {
            if (name != "ft" || !Number(parts, ref at, out var inches) || at != parts.Length - 1 || parts[at] != "in" || inches >= 12) return false;
            first += inches / 12;
        }
        quantity = new(first, Plural(name), text);
        return true;
    }

    /// <summary>"1 day" and "2 days" are one unit.</summary>
    public static string Plural(string unit) => unit switch
    {
        "day" => "days", "pitch" => "pitches", "inning" => "innings", "game" => "games", "run" => "runs", "player" => "players", "year" => "years",
        "week" => "weeks", "minute" => "min", "minutes" => "min", "second" => "s", "seconds" => "s", "feet" => "ft", "inches" => "in", "hour" => "hours",
        "conference" => "conferences", "warm-up" => "warm-ups", "step" => "steps", "batter" => "batters", "out" => "outs", "month" => "months",
        "time" => "times", "visit" => "visits", "revolution" => "revolutions", "degree" => "degrees", "doubleheader" => "doubleheaders", _ => unit,
    };

    private static bool Number(string[] parts, ref int at, out double value)
    {
        value = 0;
        if (at >= parts.Length || !Plain(parts[at], out value))
        {
            if (at >= parts.Length || !Fraction(parts[at], out value)) return false;
            at++;
            return true;
        }
        at++;
        if (at < parts.Length && Fraction(parts[at], out var fraction)) { value += fraction; at++; }
        return true;
    }

    private static bool Plain(string text, out double value) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value) && value < 1e9;

    private static bool Fraction(string text, out double value)
    {
        value = 0;
        var slash = text.IndexOf('/');
        if (slash <= 0 || !Plain(text[..slash], out var top) || !Plain(text[(slash + 1)..], out var bottom) || bottom == 0) return false;
        value = top / bottom;
        return true;
    }

    public override string ToString() => Text;
}
