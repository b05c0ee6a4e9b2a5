using Umpirage.District.Crews;

namespace Umpirage.Solve.Crews;

/// <summary>What is asked of the search: the games whose crews are to be found, within a plan that holds everything else.</summary>
/// <param name="Plan">As it is on record. Crews of games that are not asked about stay as they are, and count for the day, the week and fairness over the season.</param>
/// <param name="Games">Games to find crews for.</param>
/// <param name="Seconds">Time for the whole search.</param>
/// <param name="Workers">Threads; one makes the search the same every time.</param>
public sealed record CrewTask(CrewPlan Plan, IReadOnlyList<CrewGame> Games, double Seconds = 15, int Workers = 2, int Seed = 1)
{
    /// <summary>Crews as people know them: as published where they were, otherwise as they are.</summary>
    public CrewPlan Standing => Published.Standing(Plan);

    /// <summary>The games of a week from its Monday on that have not begun and are not frozen.</summary>
    public static CrewTask Week(CrewPlan plan, DateOnly monday, DateTime now) =>
        new(plan, [.. plan.Games.Where(g => g.Game.IsAhead && g.Division.Crew > 0 && g.Day >= monday && g.Day < monday.AddDays(7) && g.Start > now && !plan.Records.Frozen.Any(f => f.Game == g.Key)).OrderBy(g => g.Start).ThenBy(g => g.Key, StringComparer.Ordinal)]);
}
