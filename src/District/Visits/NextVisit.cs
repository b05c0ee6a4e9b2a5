using Umpirage.District.People;

namespace Umpirage.District.Visits;

/// <summary>A game in which an umpire could be watched, and the evaluators who are free and have no interest in it.</summary>
/// <param name="Unseen">Games worked in that position since the last visit there.</param>
public sealed record Chance(string Umpire, Position Position, string Game, DateTime Start, DateTime End, int Unseen, IReadOnlyList<string> Evaluators);

/// <summary>A visit that should come next, and why.</summary>
public sealed record NextVisit(Chance At, string Evaluator, string Why)
{
    /// <summary>
    /// The visits that would teach most: an umpire about whom least is known, by an evaluator who has not seen that umpire and whose strictness most needs
    /// umpires that others saw; one visit an umpire, nobody at two games at once. In the order of need, which says nothing about level.
    /// </summary>
    public static IReadOnlyList<NextVisit> Of(FormBook forms, IReadOnlyList<Evaluation> evaluations, IReadOnlyList<Chance> chances, int most = 5)
    {
        var (byUmpire, byEvaluator) = (evaluations.ToLookup(e => e.Umpire), evaluations.ToLookup(e => e.Evaluator));
        var shared = chances.SelectMany(c => c.Evaluators).Distinct().ToDictionary(e => e, e => byEvaluator[e].Select(v => v.Umpire).Distinct().Count(u => byUmpire[u].Any(o => o.Evaluator != e)));
        var visits = new List<NextVisit>();
        var inOrder = chances.OrderBy(c => byUmpire[c.Umpire].Count()).ThenByDescending(c => c.Unseen).ThenBy(c => byUmpire[c.Umpire].Select(e => e.On).DefaultIfEmpty().Max())
            .ThenBy(c => c.Start).ThenBy(c => c.Umpire, StringComparer.Ordinal);
        foreach (var chance in inOrder)
        {
            if (visits.Count == most) break;
            if (visits.Any(v => v.At.Umpire == chance.Umpire)) continue;
            var fresh = chance.Evaluators.Where(e => e != chance.Umpire && byUmpire[chance.Umpire].All(v => v.Evaluator != e) && !visits.Any(v => v.Evaluator == e && v.At.Start < chance.End && chance.Start < v.At.End));
            if (fresh.OrderBy(e => shared[e]).ThenBy(e => visits.Count(v => v.Evaluator == e)).ThenBy(e => e, StringComparer.Ordinal).FirstOrDefault() is not { } evaluator) continue;
            var seen = byUmpire[chance.Umpire].Count();
            visits.Add(new(chance, evaluator, $"{Times(seen)}{(seen < forms.Evaluations ? $", a band takes {forms.Evaluations}" : "")}; the evaluator has not seen this umpire yet and shares {Umpires(shared[evaluator])} with others"));
        }
        return visits;
    }

    private static string Times(int count) => count switch { 0 => "never evaluated", 1 => "evaluated once", 2 => "evaluated twice", _ => $"evaluated {count} times" };

    private static string Umpires(int count) => count switch { 0 => "no umpire", 1 => "one umpire", _ => $"{count} umpires" };
}
