namespace Umpirage.District.Calendar;

public enum GameStatus { Planned, Moved, RainedOut, CalledOff, Played }

/// <summary>A game at a time on a diamond. <paramref name="Start"/> is the district's own clock; <paramref name="Sequence"/> counts its changes, as calendars want it.</summary>
public sealed record ScheduledGame(string Key, string Division, string Visitor, string Home, string Diamond, DateTime Start, GameStatus Status, int Sequence);

/// <summary>A place in a game's crew; empty while <paramref name="Person"/> is null.</summary>
public sealed record Assignment(string Game, string Place, string? Person);
