using System.Globalization;
using Umpirage.District.Pitchers;

namespace Umpirage.District.Calendar.Constraints;

/// <summary>Times, teams and sources in words.</summary>
internal static class Said
{
    public static string Clock(DateTime at) => at.ToString("HH:mm", CultureInfo.InvariantCulture);
    public static string Day(DateOnly day) => day.ToString("ddd d MMM", CultureInfo.InvariantCulture);

    /// <summary>21.5 is 21:30.</summary>
    public static string Hour(double hour) => string.Create(CultureInfo.InvariantCulture, $"{(int)hour:00}:{(int)Math.Round(hour % 1 * 60):00}");

    public static string Team(Schedule schedule, string key) => schedule.Surroundings.Teams[key].Name;
    public static string Diamond(Schedule schedule, string key) => schedule.Surroundings.Diamonds[key].Name;
    public static string Game(Schedule schedule, ScheduledGame game) => $"{game.Key} ({game.Division}, {Team(schedule, game.Visitor)} at {Team(schedule, game.Home)})";
    public static string Source(Bar bar) => $"{bar.Sheet} {bar.Rule}; {bar.Source}";
}
