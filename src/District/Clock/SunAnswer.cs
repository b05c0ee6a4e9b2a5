using NodaTime;

namespace Umpirage.District.Clock;

/// <summary>A day of the sun made ready to be read out. An event that does not happen says so in its words.</summary>
/// <param name="Stands">Where the sun stands at the moment that was asked.</param>
public sealed record SunAnswer(string Place, string Date, IReadOnlyList<SunLine> Events, Moment? At, SunPlace? Stands, IReadOnlyList<string> Cautions)
{
    /// <summary>Clock hours between noon and the sun's noon above which a place and a zone hardly belong together.</summary>
    private const int Apart = 4;

    public static SunAnswer Of(SunDay day, Instant? at, bool zoneNamed)
    {
        SunLine Line(string name, SunEvent e, string above, string below) =>
            e.At is { } when ? new(name, Moment.Of(when, day.Spot.Zone, day.Date), null) : new(name, null, e.Case == SunCase.StaysAbove ? above : below);
        var noon = Moment.Of(day.Noon, day.Spot.Zone, day.Date);
        var cautions = new List<string> { Clock.Cautions.Dark };
        if (!zoneNamed) cautions.Add("No time zone was named: these are clock times by longitude, without daylight-saving time.");
        else if (Math.Abs(day.Noon.InZone(day.Spot.Zone).LocalDateTime.TimeOfDay.TickOfDay - LocalTime.Noon.TickOfDay) > Apart * NodaConstants.TicksPerHour)
            cautions.Add($"The sun stands highest at {noon.Clock} by this zone: do the place and the zone belong together?");
        return new(day.Spot.ToString(), $"{day.Date:uuuu-MM-dd}",
        [
            Line("civil dawn", day.Dawn, "none: it stays light all night", "none: it stays dark all day"), Line("sunrise", day.Rise, "none: the sun stays up", "none: the sun stays down"), new("noon", noon, null),
            Line("sunset", day.Set, "none: the sun stays up", "none: the sun stays down"), Line("civil dusk", day.Dusk, "none: it stays light all night", "none: it stays dark all day"),
        ], at is { } moment ? Moment.Of(moment, day.Spot.Zone, day.Date) : null, at is { } then ? Almanac.At(day.Spot, then) : null, cautions);
    }
}

/// <summary>One event: its moment, or why there is none.</summary>
public sealed record SunLine(string Name, Moment? At, string? WhyNot);
