using System.Diagnostics;
using Umpirage.District.Fits;

namespace Umpirage.Tests.Fits;

/// <summary>
/// The two-parameter model on the two classical data sets of five questions and 1,000 people (Bock and Lieberman 1970), by response pattern 00000 to
/// 11111. Published fits: LSAT6 log-likelihood -2466.653 (documentation of the R packages ltm and mirt), LSAT7 -2658.805 and the slopes .988 1.081
/// 1.706 .765 .736 (documentation of mirt); all parameters refitted independently in R 4.2.2.
/// </summary>
public class TwoParameterTests
{
    private static readonly double[] Lsat6 = [3, 6, 2, 11, 1, 1, 3, 4, 1, 8, 0, 16, 0, 3, 2, 15, 10, 29, 14, 81, 3, 28, 15, 80, 16, 56, 21, 173, 11, 61, 28, 298];
    private static readonly double[] Lsat7 = [12, 19, 1, 7, 3, 19, 3, 17, 10, 5, 3, 7, 7, 23, 8, 28, 7, 39, 11, 34, 14, 51, 15, 90, 6, 25, 7, 35, 18, 136, 32, 308];

    private static Responses Patterns(double[] counts) => Responses.Of(["Q1", "Q2", "Q3", "Q4", "Q5"],
        Enumerable.Range(0, 32).Select(p => (sbyte[])[.. Enumerable.Range(0, 5).Select(q => (sbyte)(p >> (4 - q) & 1))]), counts);

    private static void Held(double[] counts, double likelihood, double[] slopes, double[] intercepts)
    {
        var fit = TwoParameter.Fit(Patterns(counts));
        Assert.True(fit.Settled);
        Assert.Equal(likelihood, fit.LogLikelihood, 0.0005);
        for (var j = 0; j < 5; j++)
        {
            Assert.Equal(slopes[j], fit.Items[j].Slope, 0.005);
            Assert.Equal(intercepts[j], fit.Items[j].Intercept, 0.005);
        }
    }

    [Fact]
    public void Lsat6_is_fitted_as_published() =>
        Held(Lsat6, -2466.6534, [.8257, .7227, .8909, .6884, .6569], [2.7732, .9902, .2491, 1.2848, 2.0533]);

    [Fact]
    public void Lsat7_is_fitted_as_published() =>
        Held(Lsat7, -2658.8051, [.9875, 1.0808, 1.7075, .7650, .7357], [1.8559, .8080, 1.8052, .4860, 1.8545]);

    [Fact]
    public void The_shared_patterns_are_the_retyped_ones()
    {
        if (Folder.Shared("data", "irt", "lsat6_lsat7_patterns.csv") is not { } file) return;
        var rows = File.ReadLines(file).Skip(1).Select(l => l.Split(',').Select(double.Parse).ToArray()).ToList();
        Assert.Equal(Lsat6, rows.Select(r => r[6]));
        Assert.Equal(Lsat7, rows.Select(r => r[7]));
    }

    /// <summary>The same integral another way: person by person, on Simpson's rule, nothing shared with the program.</summary>
    private static double Twin(Responses responses, IReadOnlyList<Item> items, int steps = 2000)
    {
        const double reach = 6;
        var total = 0.0;
        for (var i = 0; i < responses.Rows.Count; i++)
        {
            var logs = new double[steps + 1];
            for (var k = 0; k <= steps; k++)
            {
                var x = -reach + 2 * reach * k / steps;
                var log = -x * x / 2 - Math.Log(Math.Sqrt(2 * Math.PI)) + Math.Log((k == 0 || k == steps ? 1 : k % 2 == 1 ? 4 : 2) * 2 * reach / steps / 3);
                for (var j = 0; j < items.Count; j++)
                {
                    if (responses.Rows[i][j] < 0) continue;
                    var p = 1 / (1 + Math.Exp(-(items[j].Slope * x + items[j].Intercept)));
                    log += Math.Log(responses.Rows[i][j] == 1 ? p : 1 - p);
                }
                logs[k] = log;
            }
            var highest = logs.Max();
            total += responses.Counts[i] * (highest + Math.Log(logs.Sum(l => Math.Exp(l - highest))));
        }
        return total;
    }

