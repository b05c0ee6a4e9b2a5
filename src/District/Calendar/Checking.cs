using Umpirage.District.Calendar.Constraints;

namespace Umpirage.District.Calendar;

/// <summary>Holds a schedule against every constraint: the verb of this room, and the only judge of a plan.</summary>
public static class Checking
{
    /// <summary>Every constraint there is.</summary>
    public static IReadOnlyList<Constraint> Constraints { get; } =
    [
        new OneGameOnADiamond(), new TeamInOnePlace(), new GamesADay(), new DoubleheadersInSevenDays(), new BreakBetweenGames(), new SuspendedGameFirst(), new Curfew(), new Daylight(),
        new DiamondSize(), new ClosedDays(), new EnoughPitchers(),
    ];

    /// <summary>Everything that is wrong, in the order in which it matters. What can no longer be changed, as all its games are played, is left out.</summary>
    public static IReadOnlyList<Violation> Of(Schedule schedule) =>
    [
        .. Constraints.SelectMany(c => c.Find(schedule)).Where(v => v.About.Any(g => g.IsAhead))
            .OrderBy(v => v.At).ThenBy(v => v.Hard ? 0 : 1).ThenBy(v => v.Constraint, StringComparer.Ordinal).ThenBy(v => v.Key, StringComparer.Ordinal),
    ];

    /// <summary>What would be wrong that names this game, if it stood in the place of the game with its key.</summary>
    public static IEnumerable<Violation> Of(Schedule schedule, ScheduledGame game)
    {
        var around = schedule.Around(game);
        return Constraints.SelectMany(c => c.Find(around)).Where(v => v.Names(game.Key));
    }
}
