namespace Umpirage.District.People;

/// <summary>A park with its place on the earth, in degrees north and east.</summary>
public sealed record Park(string Key, string Name, double Latitude, double Longitude);

/// <summary>One diamond of a park: the distance between its bases in feet, whether it is lit, and where it looks.</summary>
/// <param name="Bearing">Of the line from home through the pitcher's plate to second, in degrees clockwise from true north; null where nobody took it.</param>
public sealed record Diamond(string Key, string Park, string Name, int BasePath, bool Lit, double? Bearing = null);
