using System.Numerics;
using Umpirage.Rules.Codes;

namespace Umpirage.Rules.Plays;

/// <summary>A fact with another value than it had.</summary>
public sealed record Otherwise(BoundTerm Fact, string Value);

/// <summary>One change to what happened, and the ruling it would have brought.</summary>
public sealed record Change(IReadOnlyList<Otherwise> Had, Ruling Then)
{
    public string InWords(Ruling now) =>
        $"had {string.Join(" and ", Had.Select(h => $"{h.Fact.Name} been '{h.Value}'"))}: {string.Join("; ", Turned(now, Then).Select(d => d.InWords))}";

    /// <summary>What is announced otherwise than it was.</summary>
    internal static IEnumerable<Decided> Turned(Ruling now, Ruling then) => then.Announced.Where(d => !d.Values.SequenceEqual(now.Find(d.Term.Name)!.Values));
}

/// <summary>Finds the nearest changes that turn a ruling.</summary>
public static class WhatIf
{
    /// <summary>Single changes of a known fact that turn the ruling; pairs only when no single change does. At most <paramref name="most"/>, those that turn most first.</summary>
    public static IReadOnlyList<Change> Nearest(Ruling now, int most = 3)
    {
        if (!now.IsRuled) return [];
        var single = Changes(now, now.Situation, []).ToList();
        if (single.Count == 0)
            single = [.. Alternatives(now.Situation).SelectMany(a => Changes(now, With(now.Situation, a), [a], a.Fact.Index))];
        // one of each different outcome first, so that three lines show three ways out
        var ordered = single.OrderBy(c => c.Had.Count).ThenByDescending(c => Change.Turned(now, c.Then).Count()).ToList();
        var apart = ordered.DistinctBy(c => c.Then.InWords).ToList();
        return [.. apart.Concat(ordered.Except(apart)).Take(most)];
    }

    private static Situation With(Situation situation, Otherwise other) => situation.With(other.Fact.Index, 1UL << other.Fact.ValueIndex(other.Value));

    private static IEnumerable<Otherwise> Alternatives(Situation situation)
    {
        foreach (var fact in situation.Sheet.Bound.Facts)
        {
            var known = situation.Known[fact.Index];
            if (BitOperations.PopCount(known) != 1) continue;
            for (var v = 0; v < fact.Values.Count; v++)
                if ((situation.Sheet.Domain[fact.Index] & ~known & 1UL << v) != 0) yield return new(fact, fact.Values[v]);
        }
    }

    private static IEnumerable<Change> Changes(Ruling now, Situation from, IReadOnlyList<Otherwise> had, int after = -1)
    {
        foreach (var other in Alternatives(from))
        {
            if (other.Fact.Index <= after) continue;
            var then = Umpire.Rule(now.Table, With(from, other));
            if (then.IsRuled && Change.Turned(now, then).Any()) yield return new([.. had, other], then);
        }
    }
}
