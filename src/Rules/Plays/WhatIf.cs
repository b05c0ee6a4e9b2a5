using System.Numerics;
using Umpirage.Rules.Codes;

namespace Umpirage.Rules.Plays;

/// <summary>One change to what happened, and the ruling it would have brought.</summary>
public sealed record Change(IReadOnlyList<(BoundTerm Fact, string Value)> Had, Ruling Then)
{
    public string InWords(Ruling now)
    {
        var different = Then.Announced.Where(d => !d.Values.SequenceEqual(now.Find(d.Term.Name)!.Values)).Select(d => d.InWords);
        return $"had {string.Join(" and ", Had.Select(h => $"{h.Fact.Name} been '{h.Value}'"))}: {string.Join("; ", different)}";
    }
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
            single = [.. Alternatives(now.Situation).SelectMany(a => Changes(now, now.Situation.With(a.Fact.Index, 1UL << a.Value), [(a.Fact, a.Fact.Values[a.Value])], a.Fact.Index))];
        // one of each different outcome first, so that three lines show three ways out
        var seen = new HashSet<string>();
        var ordered = single.OrderBy(c => c.Had.Count).ThenByDescending(c => Turned(now, c)).ToList();
        return [.. ordered.Where(c => seen.Add(c.Then.InWords)).Concat(ordered.Where(c => !seen.Add(c.Then.InWords + "!"))).Take(most)];
    }

    private static int Turned(Ruling now, Change change) => change.Then.Announced.Count(d => !d.Values.SequenceEqual(now.Find(d.Term.Name)!.Values));

    private static IEnumerable<(BoundTerm Fact, int Value)> Alternatives(Situation situation) =>
        from fact in situation.Sheet.Bound.Facts
        where BitOperations.PopCount(situation.Known[fact.Index]) == 1
        from value in Enumerable.Range(0, fact.Values.Count)
        where (situation.Sheet.Domain[fact.Index] >> value & 1) != 0 && (situation.Known[fact.Index] >> value & 1) == 0
        select (fact, value);

    private static IEnumerable<Change> Changes(Ruling now, Situation from, IReadOnlyList<(BoundTerm, string)> had, int after = -1)
    {
        foreach (var (fact, value) in Alternatives(from))
        {
            if (fact.Index <= after) continue;
            var then = Umpire.Rule(now.Table, from.With(fact.Index, 1UL << value));
            if (then.IsRuled && Turned(now, new([], then)) > 0) yield return new([.. had, (fact, fact.Values[value])], then);
        }
    }
}
