using Umpirage.District.People;

namespace Umpirage.District.Calendar;

/// <summary>How far and how long it is from one park to another.</summary>
public static class Travel
{
    /// <summary>Along the great circle.</summary>
    public static double Km(Park a, Park b) => Earth.Kilometres(a.Latitude, a.Longitude, b.Latitude, b.Longitude);

    /// <summary>Whole minutes from one park to another by a code's speed and spare time; none within a park.</summary>
    public static int Minutes(Park a, Park b, CalendarCode code) => a.Key == b.Key ? 0 : (int)Math.Ceiling(Km(a, b) / code.KmAnHour * 60 + code.SpareMinutes);
}
