using System.Collections.Immutable;

namespace Umpirage.Rules.Games;

/// <summary>
/// One side's page of the scorebook. Every batter who completed a turn, and every runner placed on base, has scored, is out, was left on base
/// when a half-inning ended, or is on base now: the proof of the scorebook.
/// </summary>
public sealed record Book(int Batters, int PlacedRunners, int Runs, int OutsMade, int Left, ImmutableArray<int> ByInning)
{
    public static Book Empty { get; } = new(0, 0, 0, 0, 0, []);

    /// <summary>Whether batters to the plate = runs + left on base + outs, with those on base now counted as not yet settled.</summary>
    public bool Proves(int onBase) => Batters + PlacedRunners == Runs + OutsMade + Left + onBase;

    /// <summary>The page with a place for every inning up to this one.</summary>
    public Book Inning(int inning) => ByInning.Length >= inning ? this : (this with { ByInning = ByInning.Add(0) }).Inning(inning);

    public Book Score(int runs, int inning) =>
        runs == 0 ? this : this with { Runs = Runs + runs, ByInning = ByInning.SetItem(inning - 1, ByInning[inning - 1] + runs) };
}
