using System.Globalization;
using System.Text;
using NodaTime;
using Umpirage.District.Clock;

namespace Umpirage.District.Diamonds;

/// <summary>The sun at a moment over a diamond: where it stands as it is seen (degrees, with refraction), and in whose eyes.</summary>
public sealed record SunStand(Moment At, double Azimuth, double Elevation, IReadOnlyList<string> InEyesOf)
{
    /// <summary>The way to the sun over the ground of the field, one long: second base lies up the Y axis.</summary>
    public At Toward(double bearing) => new(Math.Sin((Azimuth - bearing) * Math.PI / 180), Math.Cos((Azimuth - bearing) * Math.PI / 180));
}

/// <summary>A time in which the sun stands near to where somebody looks, and how near it comes in degrees.</summary>
public sealed record Glare(string Who, Moment From, Moment Until, double Nearest)
{
    public string InWords => string.Create(CultureInfo.InvariantCulture, $"{Who}: {From} to {Until}, {Nearest:0}° off at the nearest");
}

/// <summary>The sun over a diamond through the hours of a game: advice for siting and for the batter's eye.</summary>
/// <param name="Bearing">Of the line from home through the pitcher's plate to second, in degrees clockwise from true north.</param>
/// <param name="Advised">The bearing the code advises, and where that stands.</param>
/// <param name="Within">Degrees from a level line of sight within which the sun counts as in the eyes.</param>
public sealed record SunPath(Spot Spot, LocalDate Date, double Bearing, double Advised, string AdvisedBy, double Within, IReadOnlyList<SunStand> Stands, IReadOnlyList<Glare> Glares)
{
    public const string Caution =
        "Advice only: computed for a clear sky, a level horizon and level lines of sight. Trees, stands and clouds hide the sun; a fly ball is looked for higher up, where it may stand in anybody's eyes. Nobody looks into the sun to try this.";

    private const int StepMinutes = 30;

    /// <summary>A diamond whose line to second is off the advised direction by no more than this looks the same wind: half of one of sixteen, in degrees.</summary>
    private const double SameWind = 11.25;

    /// <param name="from">The first and the last moment that are asked about.</param>
    public static SunPath Of(Layout layout, Spot spot, LocalDate date, Instant from, Instant until, double bearing)
    {
        var (advised, within) = (layout.Measures.Degrees("direction advised"), layout.Measures.Degrees("sun in the eyes within"));
        SunStand Stand((Instant At, SunPlace Sun) m) =>
            new(Moment.Of(m.At, spot.Zone, date), m.Sun.Azimuth, m.Sun.Seen, [.. Sight.All.Where(s => Off(s, m.Sun, bearing) <= within).Select(s => s.Who)]);
        List<(Instant At, SunPlace Sun)> minutes = [.. Enumerable.Range(0, 1 + Math.Max(0, (int)(until - from).TotalMinutes)).Select(m => from + Duration.FromMinutes(m)).Select(at => (at, Almanac.At(spot, at))).Where(m => m.Item2.Elevation > Almanac.Horizon)];
        List<Glare> glares = [];
        foreach (var sight in Sight.All)
        {
            List<(Instant At, double Off)> near = [.. minutes.Select(m => (m.At, Off(sight, m.Sun, bearing))).Where(m => m.Item2 <= within)];
            // the sun may come near, go, and come again
            foreach (var run in near.Select((m, i) => (m, Begin: m.At - Duration.FromMinutes(i))).GroupBy(m => m.Begin))
                glares.Add(new(sight.Who, Moment.Of(run.First().m.At, spot.Zone, date), Moment.Of(run.Last().m.At, spot.Zone, date), run.Min(m => m.m.Off)));
        }
        return new(spot, date, Compass.Turned(bearing), advised, layout.Measures.Source("direction advised").ToString(), within, [.. minutes.Where(m => (m.At - from).TotalMinutes % StepMinutes == 0).Select(Stand)], glares);
    }

    /// <summary>Degrees between a level line of sight and the sun's centre.</summary>
    private static double Off(Sight sight, SunPlace sun, double bearing)
    {
        const double Degree = Math.PI / 180;
        return Math.Acos(Math.Clamp(Math.Cos(sun.Seen * Degree) * Math.Cos((sun.Azimuth - bearing - sight.Turn) * Degree), -1, 1)) / Degree;
    }

    /// <summary>How the diamond looks, beside the direction the code advises.</summary>
    public string Looks
    {
        get
        {
            var off = Compass.Apart(Bearing, Advised);
            return $"Home to second looks {Compass.Told(Bearing)}; advised is about {Compass.Wind(Advised)} ({AdvisedBy}): {(off <= SameWind ? "as advised" : string.Create(CultureInfo.InvariantCulture, $"{off:0}° off"))}";
        }
    }

    /// <summary>Who has the sun in the eyes and when; or that nobody has.</summary>
    public IReadOnlyList<string> InWords =>
        Stands.Count == 0 ? ["The sun is down through all of these hours."]
        : Glares.Count == 0 ? [string.Create(CultureInfo.InvariantCulture, $"The sun stands nobody within {Within:0.#}° of a level look.")]
        : [.. Glares.Select(g => g.InWords)];

    public string Text()
    {
        var text = new StringBuilder().AppendLine($"SUN over a diamond at {Spot}, {Date:uuuu-MM-dd}").AppendLine($"  {Looks}");
        text.AppendLine(CultureInfo.InvariantCulture, $"IN THE EYES (within {Within:0.#}° of a level line of sight)");
        foreach (var line in InWords) text.AppendLine($"  {line}");
        text.AppendLine("WHERE IT STANDS (degrees from north, and over the horizon)");
        foreach (var s in Stands) text.AppendLine(CultureInfo.InvariantCulture, $"  {s.At}  {Compass.Told(s.Azimuth),-25} {s.Elevation,3:0}° up{(s.InEyesOf.Count == 0 ? "" : "   " + string.Join("; ", s.InEyesOf))}");
        return text.AppendLine("CAUTION").AppendLine($"  {Caution}").ToString();
    }
}
