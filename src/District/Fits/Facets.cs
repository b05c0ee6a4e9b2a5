namespace Umpirage.District.Fits;

/// <summary>One yes-or-no judgement of a rater about one person on one criterion.</summary>
public sealed record Judgement(string Person, string Rater, string Criterion, bool Yes);

/// <summary>
/// A many-facet fit: criteria by how easily they are granted, raters by how lenient they are (their sum is 0), the spread of the persons, each
/// person's measure with its error, and the marginal log-likelihood.
/// </summary>
public sealed record FacetsFit(
    IReadOnlyDictionary<string, double> Criteria, IReadOnlyDictionary<string, double> Raters, double Spread, IReadOnlyDictionary<string, Ability> Persons, double LogLikelihood);

/// <summary>
/// The many-facet Rasch model for yes-or-no judgements (Linacre 1994): logit of a yes = person + criterion + rater. Persons are normal around 0;
/// criteria and raters are fitted by marginal maximum likelihood, by EM as for questions.
/// </summary>
public static class Facets
{
    private const int MostRounds = 5000;
    private const double FineEnough = 1e-7;

    /// <summary>Fits; null when nothing can be told apart, as with one rater who always says yes.</summary>
    public static FacetsFit? Fit(IReadOnlyList<Judgement> judgements)
    {
        List<string> criteria = [.. judgements.Select(j => j.Criterion).Distinct().Order(StringComparer.Ordinal)], raters = [.. judgements.Select(j => j.Rater).Distinct().Order(StringComparer.Ordinal)];
        var persons = judgements.GroupBy(j => j.Person).ToList();
        if (criteria.Count == 0) return null;
        var (nc, nr) = (criteria.Count, raters.Count);
        int Pair(Judgement j) => criteria.IndexOf(j.Criterion) * nr + raters.IndexOf(j.Rater);
        var answers = persons.Select(p => p.Select(j => (Pair: Pair(j), j.Yes)).ToArray()).ToArray();
        var grid = Grid.Even(6, 121);
        // criteria, all raters but the last, and the spread
        var beta = new double[nc + nr];
        beta[^1] = 1;
        double Leniency(int r) => r < nr - 1 ? beta[nc + r] : -Enumerable.Range(0, nr - 1).Sum(x => beta[nc + x]);
        var abilities = new Ability[persons.Count];
        var likelihood = 0.0;
        for (var round = 0; round < MostRounds; round++)
        {
            var (asked, yes) = (new double[nc * nr, grid.Points.Length], new double[nc * nr, grid.Points.Length]);
            likelihood = 0;
            for (var i = 0; i < answers.Length; i++) likelihood += Expect(answers[i], i, asked, yes);
            if (Maximise(asked, yes) is not { } change) return null;
            if (change < FineEnough) break;
        }
        return new(criteria.Select((c, i) => (c, beta[i])).ToDictionary(x => x.c, x => x.Item2), raters.Select((r, i) => (r, Leniency(i))).ToDictionary(x => x.r, x => x.Item2),
            beta[^1], persons.Select((p, i) => (p.Key, abilities[i])).ToDictionary(x => x.Key, x => x.Item2), likelihood);

        double Expect((int Pair, bool Yes)[] mine, int person, double[,] asked, double[,] yes)
        {
            var here = new double[grid.Points.Length];
            foreach (var (pair, right) in mine)
            {
                var ease = beta[pair / nr] + Leniency(pair % nr);
                for (var k = 0; k < here.Length; k++)
                {
                    var eta = ease + beta[^1] * grid.Points[k];
                    here[k] -= Math.Log(1 + Math.Exp(right ? -eta : eta));
                }
            }
            var highest = here.Max();
            double mass = 0, mean = 0, square = 0;
            for (var k = 0; k < here.Length; k++)
            {
                here[k] = Math.Exp(here[k] - highest) * grid.Weights[k];
                mass += here[k];
                mean += here[k] * grid.Points[k];
                square += here[k] * grid.Points[k] * grid.Points[k];
            }
            mean /= mass;
            abilities[person] = new(beta[^1] * mean, beta[^1] * Math.Sqrt(Math.Max(0, square / mass - mean * mean)));
            foreach (var (pair, right) in mine)
                for (var k = 0; k < here.Length; k++)
                {
                    asked[pair, k] += here[k] / mass;
                    if (right) yes[pair, k] += here[k] / mass;
                }
            return highest + Math.Log(mass);
        }

        double? Maximise(double[,] asked, double[,] yes)
        {
            var size = beta.Length;
            var largest = 0.0;
            var x = new double[size];
            var (gradient, information) = (new double[size], new double[size, size]);
            for (var pair = 0; pair < nc * nr; pair++)
                for (var k = 0; k < grid.Points.Length; k++)
                {
                    if (asked[pair, k] < 1e-14) continue;
                    Array.Clear(x);
                    x[pair / nr] = 1;
                    if (pair % nr < nr - 1) x[nc + pair % nr] = 1;
                    else for (var r = 0; r < nr - 1; r++) x[nc + r] = -1;
                    x[^1] = grid.Points[k];
                    var eta = 0.0;
                    for (var a = 0; a < size; a++) eta += beta[a] * x[a];
                    var p = 1 / (1 + Math.Exp(-eta));
                    var (miss, w) = (yes[pair, k] - asked[pair, k] * p, asked[pair, k] * p * (1 - p));
                    for (var a = 0; a < size; a++)
                    {
                        if (x[a] == 0) continue;
                        gradient[a] += miss * x[a];
                        for (var b = 0; b < size; b++) information[a, b] += w * x[a] * x[b];
                    }
                }
            if (Dense.Factor(information) is not { } factor) return null;
            var step = Dense.Solve(factor, gradient);
            for (var a = 0; a < size; a++) { beta[a] += step[a]; largest = Math.Max(largest, Math.Abs(step[a])); }
            return largest;
        }
    }
}
