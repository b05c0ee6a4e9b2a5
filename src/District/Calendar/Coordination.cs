namespace Umpirage.District.Calendar;

/// <summary>The adult named for a game with a minor in its crew: at the plate meeting, there throughout, no coach of that game, at one game at a time.</summary>
public sealed record Coordination(string Game, string Person);
