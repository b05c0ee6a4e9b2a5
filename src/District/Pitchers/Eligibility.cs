using Umpirage.Rules.Ground;

namespace Umpirage.District.Pitchers;

/// <summary>What is asked of a ledger: a day, the game if it is known, and how that game stands.</summary>
/// <param name="Game">The game the player is to pitch in, or pitches in; none asks for a new game on that day.</param>
/// <param name="BatterUnderWay">The last line of today is of this moment, and its last batter is at bat.</param>
/// <param name="PitchersUsed">Pitchers the team has used in this game before this one.</param>
public sealed record Occasion(DateOnly Day, PitchedGame? Game = null, bool BatterUnderWay = false, int PitchersUsed = 0);

public enum MayPitch { No, UntilThisBatterIsFinished, Yes }

/// <summary>How much of a day's limit is used. <paramref name="Limit"/> and <paramref name="Left"/> are none where the code sets no number.</summary>
public sealed record Room(Unit Unit, int Used, int? Limit, int? Left);

/// <summary>From so many more of a unit on: the days of rest it costs, and the first day on which the player may pitch again.</summary>
public sealed record Cost(Unit Unit, int More, int InAll, int RestDays, DateOnly NextDay);

/// <summary>
/// The answer for one player, day and code. Legal is not safe: it says what the code allows by the figures on record.
/// </summary>
/// <param name="Answer">By the larger figures, where counters disagree.</param>
/// <param name="ByTheSmaller">By the smaller figures; the same where counters agree.</param>
/// <param name="NextDay">The first day, from the day asked about on, on which the player may pitch; none within <see cref="Eligible.DaysAhead"/> days.</param>
/// <param name="AfterToday">The first day after the day asked about on which the player may pitch when no further pitch is thrown that day.</param>
/// <param name="NoCatching">Why the player may not catch any more that day; nothing when the code allows it.</param>
public sealed record Eligibility(
    string Player, DateOnly Day, CodeAddress Code, MayPitch Answer, MayPitch ByTheSmaller, IReadOnlyList<Bar> Bars, IReadOnlyList<Bar> Rest, IReadOnlyList<Room> Rooms,
    DateOnly? NextDay, DateOnly? AfterToday, Bar? NoCatching, IReadOnlyList<Outing> Disputed)
{
    /// <summary>Counters disagree, and it matters: the two figures lead to two answers.</summary>
    public bool Depends => Answer != ByTheSmaller;
}
