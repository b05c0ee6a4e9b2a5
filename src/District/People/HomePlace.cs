namespace Umpirage.District.People;

/// <summary>About where an adult sets out from, in degrees, no finer than a kilometre. Of minors no such place is kept.</summary>
public sealed record HomePlace(string Person, double Latitude, double Longitude)
{
    /// <summary>Digits kept after the point: a hundredth of a degree is about a kilometre.</summary>
    public const int Places = 2;
}
