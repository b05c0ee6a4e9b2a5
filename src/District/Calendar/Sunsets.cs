using NodaTime;
using Umpirage.District.Clock;
using Umpirage.District.People;

namespace Umpirage.District.Calendar;

/// <summary>The sun of a district's parks, in the district's own clock.</summary>
public static class Sunsets
{
    /// <param name="zone">An IANA zone; one that is none is an error of the caller.</param>
    public static Func<Park, DateOnly, DateTime?> In(string zone)
    {
        var clocks = DateTimeZoneProviders.Tzdb[zone];
        return (park, day) => Almanac.Day(new(park.Latitude, park.Longitude, clocks), LocalDate.FromDateOnly(day)).Set.At?.InZone(clocks).ToDateTimeUnspecified();
    }
}
