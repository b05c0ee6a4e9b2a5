using System.Globalization;

namespace Umpirage.District.Diamonds;

/// <summary>Directions over the ground, in degrees clockwise from true north.</summary>
public static class Compass
{
    private static readonly string[] Winds =
    [
        "north", "north-north-east", "north-east", "east-north-east", "east", "east-south-east", "south-east", "south-south-east",
        "south", "south-south-west", "south-west", "west-south-west", "west", "west-north-west", "north-west", "north-north-west",
    ];

    /// <summary>The nearest of the sixteen winds.</summary>
    public static string Wind(double degrees) => Winds[(int)Math.Round(Turned(degrees) / 22.5, MidpointRounding.AwayFromZero) % Winds.Length];

    /// <summary>"68° (east-north-east)".</summary>
    public static string Told(double degrees) => string.Create(CultureInfo.InvariantCulture, $"{Math.Round(Turned(degrees)) % 360:0}° ({Wind(degrees)})");

    /// <summary>Reads degrees clockwise from true north; null, with the reason, for anything else.</summary>
    public static double? Read(string text, List<string> faults)
    {
        if (double.TryParse(text.TrimEnd('°', ' '), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var degrees) && degrees <= 360) return degrees;
        faults.Add($"the direction is '{text}'; it may be 0 to 360, degrees clockwise from true north in which second lies from home");
        return null;
    }

    /// <summary>The same direction, 0 up to 360.</summary>
    public static double Turned(double degrees) => (degrees % 360 + 360) % 360;

    /// <summary>How far two directions lie apart, 0 to 180 degrees.</summary>
    public static double Apart(double a, double b) => Math.Abs((Turned(a - b) + 180) % 360 - 180);
}