    private static (Responses, Item[]) Simulated(int people, int questions, int seed, double missing = 0)
    {
        var random = new Random(seed);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        Item[] items = [.. Enumerable.Range(0, questions).Select(_ => new Item(Math.Exp(0.3 * Normal()), 1.2 * Normal()))];
        var rows = Enumerable.Range(0, people).Select(_ =>
        {
            var ability = Normal();
            return (sbyte[])[.. items.Select(i => random.NextDouble() < missing ? (sbyte)-1 : random.NextDouble() < i.Chance(ability) ? (sbyte)1 : (sbyte)0)];
        }).ToList();
        return (Responses.Of([.. Enumerable.Range(1, questions).Select(q => $"Q{q}")], rows), items);
    }

    [Fact]
    public void The_likelihood_agrees_with_a_twin_also_where_not_all_were_asked()
    {
        var (responses, items) = Simulated(40, 12, 7, missing: 0.3);
        Assert.Equal(Twin(responses, items), TwoParameter.LogLikelihood(responses, items), 1e-6);
        (responses, items) = Simulated(20, 400, 8);
        Assert.Equal(Twin(responses, items), TwoParameter.LogLikelihood(responses, items), 1e-4);
    }

    [Fact]
    public void Two_thousand_people_and_four_hundred_questions_are_fitted_in_under_ten_seconds()
    {
        var (responses, truth) = Simulated(Folder.Count(500, 2000), Folder.Count(100, 400), 3);
        var watch = Stopwatch.StartNew();
        var fit = TwoParameter.Fit(responses, fine: 1e-4);
        var seconds = watch.Elapsed.TotalSeconds;
        TestContext.Current.TestOutputHelper?.WriteLine($"2PL, {responses.People} people x {truth.Length} questions: {seconds:0.00} s, {fit.Rounds} rounds, log-likelihood {fit.LogLikelihood:0.000}, at the truth {TwoParameter.LogLikelihood(responses, truth):0.000}");
        // the reference: the same likelihood by the twin; and a search ten times finer gains nothing that shows
        Assert.Equal(Twin(responses, fit.Items, steps: 600), fit.LogLikelihood, 0.001);
        Assert.Equal(TwoParameter.Fit(responses, fine: 1e-5).LogLikelihood, fit.LogLikelihood, 0.001);
        Assert.True(fit.Settled);
        Assert.True(seconds < 10, $"{seconds:0.0} s");
        // the best fit cannot be less likely than the truth, and lies near it
        Assert.True(fit.LogLikelihood > TwoParameter.LogLikelihood(responses, truth));
        Assert.InRange(Correlation(fit.Items.Select(i => i.Intercept), truth.Select(i => i.Intercept)), 0.97, 1);
        Assert.InRange(Correlation(fit.Items.Select(i => i.Slope), truth.Select(i => i.Slope)), 0.8, 1);
    }

    private static double Correlation(IEnumerable<double> a, IEnumerable<double> b)
    {
        var (x, y) = (a.ToList(), b.ToList());
        var (mx, my) = (x.Average(), y.Average());
        return x.Zip(y).Sum(p => (p.First - mx) * (p.Second - my)) / Math.Sqrt(x.Sum(v => (v - mx) * (v - mx)) * y.Sum(v => (v - my) * (v - my)));
    }

    [Fact]
    public void Ability_without_answers_is_the_prior_and_grows_surer_with_each()
    {
        Assert.Equal((0.0, 1.0), (Math.Round(Measuring.Of([]).Mean, 6), Math.Round(Measuring.Of([]).Error, 4)));
        var item = new Item(1.5, 0);
        var (one, three) = (Measuring.Of([(item, true)]), Measuring.Of([(item, true), (item, true), (item, true)]));
        Assert.True(one.Mean > 0 && three.Mean > one.Mean && three.Error < one.Error);
    }

    [Fact]
    public void Bad_files_tell_every_fault_at_once()
    {
        var findings = new List<Finding>();
        Assert.Null(Responses.Read("answers.csv", "Q1,Q2,Q2\n1,0,1\n1,x,0\n1,0\n", findings));
        Assert.Equal(
        [
            "answers.csv, line 1: there are 2 columns named 'Q2'; each question needs a name of its own",
            "answers.csv, line 3: 'Q2' is 'x'; allowed is 1 (right), 0 (wrong), or nothing when it was not asked",
            "answers.csv, line 4: there are 2 values; the first line names 3 columns",
        ], findings.Select(f => f.ToString()));
        findings.Clear();
        Assert.Null(Responses.Read("answers.csv", "Q1,Q2\n1,0\n1,1\n", findings));
        Assert.Equal("answers.csv, line 1: 'Q1' was always answered rightly; such a question has no finite difficulty, leave its column out", findings.Single().ToString());
    }
}
