namespace Umpirage.District.Fits;

/// <summary>One mark that a rater gave a person, on the form's own scale.</summary>
public sealed record Mark(string Person, string Rater, double Value);

/// <summary>What is left of a mark when the rater's strictness is taken out: the level on the form's scale, its 95 % interval, and from how much.</summary>
public sealed record Level(string Person, double Value, double Low, double High, int Marks, int Raters);

/// <summary>
/// An additive fit of marks: the mean, each person's level, each rater's lean (positive: generous), and how widely persons, raters and single marks
/// are spread, as variances.
/// </summary>
public sealed record SeverityFit(double Mean, IReadOnlyList<Level> Levels, IReadOnlyDictionary<string, double> Lean, double PersonVariance, double RaterVariance, double MarkVariance)
{
    /// <summary>The share of a mark's variance that is the person's own, rater and chance making up the rest.</summary>
    public double Reliability => PersonVariance / (PersonVariance + RaterVariance + MarkVariance);

    /// <summary>Marks by different raters needed for a reliability, by the formula of Spearman and Brown (1910; from memory).</summary>
    public int MarksFor(double reliability) => (int)Math.Ceiling(reliability * (1 - Reliability) / ((1 - reliability) * Reliability) - 1e-9);
}

/// <summary>
/// Takes raters' strictness out of their marks: mark = mean + person + rater + chance, persons and raters normal around 0, so that who was seen
/// little is drawn toward the mean. Variances by restricted maximum likelihood with the EM algorithm; intervals widened for variances that are
/// themselves only estimated.
/// </summary>
public static class Severity
{
    private const int MostRounds = 500;

    /// <summary>Fits; null with fewer than three marks or a single person.</summary>
    public static SeverityFit? Fit(IReadOnlyList<Mark> marks)
    {
        List<string> persons = [.. marks.Select(m => m.Person).Distinct()], raters = [.. marks.Select(m => m.Rater).Distinct()];
        if (marks.Count < 3 || persons.Count < 2) return null;
        var (np, nr, n) = (persons.Count, raters.Count, marks.Count);
        var (personAt, raterAt) = (Places(persons), Places(raters));
        var size = 1 + np + nr;
        var (cross, right) = (new double[size, size], new double[size]);
        foreach (var mark in marks)
        {
            Span<int> at = [0, 1 + personAt[mark.Person], 1 + np + raterAt[mark.Rater]];
            foreach (var a in at) { right[a] += mark.Value; foreach (var b in at) cross[a, b]++; }
        }
        var total = marks.Sum(m => m.Value * m.Value);
        var variance = Math.Max(1e-6, (total - n * Math.Pow(right[0] / n, 2)) / Math.Max(1, n - 1));
        var (person, rater, chance) = (variance / 3, variance / 3, variance / 3);
        double[] solution = [];
        double[,] inverse = new double[0, 0];
        for (var round = 0; round < MostRounds; round++)
        {
            var equations = (double[,])cross.Clone();
            for (var i = 0; i < np; i++) equations[1 + i, 1 + i] += chance / person;
            for (var i = 0; i < nr; i++) equations[1 + np + i, 1 + np + i] += chance / rater;
            if (Dense.Factor(equations) is not { } factor) return null;
            (solution, inverse) = (Dense.Solve(factor, right), Dense.Inverse(factor));
            var explained = 0.0;
            for (var a = 0; a < size; a++) explained += solution[a] * right[a];
            var old = (person, rater, chance);
            var (squares, trace) = Part(1, np);
            person = Math.Max(1e-8 * variance, (squares + trace * old.chance) / np);
            (squares, trace) = Part(1 + np, nr);
            rater = Math.Max(1e-8 * variance, (squares + trace * old.chance) / nr);
            chance = Math.Max(1e-8 * variance, (total - explained) / (n - 1));
            if (Math.Abs(person - old.person) + Math.Abs(rater - old.rater) + Math.Abs(chance - old.chance) < 1e-7 * variance) break;
        }
        // Student's t with the persons' degrees of freedom stands in for not knowing the variances
        var wide = Student(Math.Max(2, np - 1));
        List<Level> levels =
        [
            .. persons.Select((p, i) =>
            {
                var (value, error) = (solution[0] + solution[1 + i], Math.Sqrt(chance * (inverse[0, 0] + 2 * inverse[0, 1 + i] + inverse[1 + i, 1 + i])));
                var mine = marks.Where(m => m.Person == p).ToList();
                return new Level(p, value, value - wide * error, value + wide * error, mine.Count, mine.Select(m => m.Rater).Distinct().Count());
            }),
        ];
        return new(solution[0], levels, raters.Select((r, i) => (r, solution[1 + np + i])).ToDictionary(x => x.r, x => x.Item2), person, rater, chance);

        (double Squares, double Trace) Part(int from, int count)
        {
            var (squares, trace) = (0.0, 0.0);
            for (var i = from; i < from + count; i++) { squares += solution[i] * solution[i]; trace += inverse[i, i]; }
            return (squares, trace);
        }
    }

    private static Dictionary<string, int> Places(List<string> names) => names.Select((n, i) => (n, i)).ToDictionary(x => x.n, x => x.i);

    /// <summary>The two-sided 95 % point of Student's t, to two decimals from 4 degrees of freedom on, to three from 10 (Cornish-Fisher expansion; Abramowitz and Stegun 26.7.5).</summary>
    public static double Student(int degrees)
    {
        const double z = 1.959964;
        double v = degrees;
        return z + (Math.Pow(z, 3) + z) / (4 * v) + (5 * Math.Pow(z, 5) + 16 * Math.Pow(z, 3) + 3 * z) / (96 * v * v)
            + (3 * Math.Pow(z, 7) + 19 * Math.Pow(z, 5) + 17 * Math.Pow(z, 3) - 15 * z) / (384 * v * v * v);
    }
}
