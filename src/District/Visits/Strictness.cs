using Umpirage.District.Fits;

namespace Umpirage.District.Visits;

/// <summary>How strict the evaluators are, as far as the design of the visits can carry it; worked out once for whatever is told from the same evaluations.</summary>
/// <param name="Linked">Evaluators who can be held against one another.</param>
/// <param name="Fit">Null when there are too few marks.</param>
public sealed record Strictness(IReadOnlySet<string> Linked, SeverityFit? Fit)
{
    public static Strictness Of(IReadOnlyList<Evaluation> evaluations)
    {
        var linked = LinkedIn(evaluations);
        return new(linked, Severity.Fit([.. evaluations.Where(e => linked.Contains(e.Evaluator)).Select(e => new Mark(e.Umpire, e.Evaluator, e.Mark))]));
    }

    /// <summary>Evaluators who hang together with the largest group through umpires whom both have seen.</summary>
    private static HashSet<string> LinkedIn(IReadOnlyList<Evaluation> evaluations)
    {
        var seen = evaluations.GroupBy(e => e.Evaluator).ToDictionary(g => g.Key, g => g.Select(e => e.Umpire).ToHashSet());
        var (left, best) = (seen.Keys.ToHashSet(), new HashSet<string>());
        while (left.Count > 0)
        {
            var (group, open) = (new HashSet<string>(), new Queue<string>([left.Order(StringComparer.Ordinal).First()]));
            while (open.TryDequeue(out var evaluator))
            {
                if (!left.Remove(evaluator)) continue;
                group.Add(evaluator);
                foreach (var other in left.Where(o => seen[o].Overlaps(seen[evaluator]))) open.Enqueue(other);
            }
            if (group.Count > best.Count) best = group;
        }
        return best;
    }
}
