namespace Umpirage.District.People;

/// <summary>The district itself: its name, its IANA time zone, and a place in its middle, in degrees.</summary>
public sealed record DistrictFacts(string Key, string Name, string Zone, double Latitude, double Longitude)
{
    /// <summary>There is one in a store.</summary>
    public const string Only = "district";
}
