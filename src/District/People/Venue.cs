namespace Umpirage.District.People;

/// <summary>A park with its place on the earth, in degrees north and east.</summary>
public sealed record Park(string Key, string Name, double Latitude, double Longitude);

/// <summary>One diamond of a park: the distance between its bases in feet, and whether it is lit.</summary>
public sealed record Diamond(string Key, string Park, string Name, int BasePath, bool Lit);
