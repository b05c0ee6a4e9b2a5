using NodaTime;

namespace Umpirage.District.Clock;

/// <summary>Why an event of the sun does or does not happen on a day.</summary>
public enum SunCase { Happens, StaysAbove, StaysBelow }

/// <summary>One crossing of a height by the sun's centre; <paramref name="At"/> is null when the sun stays above or below that height.</summary>
public sealed record SunEvent(SunCase Case, Instant? At);

/// <summary>
/// A day of the sun at a spot: the day whose noon falls on <paramref name="Date"/> by the spot's own clocks. Its sunset may come after local
/// midnight, in the far north or where clocks run far ahead of the sun; it is still the evening of this date.
/// </summary>
public sealed record SunDay(Spot Spot, LocalDate Date, SunEvent Dawn, SunEvent Rise, Instant Noon, SunEvent Set, SunEvent Dusk);

/// <summary>Where the sun stands: degrees clockwise from north, and degrees of its centre above the level horizon, without refraction.</summary>
public sealed record SunPlace(double Azimuth, double Elevation)
{
    /// <summary>The elevation as it is seen, lifted by the air.</summary>
    public double Seen { get; } = Elevation + Almanac.Refraction(Elevation);
}
