using System.Globalization;

namespace Umpirage.District.Clock;

/// <summary>Which part of the formula gave the heat index.</summary>
public enum HeatBranch { Simple, Regression, DryAdjusted, HumidAdjusted }

/// <summary>
/// The heat index of the US weather service: a regression over air temperature and relative humidity with two adjustments, and a simple formula
/// for milder air (Rothfusz, SR 90-23, 1990, as the Weather Prediction Center gives it | published).
/// </summary>
/// <param name="Fahrenheit">Air temperature in the shade.</param>
/// <param name="Humidity">Relative humidity in per cent.</param>
/// <param name="Exact">The index in degrees Fahrenheit, not rounded.</param>
public sealed record HeatIndex(double Fahrenheit, double Humidity, double Exact, HeatBranch Branch)
{
    private const double Coldest = 0, Hottest = 130, Mild = 80;

    /// <summary>Degrees Fahrenheit to a tenth, as told.</summary>
    public double Told => Degrees.Tenth(Exact);

    /// <summary>What a band is ruled by: never less than what is told.</summary>
    public double Counted => Degrees.Counted(Exact);

    /// <summary>What the formula is good for.</summary>
    public const string Limits =
        "The index holds for shade and a light wind: full sun can add up to 15 F. It fits the tables it was made from within about 1.3 F, and less well in very dry or very hot air. It knows nothing of catchers' and umpires' gear.";

    /// <summary>The index from typed words such as "94" or "34 C", and "50" or "50 %"; null, with every reason, when they cannot be used.</summary>
    public static HeatIndex? Read(string temperature, string humidity, List<string> faults)
    {
        var fahrenheit = Degrees.Read(temperature, "the air temperature", Coldest, Hottest, faults);
        var bare = humidity.Trim().TrimEnd('%').TrimEnd();
        if (!double.TryParse(bare, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var share) || share is not (>= 0 and <= 100))
        {
            faults.Add($"the relative humidity is '{humidity}'; it may be 0 to 100 %");
            return null;
        }
        return fahrenheit is { } known ? Of(known, share) : null;
    }

    /// <summary>The index from degrees Celsius.</summary>
    public static HeatIndex OfCelsius(double celsius, double humidity) => Of(Degrees.FromCelsius(celsius), humidity);

    /// <summary>The index from degrees Fahrenheit and per cent. The simple formula is averaged with the temperature before it is held against 80.</summary>
    public static HeatIndex Of(double fahrenheit, double humidity)
    {
        var (t, r) = (fahrenheit, humidity);
        var simple = (0.5 * (t + 61 + (t - 68) * 1.2 + r * 0.094) + t) / 2;
        if (simple < Mild) return new(t, r, simple, HeatBranch.Simple);
        var index = -42.379 + 2.04901523 * t + 10.14333127 * r - 0.22475541 * t * r - 0.00683783 * t * t - 0.05481717 * r * r
            + 0.00122874 * t * t * r + 0.00085282 * t * r * r - 0.00000199 * t * t * r * r;
        if (Dry(t, r)) return new(t, r, index - (13 - r) / 4 * Math.Sqrt((17 - Math.Abs(t - 95)) / 17), HeatBranch.DryAdjusted);
        if (Humid(t, r)) return new(t, r, index + (r - 85) / 10 * ((87 - t) / 5), HeatBranch.HumidAdjusted);
        return new(t, r, index, HeatBranch.Regression);
    }

    private static bool Dry(double t, double r) => r < 13 && t is >= 80 and <= 112;

    private static bool Humid(double t, double r) => r > 85 && t is >= 80 and <= 87;

    /// <summary>The formula with the numbers put in, and which branch it was.</summary>
    public string Shown
    {
        get
        {
            var (t, r) = (N(Fahrenheit), N(Humidity));
            var regression = $"-42.379 + 2.04901523x{t} + 10.14333127x{r} - 0.22475541x{t}x{r} - 0.00683783x{t}^2 - 0.05481717x{r}^2 + 0.00122874x{t}^2x{r} + 0.00085282x{t}x{r}^2 - 0.00000199x{t}^2x{r}^2";
            return Branch switch
            {
                HeatBranch.Simple => $"simple formula, since its mean with the temperature stays below {Mild} F: (0.5x({t} + 61 + ({t} - 68)x1.2 + {r}x0.094) + {t}) / 2 = {N(Exact)} F",
                HeatBranch.DryAdjusted => $"regression less the adjustment for dry air: {regression} - (13 - {r})/4 x sqrt((17 - |{t} - 95|)/17) = {N(Exact)} F",
                HeatBranch.HumidAdjusted => $"regression with the adjustment for humid air: {regression} + ({r} - 85)/10 x (87 - {t})/5 = {N(Exact)} F",
                _ => $"regression: {regression} = {N(Exact)} F",
            };
        }
    }

    private static string N(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
