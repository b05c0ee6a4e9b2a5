using System.Globalization;

namespace Umpirage.District.Clock;

/// <summary>Reads and tells temperatures; everything is counted in degrees Fahrenheit.</summary>
internal static class Degrees
{
    /// <summary>Reads "94", "94 F", "94F" or "34 C"; null, with the reason, when it is no temperature or out of range.</summary>
    public static double? Read(string text, string name, double low, double high, List<string> faults)
    {
        var word = text.Trim();
        var celsius = word.EndsWith("C", StringComparison.OrdinalIgnoreCase);
        var number = word.TrimEnd('C', 'c', 'F', 'f').TrimEnd();
        if (!double.TryParse(number, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value) || !double.IsFinite(value))
        {
            faults.Add($"{name} is '{text}'; write degrees as 94 F or 34 C");
            return null;
        }
        var fahrenheit = celsius ? FromCelsius(value) : value;
        if (fahrenheit >= low && fahrenheit <= high) return fahrenheit;
        faults.Add($"{name} is '{text}'; it may be {low} to {high} F ({Tell(ToCelsius(low))} to {Tell(ToCelsius(high))} C)");
        return null;
    }

    public static double FromCelsius(double celsius) => celsius * 9 / 5 + 32;

    public static double ToCelsius(double fahrenheit) => (fahrenheit - 32) * 5 / 9;

    /// <summary>To a tenth, halves upwards.</summary>
    public static double Tenth(double value) => Math.Round(value, 1, MidpointRounding.AwayFromZero);

    /// <summary>What a band is ruled by: never less than what is shown, and never less than what was computed.</summary>
    public static double Counted(double exact) => Math.Max(exact, Tenth(exact));

    public static string Tell(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
