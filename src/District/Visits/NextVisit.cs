namespace Umpirage.District.Visits;

/// <summary>A visit that should come next, and why.</summary>
public sealed record NextVisit(string Umpire, string Evaluator, string Why)
{
    /// <summary>
    /// The visits that would teach most: an umpire about whom least is known, by an evaluator who has not seen that umpire and whose strictness most needs
    /// umpires that others saw. In the order of need, which says nothing about level.
    /// </summary>
    public static IReadOnlyList<NextVisit> Of(FormBook forms, IReadOnlyList<Evaluation> evaluations, IReadOnlyList<string> umpires, IReadOnlyList<string> evaluators, int most = 5)
    {
        var visits = new List<NextVisit>();
        var counted = evaluations.ToList();
        foreach (var umpire in umpires.OrderBy(u => counted.Count(e => e.Umpire == u)).ThenBy(u => counted.Where(e => e.Umpire == u).Select(e => e.Day).DefaultIfEmpty().Max()).ThenBy(u => u, StringComparer.Ordinal).Take(most))
        {
            var fresh = evaluators.Where(e => e != umpire && !counted.Any(c => c.Umpire == umpire && c.Evaluator == e)).ToList();
            if (fresh.Count == 0) continue;
            int Shared(string evaluator) => counted.Where(e => e.Evaluator == evaluator).Select(e => e.Umpire).Distinct().Count(u => counted.Any(e => e.Umpire == u && e.Evaluator != evaluator));
            var evaluator = fresh.OrderBy(Shared).ThenBy(e => visits.Count(v => v.Evaluator == e)).ThenBy(e => e, StringComparer.Ordinal).First();
            var (seen, shared) = (counted.Count(e => e.Umpire == umpire), Shared(evaluator));
            visits.Add(new(umpire, evaluator, $"seen {seen} times{(seen < forms.Evaluations ? $" of the {forms.Evaluations} a band takes" : "")}; {evaluator} has not seen {umpire} yet and shares {shared} umpires with others"));
        }
        return visits;
    }
}
