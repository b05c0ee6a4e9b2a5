namespace Umpirage.District.Diamonds;

/// <summary>Householder's reflections on plain doubles: the damped step of a fit, and its cofactors.</summary>
internal static class Reflect
{
    /// <summary>The step that makes the residuals least, held back by damping times the scale of each parameter; null when parameters cannot be told apart.</summary>
    public static double[]? Step(double[][] slopes, double[] residuals, double[] scale, double damping)
    {
        int rows = slopes.Length, columns = scale.Length, more = damping > 0 ? columns : 0;
        var (a, y) = (new double[rows + more][], new double[rows + more]);
        // columns are brought to length one, so that feet and fractions of them count alike
        var unit = scale.Select(s => s > 0 ? s : 1).ToArray();
        for (var i = 0; i < rows; i++)
        {
            a[i] = new double[columns];
            for (var k = 0; k < columns; k++) a[i][k] = slopes[i][k] / unit[k];
            y[i] = -residuals[i];
        }
        for (var k = 0; k < more; k++) (a[rows + k] = new double[columns])[k] = Math.Sqrt(damping);
        if (Triangle(a, y) is not { } diagonal) return null;
        var step = Back(a, diagonal, y);
        for (var k = 0; k < columns; k++) step[k] /= unit[k];
        return step;
    }

    /// <summary>The inverse of the normal matrix, from the triangle and not from the squares.</summary>
    public static double[][]? Cofactors(double[][] slopes)
    {
        var n = slopes[0].Length;
        var unit = Enumerable.Range(0, n).Select(k => Math.Sqrt(slopes.Sum(r => r[k] * r[k])) is > 0 and var s ? s : 1).ToArray();
        var a = slopes.Select(r => r.Select((v, k) => v / unit[k]).ToArray()).ToArray();
        if (Triangle(a, new double[a.Length]) is not { } diagonal) return null;
        var inverse = Enumerable.Range(0, n).Select(c => Back(a, diagonal, [.. Enumerable.Range(0, n).Select(k => k == c ? 1.0 : 0)])).ToArray();
        return [.. Enumerable.Range(0, n).Select(i => Enumerable.Range(0, n).Select(j => inverse.Sum(column => column[i] * column[j]) / (unit[i] * unit[j])).ToArray())];
    }

    /// <summary>Turns the matrix into a triangle in place and carries the right side along; the diagonal, or null when a column hangs on others.</summary>
    private static double[]? Triangle(double[][] a, double[] y)
    {
        int rows = a.Length, columns = a[0].Length;
        if (rows < columns) return null;
        var diagonal = new double[columns];
        for (var k = 0; k < columns; k++)
        {
            var norm = 0.0;
            for (var i = k; i < rows; i++) norm += a[i][k] * a[i][k];
            norm = Math.Sqrt(norm);
            if (!(norm > 1e-15) || !double.IsFinite(norm)) return null;
            diagonal[k] = a[k][k] > 0 ? -norm : norm;
            a[k][k] -= diagonal[k];
            var beta = -(diagonal[k] * a[k][k]);
            for (var j = k + 1; j < columns; j++)
            {
                var dot = 0.0;
                for (var i = k; i < rows; i++) dot += a[i][k] * a[i][j];
                dot /= beta;
                for (var i = k; i < rows; i++) a[i][j] -= dot * a[i][k];
            }
            var with = 0.0;
            for (var i = k; i < rows; i++) with += a[i][k] * y[i];
            with /= beta;
            for (var i = k; i < rows; i++) y[i] -= with * a[i][k];
        }
        return diagonal;
    }

    private static double[] Back(double[][] a, double[] diagonal, double[] right)
    {
        var x = new double[diagonal.Length];
        for (var k = x.Length - 1; k >= 0; k--)
        {
            var value = right[k];
            for (var j = k + 1; j < x.Length; j++) value -= a[k][j] * x[j];
            x[k] = value / diagonal[k];
        }
        return x;
    }
}
