using Umpirage.District.Calendar;
using Umpirage.District.People;

namespace Umpirage.District.Crews;

/// <summary>A game as its crew meets it: when it begins and ends, where, for whom, under which code, and who coordinates.</summary>
/// <param name="End">When it was or is said to be over; otherwise the start and the code's planned length.</param>
/// <param name="EndIsKnown">Somebody said when it ends.</param>
public sealed record CrewGame(
    ScheduledGame Game, DateTime End, bool EndIsKnown, Division Division, Diamond Diamond, Park Park, Team Home, Team Visitor, UmpiresCode Code, CrewPerson? Coordinator)
{
    public string Key => Game.Key;
    public DateTime Start => Game.Start;
    public DateOnly Day => DateOnly.FromDateTime(Game.Start);

    /// <summary>The hour at which it is over, counted from the day's midnight.</summary>
    public double EndHour => (End - Start.Date).TotalHours;
}
