namespace Umpirage.Finder;

/// <summary>A subject a question may be about, how well it fits (0 to 1, shared among all subjects), and the facts that were read.</summary>
public sealed record Found(string Sheet, string About, double Fit, IReadOnlyList<ReadFact> Facts);

/// <summary>A fact that the words state, the words, and how sure the reading is.</summary>
public sealed record ReadFact(string Fact, string Value, string Words, double Sure);

/// <summary>What was found, best first. When nothing fits, these are only the nearest, and no fact is read.</summary>
public sealed record Finds(bool Fits, IReadOnlyList<Found> Subjects);
