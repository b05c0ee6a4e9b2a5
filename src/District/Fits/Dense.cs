namespace Umpirage.District.Fits;

/// <summary>Small symmetric systems: solved and inverted by Cholesky's factor.</summary>
internal static class Dense
{
    /// <summary>The lower factor of a positive definite matrix; null when it is none.</summary>
    public static double[,]? Factor(double[,] a)
    {
        var n = a.GetLength(0);
        var l = new double[n, n];
        for (var j = 0; j < n; j++)
        {
            var diagonal = a[j, j];
            for (var k = 0; k < j; k++) diagonal -= l[j, k] * l[j, k];
            if (!(diagonal > 1e-12 * Math.Max(1, a[j, j]))) return null;
            l[j, j] = Math.Sqrt(diagonal);
            for (var i = j + 1; i < n; i++)
            {
                var sum = a[i, j];
                for (var k = 0; k < j; k++) sum -= l[i, k] * l[j, k];
                l[i, j] = sum / l[j, j];
            }
        }
        return l;
    }

    public static double[] Solve(double[,] factor, double[] right)
    {
        var n = right.Length;
        var x = (double[])right.Clone();
        for (var i = 0; i < n; i++)
        {
            for (var k = 0; k < i; k++) x[i] -= factor[i, k] * x[k];
            x[i] /= factor[i, i];
        }
        for (var i = n - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < n; k++) x[i] -= factor[k, i] * x[k];
            x[i] /= factor[i, i];
        }
        return x;
    }

    public static double[,] Inverse(double[,] factor)
    {
        var n = factor.GetLength(0);
        var inverse = new double[n, n];
        var unit = new double[n];
        for (var j = 0; j < n; j++)
        {
            unit[j] = 1;
            var column = Solve(factor, unit);
            unit[j] = 0;
            for (var i = 0; i < n; i++) inverse[i, j] = column[i];
        }
        return inverse;
    }
}
