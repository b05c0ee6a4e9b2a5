namespace Umpirage.District.Visits;

/// <summary>Something to be talked about with an evaluator; for the chief only.</summary>
public sealed record Remark(string Evaluator, string Says)
{
    /// <summary>Steps from which on a lean or a drift is worth a talk; drift also has to be more than chance. Our own.</summary>
    private const double Worth = 0.5, Sure = 2;
    private const int EnoughForDrift = 6;

    /// <summary>Evaluators who share too few umpires, mark everything alike, lean far, or have changed in the course of the season.</summary>
    public static IReadOnlyList<Remark> Of(FormBook forms, IReadOnlyList<Evaluation> evaluations, Strictness? known = null)
    {
        var remarks = new List<Remark>();
        var fit = (known ?? Strictness.Of(evaluations)).Fit;
        var levels = fit?.Levels.ToDictionary(l => l.Person, l => l.Value) ?? [];
        foreach (var mine in evaluations.GroupBy(e => e.Evaluator).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            void Say(string says) => remarks.Add(new(mine.Key, says));
            var shared = mine.Select(e => e.Umpire).Distinct().Count(u => evaluations.Any(e => e.Umpire == u && e.Evaluator != mine.Key));
            if (shared < forms.Shared) Say($"shares {shared} umpires with other evaluators; {forms.Shared} are needed to know the strictness");
            if (mine.Count(e => e.Halo) is > 0 and var halo && halo * 2 >= mine.Count()) Say($"gave every item the same step in {halo} of {mine.Count()} visits");
            if (fit is null || !fit.Lean.TryGetValue(mine.Key, out var lean)) continue;
            if (Math.Abs(lean) >= Worth) Say(FormattableString.Invariant($"marks {Math.Abs(lean):0.0} steps {(lean > 0 ? "higher" : "lower")} than the others"));
            if (Drift([.. mine.OrderBy(e => e.On).Select(e => e.Mark - levels[e.Umpire] - lean)], fit.MarkVariance) is { } drift)
                Say(FormattableString.Invariant($"marks {Math.Abs(drift):0.0} steps {(drift > 0 ? "higher" : "lower")} in the later half of the visits than in the earlier"));
        }
        return remarks;
    }

    /// <summary>How much higher the later half of what is left of the marks lies than the earlier; null where that is little, or may be chance.</summary>
    private static double? Drift(IReadOnlyList<double> left, double variance)
    {
        if (left.Count < EnoughForDrift) return null;
        var half = left.Count / 2;
        var drift = left.Skip(left.Count - half).Average() - left.Take(half).Average();
        return Math.Abs(drift) >= Worth && Math.Abs(drift) >= Sure * Math.Sqrt(2 * variance / half) ? drift : null;
    }
}
