using Umpirage.District.People;

namespace Umpirage.District.Crews;

/// <summary>Minutes from place to place: a straight line over the earth at the code's speed, and the minutes to pack and park.</summary>
public static class Journey
{
    /// <summary>From one game to the next, whole minutes upwards.</summary>
    public static int Minutes(CrewGame from, CrewGame to) => from.Diamond.Key == to.Diamond.Key ? 0
        : from.Park.Key == to.Park.Key ? to.Code.FieldMinutes : Minutes(from.Park.Latitude, from.Park.Longitude, to);

    /// <summary>From home; nothing when no home is on record.</summary>
    public static int? Minutes(CrewPerson person, CrewGame to) => person.Home is { } home ? Minutes(home.Latitude, home.Longitude, to) : null;

    private static int Minutes(double latitude, double longitude, CrewGame to) =>
        (int)Math.Ceiling(Earth.Kilometres(latitude, longitude, to.Park.Latitude, to.Park.Longitude) / to.Code.Speed * 60) + to.Code.ParkMinutes;
}
