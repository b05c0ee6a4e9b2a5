using NodaTime;

namespace Umpirage.District.Clock;

/// <summary>
/// Tells when the sun rises and sets and where it stands. Sunrise and sunset: centre at -0.833 degrees, which is 34' of refraction and 16' to the
/// upper edge; civil dawn and dusk: -6 degrees (Almanac for Computers, US Naval Observatory, 1990 | published). Sea level, level horizon: hills,
/// trees and clouds bring the dark sooner.
/// </summary>
public static class Almanac
{
    /// <summary>Degrees of the sun's centre at sunrise and sunset, and at civil dawn and dusk.</summary>
    public const double Horizon = -0.833, Civil = -6;

    /// <summary>The years for which the series hold.</summary>
    public const int FirstYear = 1900, LastYear = 2100;

    private static readonly Duration HalfTurn = Duration.FromHours(12);

    /// <summary>The four events of the day whose noon falls on this date by the spot's clocks. A sun that does not set is an answer. ArgumentOutOfRange for a year outside 1900 to 2100.</summary>
    public static SunDay Day(Spot spot, LocalDate date)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(date.Year, FirstYear, nameof(date));
        ArgumentOutOfRangeException.ThrowIfGreaterThan(date.Year, LastYear, nameof(date));
        var noon = Meridian(spot, spot.Zone.AtLeniently(date.At(LocalTime.Noon)).ToInstant(), 0);
        var (before, after) = (Meridian(spot, noon - HalfTurn, 180), Meridian(spot, noon + HalfTurn, 180));
        return new(spot, date, Crossing(spot, before, noon, Civil), Crossing(spot, before, noon, Horizon), noon, Crossing(spot, after, noon, Horizon), Crossing(spot, after, noon, Civil));
    }

    /// <summary>Where the sun stands at a moment, to about 0.01 degrees.</summary>
    public static SunPlace At(Spot spot, Instant at) =>
        new(Ephemeris.Azimuth(at, spot.Latitude, spot.Longitude), Ephemeris.Elevation(at, spot.Latitude, spot.Longitude));

    /// <summary>Degrees by which air lifts a body that stands at this true elevation (Saemundsson's formula | from memory); nothing below -1 degree.</summary>
    /// <param name="elevation">Degrees, without refraction.</param>
    /// <param name="millibar">Pressure of the air at the site.</param>
    /// <param name="celsius">Temperature of the air.</param>
    public static double Refraction(double elevation, double millibar = 1010, double celsius = 10) =>
        elevation < -1 ? 0 : 1.02 / Math.Tan((elevation + 10.3 / (elevation + 5.11)) * Math.PI / 180) / 60 * millibar / 1010 * 283 / (273 + celsius);

    /// <summary>The moment near a guess at which the sun stands at this hour angle (0 noon, 180 midnight).</summary>
    private static Instant Meridian(Spot spot, Instant guess, double angle)
    {
        for (var turn = 0; turn < 6; turn++)
        {
            var off = Ephemeris.Signed(Ephemeris.Of(guess, spot.Longitude).HourAngle - angle);
            guess -= Duration.FromHours(off / 15);
        }
        return guess;
    }

    /// <summary>Halves the time between midnight and noon until the height is met to a hundredth of a second; the sun only climbs, or only sinks, between them.</summary>
    private static SunEvent Crossing(Spot spot, Instant midnight, Instant noon, double height)
    {
        if (Ephemeris.Elevation(noon, spot.Latitude, spot.Longitude) < height) return new(SunCase.StaysBelow, null);
        if (Ephemeris.Elevation(midnight, spot.Latitude, spot.Longitude) >= height) return new(SunCase.StaysAbove, null);
        var (low, high) = (midnight, noon);
        while (Duration.FromMilliseconds(10) < Duration.Max(high - low, low - high))
        {
            var middle = low + (high - low) / 2;
            if (Ephemeris.Elevation(middle, spot.Latitude, spot.Longitude) < height) low = middle; else high = middle;
        }
        return new(SunCase.Happens, high);
    }
}
