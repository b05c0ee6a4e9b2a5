using NodaTime;

namespace Umpirage.District.Clock;

/// <summary>
/// Apparent place of the sun, good to about 0.01 degrees from 1900 to 2100: low-accuracy series, with nutation and aberration by their main
/// terms (Meeus, Astronomical Algorithms, 2nd ed., chapters 12, 22, 25 | from memory).
/// </summary>
internal static class Ephemeris
{
    private const double Turn = 360, Degree = Math.PI / 180;
    private static readonly Instant Epoch = Instant.FromUtc(2000, 1, 1, 12, 0);

    /// <summary>Hour angle west of the meridian, in (-180, 180], and declination; both in degrees.</summary>
    public static (double HourAngle, double Declination) Of(Instant at, double longitude)
    {
        var days = (at - Epoch).TotalDays;
        var centuries = (days + Slowing(days) / 86400) / 36525;
        var mean = 280.46646 + centuries * (36000.76983 + centuries * 0.0003032);
        var anomaly = (357.52911 + centuries * (35999.05029 - centuries * 0.0001537)) * Degree;
        var centre = (1.914602 - centuries * (0.004817 + centuries * 0.000014)) * Math.Sin(anomaly)
            + (0.019993 - centuries * 0.000101) * Math.Sin(2 * anomaly) + 0.000289 * Math.Sin(3 * anomaly);
        var node = (125.04452 - 1934.136261 * centuries) * Degree;
        var moon = (218.3165 + 481267.8813 * centuries) * Degree;
        var nutation = (-17.20 * Math.Sin(node) - 1.32 * Math.Sin(2 * mean * Degree) - 0.23 * Math.Sin(2 * moon) + 0.21 * Math.Sin(2 * node)) / 3600;
        var wobble = (9.20 * Math.Cos(node) + 0.57 * Math.Cos(2 * mean * Degree) + 0.10 * Math.Cos(2 * moon) - 0.09 * Math.Cos(2 * node)) / 3600;
        var ecliptic = (mean + centre - 0.00569 + nutation) * Degree;
        var tilt = (23.43929111 - centuries * (0.01300417 + centuries * 0.00000016) + wobble) * Degree;
        var ascension = Math.Atan2(Math.Cos(tilt) * Math.Sin(ecliptic), Math.Cos(ecliptic)) / Degree;
        var declination = Math.Asin(Math.Sin(tilt) * Math.Sin(ecliptic)) / Degree;
        var sidereal = 280.46061837 + 360.98564736629 * days + nutation * Math.Cos(tilt);
        return (Signed(sidereal + longitude - ascension), declination);
    }

    /// <summary>Degrees of the sun's centre above the level horizon at a spot, without refraction.</summary>
    public static double Elevation(Instant at, double latitude, double longitude)
    {
        var (hour, declination) = Of(at, longitude);
        var sine = Math.Sin(latitude * Degree) * Math.Sin(declination * Degree) + Math.Cos(latitude * Degree) * Math.Cos(declination * Degree) * Math.Cos(hour * Degree);
        return Math.Asin(Math.Clamp(sine, -1, 1)) / Degree;
    }

    /// <summary>Degrees clockwise from north.</summary>
    public static double Azimuth(Instant at, double latitude, double longitude)
    {
        var (hour, declination) = Of(at, longitude);
        var south = Math.Atan2(Math.Sin(hour * Degree), Math.Cos(hour * Degree) * Math.Sin(latitude * Degree) - Math.Tan(declination * Degree) * Math.Cos(latitude * Degree)) / Degree;
        return (south + 180 + Turn) % Turn;
    }

    public static double Signed(double degrees)
    {
        var angle = degrees % Turn;
        return angle > 180 ? angle - Turn : angle <= -180 ? angle + Turn : angle;
    }

    /// <summary>Seconds by which the turning earth lags behind even time, by a curve for 2005 to 2050 (Espenak and Meeus | from memory); a minute more or less moves the sun by 0.0007 degrees.</summary>
    private static double Slowing(double days)
    {
        var years = Math.Clamp(days / 365.25, -50, 100);
        return 62.92 + years * (0.32217 + years * 0.005589);
    }
}
