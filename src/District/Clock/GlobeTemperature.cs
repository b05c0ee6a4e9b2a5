using System.Globalization;

namespace Umpirage.District.Clock;

/// <summary>
/// The wet-bulb globe temperature outdoors, from three readings in degrees Fahrenheit: seven parts natural wet bulb, two parts black globe, one
/// part air (a children's doctors' table on heat stress | published). It is measured at the site, never estimated here from a forecast.
/// </summary>
public sealed record GlobeTemperature(double WetBulb, double Globe, double Air)
{
    private const double Coldest = 0, Hottest = 130, HottestGlobe = 190;

    /// <summary>Degrees Fahrenheit, not rounded.</summary>
    public double Exact => 0.7 * WetBulb + 0.2 * Globe + 0.1 * Air;

    /// <summary>Degrees Fahrenheit to a tenth, as told.</summary>
    public double Told => Degrees.Tenth(Exact);

    /// <summary>What the number is good for.</summary>
    public const string Limits =
        "It holds for three instruments read at the field, in the open, over the ground that is played on, after they have settled. A wet bulb that reads as much as the air is dry or broken unless the air is saturated.";

    /// <summary>The formula with the numbers put in.</summary>
    public string Shown => string.Create(CultureInfo.InvariantCulture, $"0.7x{WetBulb:0.###} + 0.2x{Globe:0.###} + 0.1x{Air:0.###} = {Exact:0.###} F");

    /// <summary>From typed words such as "78" or "25.5 C"; null, with every reason, when one cannot be used.</summary>
    public static GlobeTemperature? Read(string wetBulb, string globe, string air, List<string> faults)
    {
        var wet = Degrees.Read(wetBulb, "the wet bulb", Coldest, Hottest, faults);
        var black = Degrees.Read(globe, "the globe", Coldest, HottestGlobe, faults);
        var dry = Degrees.Read(air, "the air", Coldest, Hottest, faults);
        return wet is { } w && black is { } g && dry is { } a ? new(w, g, a) : null;
    }
}
