namespace Umpirage.District.Diamonds;

/// <summary>The best coefficients of a straight (linear) model, their standard deviations, the sum of squared residuals and the standard deviation of one observation.</summary>
public sealed record StraightFit(IReadOnlyList<double> Coefficients, IReadOnlyList<double> Deviations, double SumOfSquares, double Deviation)
{
    /// <summary>
    /// Least squares by Householder's reflections, carried in two doubles. Each row of the design is one observation. Null when the columns hang
    /// together, or when there are fewer rows than columns.
    /// </summary>
    public static StraightFit? Of(Twofold[][] design, double[] observed)
    {
        int rows = design.Length, columns = rows == 0 ? 0 : design[0].Length;
        if (rows < columns || columns == 0) return null;
        var a = design.Select(r => r.ToArray()).ToArray();
        var y = observed.Select(o => (Twofold)o).ToArray();
        var diagonal = new Twofold[columns];
        for (var k = 0; k < columns; k++)
        {
            Twofold sum = 0;
            for (var i = k; i < rows; i++) sum += a[i][k] * a[i][k];
            var norm = Twofold.Root(sum);
            if ((double)norm == 0) return null;
            diagonal[k] = a[k][k].High > 0 ? -norm : norm;
            var head = a[k][k] - diagonal[k];
            a[k][k] = head;
            var beta = -(diagonal[k] * head);
            for (var j = k + 1; j < columns; j++)
            {
                Twofold dot = 0;
                for (var i = k; i < rows; i++) dot += a[i][k] * a[i][j];
                dot /= beta;
                for (var i = k; i < rows; i++) a[i][j] -= dot * a[i][k];
            }
            Twofold with = 0;
            for (var i = k; i < rows; i++) with += a[i][k] * y[i];
            with /= beta;
            for (var i = k; i < rows; i++) y[i] -= with * a[i][k];
        }
        var largest = diagonal.Max(d => Math.Abs(d.High));
        if (diagonal.Any(d => Math.Abs(d.High) < largest * 1e-28)) return null;
        var best = Back(a, diagonal, y);
        Twofold rest = 0;
        for (var i = 0; i < rows; i++)
        {
            Twofold residual = observed[i];
            for (var j = 0; j < columns; j++) residual -= design[i][j] * best[j];
            rest += residual * residual;
        }
        var deviation = rows == columns ? 0 : Math.Sqrt(Math.Max(0, (double)rest) / (rows - columns));
        return new([.. best.Select(b => (double)b)], [.. Spread(a, diagonal).Select(s => deviation * s)], (double)rest, deviation);
    }

    private static Twofold[] Back(Twofold[][] a, Twofold[] diagonal, Twofold[] right)
    {
        var x = new Twofold[diagonal.Length];
        for (var k = x.Length - 1; k >= 0; k--)
        {
            var value = right[k];
            for (var j = k + 1; j < x.Length; j++) value -= a[k][j] * x[j];
            x[k] = value / diagonal[k];
        }
        return x;
    }

    /// <summary>The lengths of the rows of R's inverse: the roots of the diagonal of the inverse of the normal matrix.</summary>
    private static double[] Spread(Twofold[][] a, Twofold[] diagonal)
    {
        var squares = new Twofold[diagonal.Length];
        for (var c = 0; c < diagonal.Length; c++)
        {
            var unit = new Twofold[diagonal.Length];
            unit[c] = 1;
            var column = Back(a, diagonal, unit);
            for (var r = 0; r < column.Length; r++) squares[r] += column[r] * column[r];
        }
        return [.. squares.Select(s => Math.Sqrt((double)s))];
    }
}
