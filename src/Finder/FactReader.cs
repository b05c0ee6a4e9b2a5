using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Finder;

/// <summary>Chooses which facts a question states. In doubt it leaves a fact to be asked: a wrong answer filled in is worse than none.</summary>
internal static class FactReader
{
    /// <summary>Surer than this a reading must be. Chosen on the asked questions, each left out in turn.</summary>
    public const float Floor = 0.8f;

    public static IReadOnlyList<ReadFact> Read(SubjectIndex index, Question question, int subject, float[] likeness, Codebook book)
    {
        var evidence = index.Evidence(question, subject, likeness);
        var chances = SubjectIndex.Chances(evidence, index.FactTrees);
        var sheet = index.Sheets[subject];
        var sure = new List<(int Fact, int Value, float Chance)>();
        for (var f = 0; f < chances.Length; f++)
        {
            var best = Array.IndexOf(chances[f], chances[f].Max());
            if (chances[f][best] > Floor) sure.Add((f, best, chances[f][best]));
        }
        var bound = book.Bind(sheet, [], []);
        var kept = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        var read = new List<ReadFact>();
        foreach (var (fact, value, chance) in sure.OrderByDescending(s => s.Chance).ThenBy(s => s.Fact))
        {
            var term = sheet.Facts[fact];
            kept[term.Name] = term.Values[value];
            if (bound is not null && !CanBe(bound, kept)) { kept.Remove(term.Name); continue; }
            var (first, last) = evidence.Windows[fact][value];
            read.Add(new(term.Name, term.Values[value], question.Said.Between(first, Math.Min(last, question.Words - 1)), Math.Round(chance, 2)));
        }
        return [.. read.OrderBy(r => sheet.Facts.FindIndex(f => f.Name == r.Fact))];
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
