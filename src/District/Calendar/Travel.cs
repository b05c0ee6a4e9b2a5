using Umpirage.District.People;

namespace Umpirage.District.Calendar;

/// <summary>How far and how long it is from one park to another.</summary>
public static class Travel
{
    /// <summary>Mean radius of the earth in km (IUGG 1980 | published).</summary>
    private const double Radius = 6371.0;

    /// <summary>Along the great circle (haversine formula).</summary>
    public static double Km(Park a, Park b)
    {
        const double degree = Math.PI / 180;
        var (north, east) = (Math.Sin((b.Latitude - a.Latitude) * degree / 2), Math.Sin((b.Longitude - a.Longitude) * degree / 2));
        var h = north * north + Math.Cos(a.Latitude * degree) * Math.Cos(b.Latitude * degree) * east * east;
        return 2 * Radius * Math.Asin(Math.Min(1, Math.Sqrt(h)));
    }

    /// <summary>Whole minutes from one park to another by a code's speed and spare time; none within a park.</summary>
    public static int Minutes(Park a, Park b, CalendarCode code) => a.Key == b.Key ? 0 : (int)Math.Ceiling(Km(a, b) / code.KmAnHour * 60 + code.SpareMinutes);
}
