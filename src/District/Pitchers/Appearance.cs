namespace Umpirage.District.Pitchers;

/// <summary>A child on a roster, by given name and an initial. No birth date, no address.</summary>
public sealed record Player(string Key, string Name);

/// <summary>A player's place on one team; a player may have several.</summary>
public sealed record RosterPlace(string Player, string Team, int Jersey);

/// <summary>
/// What one counter wrote of one pitcher in one game on one day: pitches, the pitches before the first to the last batter, innings in which a
/// pitch was thrown, innings caught, outs made while pitching. Two counters may disagree: both are kept. A game taken up again on another
/// day has a line for each day. A correction is a new line with a higher <paramref name="Entry"/>, the first being 1; none is ever changed.
/// </summary>
public sealed record Appearance(
    string Game, string Player, string Team, string Counter, DateOnly Day, int Entry, int Pitches, int BeforeLastBatter, int Innings, int InningsCaught, int Outs)
{
    /// <summary>What was counted, whoever counted it.</summary>
    public Count Count => new(Pitches, BeforeLastBatter, Innings, InningsCaught, Outs);

    /// <summary>The lines that stand: of each counter's lines on one outing the last correction.</summary>
    public static IEnumerable<Appearance> Standing(IEnumerable<Appearance> lines) =>
        lines.GroupBy(l => (l.Player, l.Game, l.Day, l.Counter)).Select(g => g.MaxBy(l => l.Entry)!);
}
