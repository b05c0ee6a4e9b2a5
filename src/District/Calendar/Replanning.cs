namespace Umpirage.District.Calendar;

/// <summary>A place in which a game could be, without anything hard being wrong with it, and how good it is; less is better.</summary>
public readonly record struct Placement(ScheduledGame Game, int DaysLate, int TeamsShort, bool LateForTheYoung, bool OtherPark);

/// <summary>
/// What is asked of a re-plan: the schedule with what is closed, the games that have to move, and the moment from which on. It makes the places
/// that may be chosen, and judges what was chosen.
/// </summary>
public sealed class Replanning
{
    /// <summary>Violations of one place that may be blamed on other games before it counts as hopeless.</summary>
    private const int MostInTheWay = 2;

    /// <summary>Games that are looked at as making room for one game without a place.</summary>
    private const int MostLookedAt = 60;

    private readonly Slots slots;
    private readonly HashSet<string> before;
    private readonly double latestHour;

    private Replanning(Schedule schedule, IReadOnlyList<ScheduledGame> mustMove, DateTime now)
    {
        (Schedule, MustMove, Now) = (schedule, mustMove, now);
        slots = new(schedule);
        before = [.. Checking.Of(schedule).Where(v => v.Hard).Select(v => v.Key)];
        latestHour = mustMove.Select(g => schedule.CodeOf(g).LatestHour).Concat(schedule.Surroundings.Divisions.Values.Select(d => schedule.Surroundings.Rules.On(d.Code, DateOnly.FromDateTime(now)).LatestHour)).Max() ?? 24;
    }

    /// <summary>The schedule with the closed days.</summary>
    public Schedule Schedule { get; }

    /// <summary>By start, then key.</summary>
    public IReadOnlyList<ScheduledGame> MustMove { get; }

    /// <summary>When everybody is told.</summary>
    public DateTime Now { get; }

    /// <param name="closed">What is closed from now on; games ahead that lie there have to move.</param>
    /// <param name="waiting">Games rained out before, by key, that are to be placed too.</param>
    public static Replanning Of(Schedule schedule, IReadOnlyList<Blackout> closed, DateTime now, IReadOnlyCollection<string> waiting)
    {
        var all = new Schedule(schedule.Surroundings.Closed(closed, keep: true), schedule.All);
        var wet = schedule.Surroundings.Closed(closed, keep: false);
        return new(all, [.. all.All.Where(g => (g.IsAhead && g.Start >= now && wet.Closing(g) is not null) || (g.Status == GameStatus.RainedOut && waiting.Contains(g.Key)))], now);
    }

    /// <summary>The days on which a game may be made up: from the first to the last that its code allows after the planned day; the first counts from today when that day is past.</summary>
    public (DateOnly From, DateOnly Until) Window(ScheduledGame game)
    {
        var code = Schedule.CodeOf(game);
        var today = DateOnly.FromDateTime(Now);
        return ((game.Day > today ? game.Day : today).AddDays(code.NotBefore), game.Day.AddDays(code.Within ?? 28));
    }

    /// <summary>Where a game could be in a schedule that has it not, and what stands against the other slots of its window.</summary>
    public (IReadOnlyList<Placement> Places, NoPlace Against) Places(Schedule without, ScheduledGame game)
    {
        var (from, until) = Window(game);
        var code = Schedule.CodeOf(game);
        var places = new List<Placement>();
        var against = new Dictionary<string, int>();
        var count = 0;
        foreach (var slot in slots.Between(from, until))
        {
            if (code.NotMadeUp(slot.Day.DayNumber - game.Day.DayNumber) is not null || !code.Fits(Schedule.Surroundings.Diamonds[slot.Diamond].BasePath)) continue;
            count++;
            var moved = Moved(game, slot);
            var wrong = Checking.Of(without, moved).ToList();
            if (wrong.FirstOrDefault(v => v.Hard) is { } hard) against[hard.Constraint] = against.GetValueOrDefault(hard.Constraint) + 1;
            else places.Add(Judged(without, game, moved, wrong.Count));
        }
        return (places, new(game, from, until, count, [.. against.OrderByDescending(a => a.Value).ThenBy(a => a.Key, StringComparer.Ordinal).Select(a => (a.Key, a.Value))]));
    }

    /// <summary>Games ahead whose moving would leave a place for a game that has none, nearest in time first.</summary>
    public IReadOnlyList<ScheduledGame> InTheWay(IEnumerable<ScheduledGame> without)
    {
        var found = new HashSet<string>();
        foreach (var game in without)
        {
            var (from, until) = Window(game);
            var code = Schedule.CodeOf(game);
            var own = new HashSet<string>();
            foreach (var slot in slots.Between(from, until))
            {
                if (own.Count >= MostLookedAt) continue;
                var moved = Moved(game, slot);
                var wrong = Checking.Of(Schedule, moved).Where(v => v.Hard).ToList();
                if (wrong.Count is 0 or > MostInTheWay || !wrong.All(v => v.About.Count > 1 && v.About.All(g => g.Key == game.Key || (g.IsAhead && g.Start >= Now.AddHours(code.NoticeHours))))) continue;
                own.UnionWith(wrong.SelectMany(v => v.About).Select(g => g.Key));
            }
            found.UnionWith(own);
        }
        return [.. Schedule.Standing.Where(g => found.Contains(g.Key) && !MustMove.Any(m => m.Key == g.Key))];
    }

    /// <summary>The place in which a game is: nothing is wrong with it there that was not wrong before.</summary>
    public static Placement Stays(ScheduledGame game) => new(game, 0, 0, false, false);

    /// <summary>What a schedule breaks that was not broken before.</summary>
    public IReadOnlyList<Violation> NewlyBroken(Schedule plan) => [.. Checking.Of(plan).Where(v => v.Hard && !before.Contains(v.Key))];

    /// <summary>A change as its own words.</summary>
    public Move As(Placement place)
    {
        var from = Schedule.Game(place.Game.Key)!;
        var rainedOut = MustMove.Any(g => g.Key == from.Key);
        var reason = !rainedOut ? "makes room" : from.Status == GameStatus.RainedOut ? "rained out, no new date yet" : Schedule.Surroundings.Closing(from)?.Reason ?? "closed";
        return new(from, place.Game, rainedOut, reason, place.TeamsShort);
    }

    private static ScheduledGame Moved(ScheduledGame game, Slot slot) => game with { Diamond = slot.Diamond, Start = slot.Start, Status = GameStatus.Moved };

    private Placement Judged(Schedule without, ScheduledGame game, ScheduledGame moved, int teamsShort)
    {
        var (code, end) = (without.CodeOf(moved), without.End(moved));
        // the young are those whose games have to be over sooner than those of the oldest
        var late = code.LatestHour < latestHour && Schedule.Surroundings.SunsetAt(moved.Diamond, moved.Day) is { } sunset && end > sunset;
        return new(moved, Math.Abs(moved.Day.DayNumber - game.Day.DayNumber), teamsShort, late, Schedule.Surroundings.ParkOf(moved.Diamond).Key != Schedule.Surroundings.ParkOf(game.Diamond).Key);
    }
}
