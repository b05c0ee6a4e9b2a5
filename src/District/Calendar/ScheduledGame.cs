namespace Umpirage.District.Calendar;

public enum GameStatus { Planned, Moved, RainedOut, CalledOff, Played, Suspended }

/// <summary>
/// A game at a time on a diamond. <paramref name="Start"/> is the district's own clock; <paramref name="Sequence"/> counts its changes, as calendars
/// want it. <paramref name="RestOf"/> is the suspended game that this one finishes.
/// </summary>
public sealed record ScheduledGame(string Key, string Division, string Visitor, string Home, string Diamond, DateTime Start, GameStatus Status, int Sequence, string? RestOf = null)
{
    /// <summary>It is to be played at its time.</summary>
    public bool IsAhead => Status is GameStatus.Planned or GameStatus.Moved;

    /// <summary>It was played, or is to be: it takes up its time and its diamond.</summary>
    public bool Stands => Status is not (GameStatus.RainedOut or GameStatus.CalledOff);

    public DateOnly Day => DateOnly.FromDateTime(Start);

    public bool Has(string team) => Home == team || Visitor == team;
}

/// <summary>A place in a game's crew; empty while <paramref name="Person"/> is null.</summary>
public sealed record Assignment(string Game, string Place, string? Person);
