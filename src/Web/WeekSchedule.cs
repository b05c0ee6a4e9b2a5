using Microsoft.EntityFrameworkCore;
using Umpirage.District.Calendar;
using Umpirage.Store;

namespace Umpirage.Web;

/// <summary>A week of the district's games, held against every constraint that needs no pitching logs.</summary>
public sealed record WeekSchedule(DateOnly Monday, IReadOnlyList<ScheduledGame> Games, IReadOnlyList<Violation> Found, Surroundings Surroundings)
{
    /// <summary>Days on either side whose games can matter to a game of the week.</summary>
    private const int Near = 9, Week = 7;

    public static WeekSchedule Of(DistrictStore store, CalendarCodes codes, DateOnly day, DateTime now, bool check)
    {
        var monday = day.AddDays(-(((int)day.DayOfWeek + 6) % Week));
        var (from, until) = (monday.AddDays(-Near).ToDateTime(default), monday.AddDays(Week + Near).ToDateTime(default));
        var surroundings = Timetable.Surroundings(store, codes, pitchers: false);
        // a suspended game and its rest belong together however far apart they are
        var schedule = new Schedule(surroundings, store.Games.AsNoTracking().Where(g => (g.Start >= from && g.Start < until) || g.Status == GameStatus.Suspended || g.RestOf != null));
        bool Within(ScheduledGame g) => g.Day >= monday && g.Day < monday.AddDays(Week);
        if (!check) return new(monday, [.. schedule.All.Where(Within)], [], surroundings);
        var mending = new Mending(schedule, now);
        return new(monday, [.. schedule.All.Where(Within)], [.. Checking.Of(schedule).Where(v => v.About.Any(Within)).Select(v => v.Hard ? mending.Of(v) : v)], surroundings);
    }
}
