using System.Numerics;
using System.Runtime.InteropServices;

namespace Umpirage.District.Fits;

/// <summary>
/// The two-parameter item response model, fitted by marginal maximum likelihood with the EM algorithm (Bock and Aitkin 1981). Each round also
/// fits the mean and spread of ability and folds them back into the items (parameter-expanded EM; Liu, Rubin and Wu 1998): with many questions
/// plain EM creeps along just these two directions.
/// </summary>
public static class TwoParameter
{
    private const int MostRounds = 2000;

    /// <summary>
    /// Fits every question. <paramref name="most"/> limits the rounds; <paramref name="fine"/> is the largest change of a slope or intercept at which
    /// the search ends.
    /// </summary>
    public static TwoParameterFit Fit(Responses responses, int most = MostRounds, double fine = 1e-6)
    {
        var grid = Grid.For(responses.Items.Count);
        var items = Start(responses);
        var (rounds, change, likelihood) = (0, double.MaxValue, 0.0);
        while (rounds < most && change > fine)
        {
            rounds++;
            var sums = Expect(responses, items, grid);
            likelihood = sums.LogLikelihood;
            change = Maximise(items, sums, grid, responses.People);
        }
        likelihood = Expect(responses, items, grid).LogLikelihood;
        return new(responses.Items, items, likelihood, rounds, change <= fine);
    }

    /// <summary>The marginal log-likelihood of answers under given questions.</summary>
    public static double LogLikelihood(Responses responses, IReadOnlyList<Item> items) =>
        Expect(responses, [.. items], Grid.For(responses.Items.Count)).LogLikelihood;

    private static Item[] Start(Responses responses)
    {
        var items = new Item[responses.Items.Count];
        for (var j = 0; j < items.Length; j++)
        {
            var (right, all) = (0.5, 1.0);
            for (var i = 0; i < responses.Rows.Count; i++)
                if (responses.Rows[i][j] >= 0) { all += responses.Counts[i]; right += responses.Counts[i] * responses.Rows[i][j]; }
            items[j] = new(1, 1.2 * Math.Log(right / (all - right)));
        }
        return items;
    }

    private sealed record Sums(double[] People, double[][] Asked, double[][] Right, double LogLikelihood);

    /// <summary>How many people are likely to stand at each point of the grid, how many of them were asked each question, and how many were right.</summary>
    private static Sums Expect(Responses responses, Item[] items, Grid grid)
    {
        var q = grid.Points.Length;
        var (logit, soft, column) = (new double[items.Length][], new double[items.Length][], new double[q]);
        for (var j = 0; j < items.Length; j++)
        {
            (logit[j], soft[j]) = (new double[q], new double[q]);
            for (var k = 0; k < q; k++)
            {
                var eta = items[j].Slope * grid.Points[k] + items[j].Intercept;
                logit[j][k] = eta;
                soft[j][k] = eta > 0 ? eta + Math.Log(1 + Math.Exp(-eta)) : Math.Log(1 + Math.Exp(eta));
                column[k] -= soft[j][k];
            }
        }
        var parts = Math.Clamp(responses.Rows.Count / 200, 1, MostParts);
        var done = new Sums[parts];
        Parallel.For(0, parts, p => done[p] = Part(responses, logit, soft, column, grid, p, parts));
        for (var p = 1; p < parts; p++)
        {
            Add(done[p].People, done[0].People);
            for (var j = 0; j < items.Length; j++) { Add(done[p].Asked[j], done[0].Asked[j]); Add(done[p].Right[j], done[0].Right[j]); }
        }
        // "asked" was gathered as those who were not
        foreach (var asked in done[0].Asked) for (var k = 0; k < q; k++) asked[k] = done[0].People[k] - asked[k];
        return done[0] with { LogLikelihood = done.Sum(d => d.LogLikelihood) };
    }

    // a fixed number, so that the sums come out the same on every machine
    private const int MostParts = 4;

