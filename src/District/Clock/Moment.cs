using System.Globalization;
using System.Text.Json.Serialization;
using NodaTime;

namespace Umpirage.District.Clock;

/// <summary>A moment as it is told at the field: the clock on the wall, and the same with its date and distance from UTC.</summary>
/// <param name="Clock">"19:22"; with its date when that is not the game's, and with its distance from UTC when that clock time comes twice.</param>
/// <param name="Exact">"2026-05-16T19:22:00-05:00".</param>
public sealed record Moment([property: JsonIgnore] Instant At, string Clock, string Exact)
{
    /// <summary>The moment as told at a spot in a game of this date; seconds are left out of the wall clock.</summary>
    public static Moment Of(Instant at, DateTimeZone zone, LocalDate date)
    {
        var local = at.InZone(zone);
        var clock = local.ToString("HH:mm", CultureInfo.InvariantCulture);
        if (local.Date != date) clock = local.ToString("uuuu-MM-dd HH:mm", CultureInfo.InvariantCulture);
        if (zone.MapLocal(local.LocalDateTime).Count > 1) clock += local.ToString("o<m>", CultureInfo.InvariantCulture);
        return new(at, clock, local.ToString("uuuu-MM-dd'T'HH:mm:sso<m>", CultureInfo.InvariantCulture));
    }

    public override string ToString() => Clock;
}
