using System.Globalization;
using NodaTime;
using Umpirage.District.Clock;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Cards;

/// <summary>Heat and light on the day of a game.</summary>
internal static class WeatherParts
{
    /// <summary>Minutes between the planned end and sunset that need no word on a card.</summary>
    private const int Plenty = 120;

    public static IEnumerable<CardPart> LastLight(Making m)
    {
        var spot = Spot(m);
        var (zone, day) = (spot.Zone, Almanac.Day(spot, LocalDate.FromDateOnly(m.Day)));
        string Told(SunEvent e, string never) => e.At is { } at ? Moment.Of(at, zone, LocalDate.FromDateOnly(m.Day)).Clock : never;
        yield return new CardPart.Key($"Sunset, {m.Game.Park.Name}", Told(day.Set, day.Set.Case == SunCase.StaysAbove ? "none: the sun stays up" : "none: the sun stays down"));
        yield return new CardPart.Line($"Last light (civil dusk): {Told(day.Dusk, "none")}. {m.Game.Diamond.Name} is {(m.Game.Diamond.Lit ? "lit" : "not lit: play ends by sunset, or when the ball can no longer be followed")}.");
        if (m.Game.Diamond.Lit || day.Set.At is not { } set || m.Sheet("playing hours")?.Number("planned length") is not { } planned) yield break;
        var over = m.Game.Game.Start.AddMinutes(planned);
        var left = (int)Math.Floor((set.InZone(zone).ToDateTimeUnspecified() - over).TotalMinutes);
        // with hours to spare the light is nobody's worry
        if (left > Plenty) yield break;
        yield return new CardPart.Line(left >= 0 ? $"By its planned {planned} min the game is over at {ClockParts.At(over)}, {left} min before sunset." : $"By its planned {planned} min the game is over at {ClockParts.At(over)}, {-left} min after sunset: it may not be finished today.", Strong: left < 0);
    }

    public static IEnumerable<CardPart> Heat(Making m)
    {
        if (m.Sheet("heat") is not { } heat) yield break;
        var rows = new List<IReadOnlyList<string>>();
        foreach (var (band, from) in ((string, string)[])[("caution", "caution from"), ("extreme caution", "extreme caution from"), ("danger", "danger from"), ("extreme danger", "extreme danger from")])
            if (heat.Exactly(from) is { } degrees)
                rows.Add([$"{Number(degrees)} F", band, heat.Ask("play", ("heat index", null, degrees)).Value, heat.Ask("breaks", ("heat index", null, degrees)).Value]);
        yield return new CardPart.Grid([new("From", 1.1), new("Band", 1.9), new("Play", 2.2), new("Breaks", 1.9)], rows);
        var dry = heat.Exactly("extreme caution from") is { } extreme ? heat.Ask("play", ("heat index", null, extreme), ("shade and water", "not to hand", 0)).Value : "";
        if (dry != "") yield return new CardPart.Line($"From extreme caution on, without shade and water to hand: play {dry}.", Strong: true);
        foreach (var looks in (string[])["unwell", "collapsed"])
            yield return new CardPart.Line($"A player who looks {looks}: {heat.Ask("player", ("player looks", looks, 0)).Value}; back: {heat.Ask("return of the player", ("player looks", looks, 0)).Value}.");
    }

    public static IEnumerable<CardPart> Globe(Making m)
    {
        if (m.Sheet("heat by globe") is not { } globe) yield break;
        var rows = new List<IReadOnlyList<string>>();
        foreach (var from in (string[])["globe watch from", "globe limit from", "globe rest from", "globe stop from"])
            if (globe.Exactly(from) is { } degrees)
            {
                string Play(double minutes, string decision) => globe.Ask(decision, ("globe temperature", null, degrees), ("hours played", null, minutes)).Value;
                // the first minutes at which play stops, hour by hour
                int? stops = Enumerable.Range(0, 4).Cast<int?>().FirstOrDefault(h => Play(h!.Value * 60, "play") == "stops");
                rows.Add([$"{Number(degrees)} F", stops switch { 0 => "stops", { } h => $"at most {h} h", null => "goes on" }, stops == 0 ? "-" : Play(0, "rest each hour")]);
            }
        yield return new CardPart.Grid([new("From", 1.1), new("Play", 1.6), new("Rest each hour", 3)], rows);
    }

    public static Spot Spot(Making m) => new(m.Game.Park.Latitude, m.Game.Park.Longitude, DateTimeZoneProviders.Tzdb[m.Game.Zone]);

    private static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
