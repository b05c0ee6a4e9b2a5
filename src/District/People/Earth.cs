namespace Umpirage.District.People;

/// <summary>Distances over the earth.</summary>
public static class Earth
{
    /// <summary>Mean radius in km (IUGG 1980 | published).</summary>
    private const double Radius = 6371.0088;

    /// <summary>Kilometres along the great circle between two places in degrees north and east (haversine formula).</summary>
    public static double Kilometres(double latitude, double longitude, double otherLatitude, double otherLongitude)
    {
        static double Rad(double degrees) => degrees * Math.PI / 180;
        var (north, east) = (Math.Sin(Rad(otherLatitude - latitude) / 2), Math.Sin(Rad(otherLongitude - longitude) / 2));
        var h = north * north + Math.Cos(Rad(latitude)) * Math.Cos(Rad(otherLatitude)) * east * east;
        return 2 * Radius * Math.Asin(Math.Min(1, Math.Sqrt(h)));
    }
}
