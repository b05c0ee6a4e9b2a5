namespace Umpirage.District.Diamonds;

/// <summary>
/// The best parameters of a curved (nonlinear) model: standard deviations and cofactors (the inverse of the normal matrix), the sum of squared residuals,
/// the deviation of one observation of weight one, and whether the search came to rest.
/// </summary>
public sealed record CurvedFit(double[] Parameters, double[] Residuals, double[][] Slopes, double[][] Cofactors, double SumOfSquares, int Rounds, bool Rests)
{
    private const double Still = 1e-13;

    public int Freedom => Residuals.Length - Parameters.Length;

    public double Deviation => Freedom > 0 ? Math.Sqrt(SumOfSquares / Freedom) : 0;

    public double DeviationOf(int parameter) => Deviation * Math.Sqrt(Cofactors[parameter][parameter]);

    /// <summary>
    /// Gauss-Newton steps, damped where a full step would not help (Levenberg 1944, Marquardt 1963; damping after Nielsen 1999, scaled by the columns
    /// after Moré 1978). Null when the parameters cannot be told apart.
    /// </summary>
    /// <param name="residuals">Observed less model at given parameters, each divided by its standard deviation where they differ.</param>
    /// <param name="slopes">How each residual changes with each parameter; worked out from the residuals where it is not given.</param>
    public static CurvedFit? Of(double[] start, Func<double[], double[]> residuals, Func<double[], double[][]>? slopes = null, int rounds = 30000)
    {
        slopes ??= p => Slope(p, residuals);
        CurvedFit? best = null;
        // a search that does not come to rest is begun again, along bent steps and held back more
        foreach (var (damping, follow, bent) in Beginnings)
        {
            if (Search(start, residuals, slopes, rounds, damping, follow, bent) is not { } found) continue;
            if (found.Rests) return found;
            if (best is null || found.SumOfSquares < best.SumOfSquares) best = found;
        }
        return best;
    }

    private static readonly (double Damping, bool Follow, bool Bent)[] Beginnings = [(1e-4, false, false), (1e-2, true, true), (1e-2, false, true), (1e4, true, true)];

    private static CurvedFit? Search(double[] start, Func<double[], double[]> residuals, Func<double[], double[][]> slopes, int rounds, double damping, bool follow, bool bent)
    {
        var at = (double[])start.Clone();
        var r = residuals(at);
        var j = slopes(at);
        var sum = Squares(r);
        var (scale, largest) = (new double[at.Length], new double[at.Length]);
        double grow = 2;
        var (round, rests, lean) = (0, false, 0);
        for (; round < rounds && !rests; round++)
        {
            for (var k = 0; k < at.Length; k++) scale[k] = Math.Max(follow ? 0 : scale[k], Math.Sqrt(j.Sum(row => row[k] * row[k])));
            for (var k = 0; k < at.Length; k++) largest[k] = Math.Max(largest[k], scale[k]);
            if (Reflect.Step(j, r, scale, damping) is not { } step) return null;
            var ran = bent && Bend(at, r, j, scale, damping, step, residuals) > MostBent;
            var next = new double[at.Length];
            for (var k = 0; k < at.Length; k++) next[k] = at[k] + step[k];
            var small = true;
            for (var k = 0; k < at.Length; k++) small &= Math.Abs(step[k]) <= Still * (Math.Abs(at[k]) + Still);
            var tried = residuals(next);
            var now = Squares(tried);
            var expected = sum - Expected(j, r, step);
            if (!ran && double.IsFinite(now) && now <= sum)
            {
                var gain = expected > 0 ? (sum - now) / expected : 1;
                // near the floor of rounding a step gains nothing that can be measured; a few more full steps settle the last digits
                lean = sum - now <= 1e-15 * sum && damping < 1e-3 ? lean + 1 : 0;
                (at, r, sum, j) = (next, tried, now, slopes(next));
                damping *= Math.Max(1.0 / 10, 1 - Math.Pow(2 * gain - 1, 3));
                if (damping < 1e-18) damping = 0;
                grow = 2;
                // a column that has faded away says that the search ran off to where its parameter no longer matters
                // a step that is small because it is held back says nothing
                var still = lean >= 6 || (small && damping < 1e-3);
                rests = still && !Faded(j, largest);
                if (still && !rests) break;
            }
            else
            {
                if (small || damping > 1e20) { rests = !Faded(j, largest) && Level(j, r, sum); break; }
                damping = damping == 0 ? 1e-10 : damping * grow;
                grow *= 2;
            }
        }
        return Reflect.Cofactors(j) is { } cofactors ? new(at, r, j, cofactors, sum, round, rests) : null;
    }

