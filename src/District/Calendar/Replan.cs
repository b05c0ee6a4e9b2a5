namespace Umpirage.District.Calendar;

/// <summary>One game of a plan: where it was and where it goes.</summary>
/// <param name="RainedOut">It had to move; otherwise it makes room for one that had to.</param>
/// <param name="TeamsShort">Teams with too few pitchers who may pitch then, by the logs on record.</param>
public sealed record Move(ScheduledGame From, ScheduledGame To, bool RainedOut, string Reason, int TeamsShort)
{
    public int DaysLater => To.Day.DayNumber - From.Day.DayNumber;
}

/// <summary>A game for which there is no place, and what stands against the slots of its window: so many slots each.</summary>
public sealed record NoPlace(ScheduledGame Game, DateOnly From, DateOnly Until, int Slots, IReadOnlyList<(string Constraint, int Slots)> Why);

/// <summary>
/// New places for games that cannot be played where they were. Every plan was held against all constraints after it was found, and breaks nothing
/// that was not broken before.
/// </summary>
/// <param name="AtLeast">No plan that places as many games moves fewer than these, among the games looked at.</param>
/// <param name="Proven">No plan is better in any of the aims, in their order, among the games looked at.</param>
/// <param name="LookedAt">Games that did not have to move and were looked at, as making room.</param>
/// <param name="Rounds">How often a plan was found and judged.</param>
/// <param name="Wishes">Wishes that games of the plan do not meet.</param>
public sealed record Replan(
    IReadOnlyList<Move> Moves, IReadOnlyList<NoPlace> Without, int AtLeast, bool Proven, int LookedAt, int Rounds, IReadOnlyList<Violation> Wishes, TimeSpan Took)
{
    /// <summary>How many more games are moved than have been shown to be needed.</summary>
    public int Gap => Math.Max(0, Moves.Count - AtLeast);
}
