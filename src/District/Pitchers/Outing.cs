namespace Umpirage.District.Pitchers;

/// <summary>What the ledger has to know of a game: its sport and division as the rule code names them, and its place in the day, in minutes after midnight.</summary>
public sealed record PitchedGame(string Key, string Sport, string Division, int Start);

/// <summary>
/// One player's pitching in one game on one day. Where counters disagree <paramref name="Most"/> and <paramref name="Least"/> differ; the
/// lines are all kept.
/// </summary>
public sealed record Outing(PitchedGame Game, DateOnly Day, string Team, Count Most, Count Least, IReadOnlyList<Appearance> Lines)
{
    public bool Disputed => Most != Least;

    /// <summary>Something was pitched in it, by the larger figures; it may also have been caught only.</summary>
    public bool Pitched => Most.Pitches + Most.Innings + Most.Outs > 0;

    public static Outing Of(PitchedGame game, IReadOnlyList<Appearance> lines) => new(
        game, lines[0].Day, lines[0].Team, lines.Select(l => l.Count).Aggregate(Count.Most), lines.Select(l => l.Count).Aggregate(Count.Least), lines);
}
