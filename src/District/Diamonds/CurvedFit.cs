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
    public static CurvedFit? Of(double[] start, Func<double[], double[]> residuals, Func<double[], double[][]>? slopes = null, int rounds = 5000)
    {
        var at = (double[])start.Clone();
        var r = residuals(at);
        slopes ??= p => Slope(p, residuals);
        var j = slopes(at);
        var sum = Squares(r);
        var scale = new double[at.Length];
        double damping = 1e-4, grow = 2;
        var (round, rests, lean) = (0, false, 0);
        for (; round < rounds && !rests; round++)
        {
            for (var k = 0; k < at.Length; k++) scale[k] = Math.Max(scale[k], Math.Sqrt(j.Sum(row => row[k] * row[k])));
            if (Reflect.Step(j, r, scale, damping) is not { } step) return null;
            var next = new double[at.Length];
            for (var k = 0; k < at.Length; k++) next[k] = at[k] + step[k];
            var small = true;
            for (var k = 0; k < at.Length; k++) small &= Math.Abs(step[k]) <= Still * (Math.Abs(at[k]) + Still);
            var tried = residuals(next);
            var now = Squares(tried);
            var expected = sum - Expected(j, r, step);
            if (double.IsFinite(now) && now <= sum)
            {
                var gain = expected > 0 ? (sum - now) / expected : 1;
                // near the floor of rounding a step gains nothing that can be measured; a few more full steps settle the last digits
                lean = sum - now <= 1e-15 * sum ? lean + 1 : 0;
                (at, r, sum, j) = (next, tried, now, slopes(next));
                damping *= Math.Max(1.0 / 10, 1 - Math.Pow(2 * gain - 1, 3));
                if (damping < 1e-18) damping = 0;
                grow = 2;
                rests = small || lean >= 6;
            }
            else
            {
                if (small || (damping > 1e20)) { rests = true; break; }
                damping = damping == 0 ? 1e-10 : damping * grow;
                grow *= 2;
            }
        }
        return Reflect.Cofactors(j) is { } cofactors ? new(at, r, j, cofactors, sum, round, rests) : null;
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
