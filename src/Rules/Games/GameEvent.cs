namespace Umpirage.Rules.Games;

/// <summary>Something that happened in a game, in order. <paramref name="Line"/> is where it was written, from 1.</summary>
public abstract record GameEvent(int Line);

/// <summary>One pitch that did not end the turn at bat.</summary>
public sealed record Pitched(Pitch Pitch, int Line) : GameEvent(Line);

public enum Pitch { Ball, CalledStrike, SwingingStrike, Foul, FoulBunt, IllegalPitch, NoPitch }

/// <summary>A batter came to bat: the half-inning has begun, whatever becomes of it.</summary>
public sealed record CameToBat(string Batter, int Line) : GameEvent(Line);

/// <summary>
/// A play: where the batter and the runners went. <paramref name="TurnDone"/> says that the batter's turn is over; then the batter has a move.
/// Runners who are not named stay. <paramref name="What"/> is the play in words, for the scorebook.
/// </summary>
public sealed record Played(string? Batter, bool TurnDone, IReadOnlyList<Move> Moves, string What, int Line) : GameEvent(Line)
{
    /// <summary>Runs crossing the plate that do not count, because the third out was of a kind that cancels them.</summary>
    public bool NoRunCounts { get; init; }
}

/// <summary>Somebody moved: from the plate (the batter) or a base, to a base, home, or out. A runner may be named instead of her base.</summary>
public sealed record Move(Place From, Place To, string? Runner = null);

/// <summary>A player took a spot in the batting order or a position in the field. Spot 0 is a fielder who does not bat.</summary>
public sealed record Entered(Side Side, int Spot, string Player, string Position, int Line) : GameEvent(Line)
{
    /// <summary>The spot of the designated player for whom this one fields; 0 for everybody else.</summary>
    public int FlexFor { get; init; }
}

/// <summary>A runner placed on a base before the half-inning's first pitch, as the tie-break does.</summary>
public sealed record Placed(string Player, Place Base, int Line) : GameEvent(Line);

/// <summary>A runner replaced on base by another who stays in the game only to run: a courtesy runner.</summary>
public sealed record CourtesyRun(string For, string Runner, int Line) : GameEvent(Line);

public sealed record Conference(Side Side, bool Defensive, int Line) : GameEvent(Line);

/// <summary>A warning or an ejection, kept for the record.</summary>
public sealed record Noted(string Text, int Line) : GameEvent(Line);

/// <summary>Time called, or play again.</summary>
public sealed record Time(bool Alive, TimeOnly? Clock, string Reason, int Line) : GameEvent(Line);

/// <summary>The half-inning ended though three outs were not made (a run limit, the clock), or the game did.</summary>
public sealed record Ended(bool Game, string Reason, int Line) : GameEvent(Line);
