using NodaTime;
using NodaTime.Text;
using Umpirage.District.Clock;

namespace Umpirage.Cli.Verbs;

/// <summary>Sunrise, sunset and civil twilight of a day at a place, and where the sun stands at a moment.</summary>
internal static class SunVerb
{
    public static int Run(Request request)
    {
        // a place begins with its latitude; anything else is a diamond of the district
        if (request.Words.FirstOrDefault() is { } first && !first.StartsWith("--", StringComparison.Ordinal) && !char.IsAsciiDigit(first.TrimStart('-').FirstOrDefault())) return SunPathVerb.Run(request);
        var options = new Options(request, ["--zone", "--at"]);
        if (options.Words.Count != 3) options.Faults.Add("which place, and which day?");
        if (options.Faulty("write a latitude, a longitude and a day: ./umpirage sun 41.40 -88.10 2026-05-16 --zone America/Chicago; or a diamond and a day")) return Verb.Unusable;
        var (words, zoneName, time) = (options.Words, options.Text("--zone"), options.Text("--at"));
        var faults = new List<string>();
        var (latitude, longitude) = (Spot.Degrees(words[0], "the latitude", 90, faults), Spot.Degrees(words[1], "the longitude", 180, faults));
        var day = Day(words[2], faults);
        var zone = zoneName is not null ? Spot.ZoneOf(zoneName, faults) : longitude is { } east ? Spot.ByLongitude(east) : null;
        var at = time is not null && zone is not null ? WallClock.Read(time, day ?? new LocalDate(2026, 1, 1), zone, faults) : null;
        foreach (var fault in faults) Console.Error.WriteLine(fault);
        if (faults.Count > 0) return Verb.Unusable;
        var answer = SunAnswer.Of(Almanac.Day(new(latitude!.Value, longitude!.Value, zone!), day!.Value), at, zoneName is not null);
        if (request.Json) Json.Write(answer);
        else Console.Write(ClockText.Of(answer));
        return Verb.Fine;
    }

    /// <summary>A day for which the series of the sun hold; null, with the reason, for anything else.</summary>
    internal static LocalDate? Day(string text, List<string> faults)
    {
        if (LocalDatePattern.Iso.Parse(text) is { Success: true } day && day.Value.Year is >= Almanac.FirstYear and <= Almanac.LastYear) return day.Value;
        faults.Add($"the day is '{text}'; write it as 2026-05-16, from {Almanac.FirstYear} to {Almanac.LastYear}");
        return null;
    }
}
