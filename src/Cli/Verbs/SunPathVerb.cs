using System.Globalization;
using NodaTime;
using Umpirage.District.Clock;
using Umpirage.District.Diamonds;
using Umpirage.Paper;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Cli.Verbs;

/// <summary>The sun over a diamond of the district through the hours of a game: in whose eyes, and when.</summary>
internal static class SunPathVerb
{
    private const string Form = "./umpirage sun tarnholt-2 2026-05-16 --from 17:30 --until 20:00 [--bearing 68] [--code \"SB 12U\"] [--svg sun.svg]";

    public static int Run(Request request)
    {
        var options = new Options(request, ["--from", "--until", "--bearing", "--code", "--svg"]);
        if (options.Words.Count != 2) options.Faults.Add("name a diamond and a day");
        if (options.Faulty(Form)) return Verb.Unusable;
        var (from, until, bearing, address) = (options.Text("--from"), options.Text("--until"), options.Text("--bearing"), options.Text("--code"));
        using var store = DistrictOf.Open(request, make: false);
        if (store is null) return Verb.Unusable;
        var faults = new List<string>();
        var diamond = store.Diamonds.Find(options.Words[0]);
        if (diamond is null) faults.Add($"there is no diamond '{options.Words[0]}'; {Words.Offer(options.Words[0], [.. store.Diamonds.Select(d => d.Key)])}");
        var day = SunVerb.Day(options.Words[1], faults);
        var looks = bearing is null ? diamond?.Bearing : Compass.Read(bearing, faults);
        if (diamond is not null && looks is null && bearing is null) faults.Add($"nobody took where {diamond.Name} looks; add --bearing, the degrees from true north in which second lies from home");
        var zone = Spot.ZoneOf(store.District.First().Zone, faults);
        Instant? Time(string? text, string usual) => zone is null ? null : WallClock.Read(text ?? usual, day ?? new(2026, 1, 1), zone, faults);
        var (begin, end) = (Time(from, "17:30"), Time(until, "20:00"));
        if (begin > end) faults.Add($"the game ends at {until ?? "20:00"}, before it begins at {from ?? "17:30"}");
        var book = Library.Codes(request, ["field", "field marks"], address);
        var findings = new List<Finding>();
        var layout = Casebook.Code(book, address ?? book.Roster.UsualCode(), request.Today, faults.Add) is { } code ? Layout.Of(code, findings) : null;
        foreach (var fault in faults.Concat(findings.Select(f => f.ToString()))) Console.Error.WriteLine(fault);
        if (faults.Count > 0 || layout is null) return Verb.Unusable;
        var park = store.Parks.Find(diamond!.Park)!;
        var path = SunPath.Of(layout, new(park.Latitude, park.Longitude, zone!), day!.Value, begin!.Value, end!.Value, looks!.Value);
        if (options.Text("--svg") is { } svg) File.WriteAllText(svg, PlanSvg.Of(layout, Window.Sky(layout), sun: path));
        if (request.Json)
            Json.Write(new
            {
                diamond = diamond.Key, date = path.Date.ToString("uuuu-MM-dd", CultureInfo.InvariantCulture), path.Bearing, path.Advised, path.Within, path.Looks,
                inTheEyes = path.Glares.Select(g => new { g.Who, from = g.From.Exact, until = g.Until.Exact, g.Nearest }),
                stands = path.Stands.Select(s => new { at = s.At.Exact, s.Azimuth, s.Elevation, s.InEyesOf }), caution = SunPath.Caution,
            });
        else Console.Write(path.Text());
        return Verb.Fine;
    }
}
