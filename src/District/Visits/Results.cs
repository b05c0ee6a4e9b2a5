using Umpirage.District.Fits;
using Umpirage.District.People;

namespace Umpirage.District.Visits;

/// <summary>
/// What may be told of an umpire's evaluations. For an adult seen often enough by enough evaluators: a band and how far its interval reaches. For a minor
/// never a level, a band or an interval: strengths and goals only. There is no order among people anywhere.
/// </summary>
/// <param name="Band">The band of the level; null when it may not or cannot be told, and <paramref name="Why"/> says why.</param>
/// <param name="Reach">The bands the 95 % interval touches.</param>
public sealed record Result(string Umpire, string? Band, IReadOnlyList<string> Reach, (double Low, double High)? Interval, string Why, IReadOnlyList<string> Strengths, IReadOnlyList<Goal> Goals, int? MoreVisits);

/// <summary>Works out results with the evaluators' strictness taken out, and what the design of the visits cannot carry.</summary>
public static class Results
{
    private const double GoodEnough = 0.8;

    /// <summary>The results in the order of the names handed over, which says nothing about level.</summary>
    /// <param name="known">The evaluators' strictness, where somebody worked it out already.</param>
    /// <param name="minors">Umpires under age: their marks help to learn the evaluators' strictness, and nothing is told of them.</param>
    public static IReadOnlyList<Result> Of(FormBook forms, IReadOnlyList<Evaluation> evaluations, IReadOnlyList<string> umpires, IReadOnlySet<string> minors, Strictness? known = null)
    {
        // nothing is told of a minor, so nothing has to be fitted for one
        Strictness strictness = umpires.All(minors.Contains) ? new(new HashSet<string>(), null) : known ?? Strictness.Of(evaluations);
        var (linked, fit) = strictness;
        int? more = fit is { PersonVariance: > 1e-6 } ? fit.MarksFor(GoodEnough) : null;
        return [.. umpires.Select(u => One(forms, [.. evaluations.Where(e => e.Umpire == u).OrderByDescending(e => e.On)], u, minors.Contains(u), linked, fit, more))];
    }

    private static Result One(FormBook forms, List<Evaluation> mine, string umpire, bool minor, IReadOnlySet<string> linked, SeverityFit? fit, int? more)
    {
        List<string> strengths = [.. mine.SelectMany(e => e.Strong).Distinct().Take(forms.Strengths)];
        List<Goal> goals = [.. mine.SelectMany(e => e.ToWorkOn).DistinctBy(g => g.About).Take(forms.Goals)];
        Result None(string why, int? visits = null) => new(umpire, null, [], null, why, strengths, goals, visits);
        if (minor) return None("for a young umpire there are strengths and goals, never a level");
        var evaluators = mine.Select(e => e.Evaluator).Distinct().Count();
        if (mine.Count < forms.Evaluations || evaluators < forms.Evaluators)
            return None($"{Told(mine.Count, evaluators)}; a band takes {forms.Evaluations} by {forms.Evaluators}", Math.Max(forms.Evaluations - mine.Count, forms.Evaluators - evaluators));
        if (mine.Any(e => !linked.Contains(e.Evaluator))) return None("an evaluator has seen nobody whom others saw, so strictness cannot be told from skill");
        if (fit?.Levels.FirstOrDefault(l => l.Person == umpire) is not { } level) return None("there are too few marks in all");
        List<string> reach = [.. forms.Bands.Where((b, i) => b.From <= level.High && (i + 1 == forms.Bands.Count || forms.Bands[i + 1].From > level.Low)).Select(b => b.Name)];
        return new(umpire, forms.BandOf(level.Value).Name, reach, (level.Low, level.High), $"{Told(mine.Count, evaluators)}, their strictness taken out", strengths, goals,
            more is { } needed && needed > mine.Count ? needed - mine.Count : null);
    }

    private static string Told(int evaluations, int evaluators) => $"{evaluations} evaluation{(evaluations == 1 ? "" : "s")} by {evaluators} evaluator{(evaluators == 1 ? "" : "s")}";
}
