using Umpirage.Rules.Codes;

namespace Umpirage.District.Clinic;

/// <summary>Why one code rules as it does: the rule, its reason, the source.</summary>
public sealed record RuledBy(string Rule, string Title, string? Reason, string Source, bool Verified);

/// <summary>One decision of the same play under two codes.</summary>
public sealed record Turn(string Decision, string Ask, string Here, string There, RuledBy HereBy, RuledBy ThereBy);

/// <summary>
/// A minimal pair: one play that two codes rule differently, told with nothing but what matters. <paramref name="Lines"/> are the lines of the computed
/// crossover it stands for; <paramref name="Agree"/>: the one other fact with which both would rule alike, and how.
/// </summary>
public sealed record Contrast(
    string Key, string Sheet, string Group, string About, string When, string Situation, IReadOnlyList<string> Given, IReadOnlyList<Turn> Turns, string? Agree, IReadOnlyList<RulingDifference> Lines, string? Caution)
{
    /// <summary>What the lesson says of it: when this changes, what an instructor wrote about it has to be looked at again.</summary>
    public string Print => Stamp.Of(string.Join("|", Turns.Select(t => $"{t.Decision}={t.Here}/{t.There};{t.HereBy.Rule};{t.ThereBy.Rule};{t.HereBy.Source};{t.ThereBy.Source}")));
}
