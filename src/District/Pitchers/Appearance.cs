namespace Umpirage.District.Pitchers;

/// <summary>A child on a roster, by given name and an initial. No birth date, no address.</summary>
public sealed record Player(string Key, string Name);

/// <summary>A player's place on one team; a player may have several.</summary>
public sealed record RosterPlace(string Player, string Team, int Jersey);

/// <summary>
/// What one counter wrote of one pitcher in one game: pitches, the pitches before the last batter, innings in which a pitch was thrown, innings caught.
/// Two counters may disagree: both are kept.
/// </summary>
public sealed record Appearance(string Game, string Player, string Team, string Counter, int Pitches, int BeforeLastBatter, int Innings, int InningsCaught);
