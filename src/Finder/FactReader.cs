using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Finder;

/// <summary>Chooses which facts a question states. In doubt it leaves a fact to be asked: a wrong answer filled in is worse than none.</summary>
internal static class FactReader
{
    /// <summary>So much of what speaks for a value lies on the words that are shown for it.</summary>
    private const float Shown = 0.5f;
    private const int MostWords = 12, Small = 3;

    public static IReadOnlyList<ReadFact> Read(Codebook book, Sheet sheet, Utterance said, IReadOnlyList<FactChance> chances, float floor)
    {
        var sure = new List<(Term Term, string Value, float Chance, int First, int Last)>();
        foreach (var term in sheet.Facts)
        {
            // what a sheet no longer has, or has in other words, was learned in vain
            if (chances.FirstOrDefault(c => c.Fact == term.Name) is not { } chance || Array.IndexOf(chance.Said, chance.Said.Max()) is var best && chance.Said[best] < floor) continue;
            if (!term.Values.Contains(chance.Values[best])) continue;
            var (first, last) = Telling(chance.Words[best], w => said.Words[w].Said.Length <= Small);
            sure.Add((term, chance.Values[best], chance.Said[best], first, last));
        }
        foreach (var words in said.Sure)
            if (sheet.Facts.FirstOrDefault(f => f.Name == words.Fact) is { } term && term.Values.Contains(words.Value) && sure.All(s => s.Term != term) && said.Sure.All(o => o.Fact != words.Fact || o.Value == words.Value))
                sure.Add((term, words.Value, floor, words.First, words.Last));
        var bound = book.Bind(sheet, [], []);
        var kept = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        var read = new List<ReadFact>();
        foreach (var (term, value, chance, first, last) in sure.OrderByDescending(s => s.Chance))
        {
            kept[term.Name] = value;
            if (bound is not null && !CanBe(bound, kept)) { kept.Remove(term.Name); continue; }
            read.Add(new(term.Name, value, said.Between(first, last), Math.Round(chance, 2)));
        }
        return [.. read.OrderBy(r => sheet.Facts.FindIndex(f => f.Name == r.Fact))];
    }

    /// <summary>The run of words about the one that speaks most which together hold a good part of what speaks, and are not all small: "on" alone tells a reader nothing.</summary>
    public static (int First, int Last) Telling(float[] words, Func<int, bool> small)
    {
        var first = Array.IndexOf(words, words.Max());
        var (last, held) = (first, words[first]);
        while ((held < Shown || Enumerable.Range(first, last - first + 1).All(small)) && last - first + 1 < Math.Min(MostWords, words.Length))
        {
            var (left, right) = (first > 0 ? words[first - 1] : -1, last + 1 < words.Length ? words[last + 1] : -1);
            held += Math.Max(left, right);
            if (left > right) first--; else last++;
        }
        return (first, last);
    }

    /// <summary>Whether no combination the sheet calls impossible is wholly there. One that hangs on a parameter is left to the ruling.</summary>
    private static bool CanBe(BoundSheet bound, Dictionary<string, string> facts) => !bound.Impossible.Any(i => i.When.Count > 0 && i.When.All(w => Holds(bound, w, facts)));

    private static bool Holds(BoundSheet bound, Condition condition, Dictionary<string, string> facts)
    {
        if (condition.Left is not null || condition.Operands.Any(o => o.Word is null)) return false;
        var term = bound.Terms[condition.Term];
        if (!facts.TryGetValue(term.Name, out var value)) return false;
        var at = term.ValueIndex(value);
        var named = condition.Operands.Select(o => term.ValueIndex(o.Word!)).ToList();
        return condition.Comparison switch
        {
            Comparison.Is => named.Contains(at),
            Comparison.IsNot => !named.Contains(at),
            Comparison.Before => at < named[0],
            Comparison.After => at > named[0],
            Comparison.AtLeast => at >= named[0],
            _ => at <= named[0],
        };
    }
}