    private static Sums Part(Responses responses, double[][] logit, double[][] soft, double[] column, Grid grid, int part, int parts)
    {
        var q = column.Length;
        double[][] Empty() => [.. logit.Select(_ => new double[q])];
        var sums = new Sums(new double[q], Empty(), Empty(), 0);
        var (here, total) = (new double[q], 0.0);
        for (var i = part; i < responses.Rows.Count; i += parts)
        {
            var row = responses.Rows[i];
            column.CopyTo(here, 0);
            for (var j = 0; j < row.Length; j++)
                if (row[j] == 1) Add(logit[j], here); else if (row[j] < 0) Add(soft[j], here);
            var highest = here.Max();
            var mass = 0.0;
            for (var k = 0; k < q; k++)
            {
                // what is less likely than one in 10^17 adds nothing to a double
                here[k] = here[k] < highest - 45 ? 0 : Math.Exp(here[k] - highest) * grid.Weights[k];
                mass += here[k];
            }
            total += responses.Counts[i] * (highest + Math.Log(mass));
            var scale = responses.Counts[i] / mass;
            for (var k = 0; k < q; k++) here[k] *= scale;
            Add(here, sums.People);
            for (var j = 0; j < row.Length; j++)
                if (row[j] == 1) Add(here, sums.Right[j]); else if (row[j] < 0) Add(here, sums.Asked[j]);
        }
        return sums with { LogLikelihood = total };
    }

    private static void Add(double[] from, double[] into)
    {
        var a = MemoryMarshal.Cast<double, Vector<double>>(from.AsSpan());
        var b = MemoryMarshal.Cast<double, Vector<double>>(into.AsSpan());
        for (var k = 0; k < a.Length; k++) b[k] += a[k];
        for (var k = a.Length * Vector<double>.Count; k < from.Length; k++) into[k] += from[k];
    }

    private static double Maximise(Item[] items, Sums sums, Grid grid, double people)
    {
        var (mean, square) = (0.0, 0.0);
        for (var k = 0; k < grid.Points.Length; k++) { mean += sums.People[k] * grid.Points[k]; square += sums.People[k] * grid.Points[k] * grid.Points[k]; }
        mean /= people;
        var spread = Math.Sqrt(Math.Max(1e-6, square / people - mean * mean));
        var change = 0.0;
        for (var j = 0; j < items.Length; j++)
        {
            var best = Newton(items[j], sums.Asked[j], sums.Right[j], grid);
            var folded = new Item(best.Slope * spread, best.Intercept + best.Slope * mean);
            change = Math.Max(change, Math.Max(Math.Abs(folded.Slope - items[j].Slope), Math.Abs(folded.Intercept - items[j].Intercept)));
            items[j] = folded;
        }
        return change;
    }

    private static Item Newton(Item item, double[] asked, double[] right, Grid grid)
    {
        for (var step = 0; step < 20; step++)
        {
            double ga = 0, gd = 0, haa = 0, had = 0, hdd = 0;
            for (var k = 0; k < asked.Length; k++)
            {
                if (asked[k] < 1e-12) continue;
                var x = grid.Points[k];
                var p = item.Chance(x);
                var (miss, w) = (right[k] - asked[k] * p, asked[k] * p * (1 - p));
                ga += miss * x; gd += miss; haa += w * x * x; had += w * x; hdd += w;
            }
            var determinant = haa * hdd - had * had;
            if (!(determinant > 1e-12)) return item;
            var (da, dd) = ((hdd * ga - had * gd) / determinant, (haa * gd - had * ga) / determinant);
            // a long step may overshoot where the curve is flat
            var shorten = Math.Min(1, 1 / Math.Max(Math.Abs(da), Math.Abs(dd)));
            item = new(item.Slope + shorten * da, item.Intercept + shorten * dd);
            if (Math.Abs(da) + Math.Abs(dd) < 1e-9) break;
        }
        return item;
    }
}