    private const double MostBent = 0.75;

    /// <summary>Whether no column leans on the residuals any more: their angle is a right one, as far as can be told.</summary>
    private static bool Level(double[][] j, double[] r, double sum) =>
        Enumerable.Range(0, j[0].Length).All(k => Math.Abs(r.Select((v, i) => v * j[i][k]).Sum()) <= 1e-6 * Math.Sqrt(sum * j.Sum(row => row[k] * row[k])));

    private static bool Faded(double[][] j, double[] largest) =>
        Enumerable.Range(0, largest.Length).Any(k => Math.Sqrt(j.Sum(row => row[k] * row[k])) < largest[k] * 1e-12);

    /// <summary>Bends a step along the curve of the model (geodesic acceleration, Transtrum and Sethna 2012); how far it bends, against the step's own length.</summary>
    private static double Bend(double[] at, double[] r, double[][] j, double[] scale, double damping, double[] step, Func<double[], double[]> residuals)
    {
        const double Part = 0.1;
        var ahead = residuals([.. at.Select((p, k) => p + Part * step[k])]);
        var curve = new double[r.Length];
        for (var i = 0; i < r.Length; i++)
        {
            var along = 0.0;
            for (var k = 0; k < step.Length; k++) along += j[i][k] * step[k];
            curve[i] = 2 / Part * ((ahead[i] - r[i]) / Part - along);
        }
        if (Reflect.Step(j, curve, scale, damping) is not { } bend) return double.PositiveInfinity;
        double length = 0, bent = 0;
        for (var k = 0; k < step.Length; k++)
        {
            length += Math.Pow(step[k] * scale[k], 2);
            bent += Math.Pow(bend[k] * scale[k], 2);
            step[k] += bend[k] / 2;
        }
        return length == 0 ? 0 : 2 * Math.Sqrt(bent / length);
    }

    private static double Squares(double[] r)
    {
        Twofold sum = 0;
        foreach (var v in r) sum += (Twofold)v * v;
        return (double)sum;
    }

    /// <summary>The sum of squares after a step if the model were straight.</summary>
    private static double Expected(double[][] j, double[] r, double[] step)
    {
        var sum = 0.0;
        for (var i = 0; i < r.Length; i++)
        {
            var v = r[i];
            for (var k = 0; k < step.Length; k++) v += j[i][k] * step[k];
            sum += v * v;
        }
        return sum;
    }

    /// <summary>Differences of fourth order on both sides.</summary>
    private static double[][] Slope(double[] at, Func<double[], double[]> residuals)
    {
        var columns = new double[at.Length][];
        for (var k = 0; k < at.Length; k++)
        {
            var h = 7e-4 * (at[k] == 0 ? 1 : Math.Abs(at[k]));
            h = at[k] + h - at[k];
            double[] two = Moved(2 * h), one = Moved(h), back = Moved(-h), far = Moved(-2 * h);
            columns[k] = [.. one.Select((_, i) => (far[i] - 8 * back[i] + 8 * one[i] - two[i]) / (12 * h))];

            double[] Moved(double by)
            {
                var p = (double[])at.Clone();
                p[k] += by;
                return residuals(p);
            }
        }
        return [.. Enumerable.Range(0, columns[0].Length).Select(i => columns.Select(c => c[i]).ToArray())];
    }
}
