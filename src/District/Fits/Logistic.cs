namespace Umpirage.District.Fits;

/// <summary>A fitted logistic regression: coefficients (the constant first), their standard errors, and the log-likelihood.</summary>
public sealed record LogisticFit(IReadOnlyList<double> Coefficients, IReadOnlyList<double> Errors, double LogLikelihood)
{
    /// <summary>The chance of a yes for the given predictors, the constant left out.</summary>
    public double Chance(IReadOnlyList<double> x)
    {
        var eta = Coefficients[0];
        for (var i = 0; i < x.Count; i++) eta += Coefficients[i + 1] * x[i];
        return 1 / (1 + Math.Exp(-eta));
    }
}

/// <summary>Logistic regression by Newton's steps (Greene, Econometric Analysis, chapter on binary choice).</summary>
public static class Logistic
{
    private const int MostSteps = 50;

    /// <summary>Fits; null when predictors depend on one another or the answers are parted perfectly, so that no best fit exists.</summary>
    public static LogisticFit? Fit(IReadOnlyList<double[]> x, IReadOnlyList<bool> yes)
    {
        if (x.Count == 0) return null;
        var n = x[0].Length + 1;
        var beta = new double[n];
        for (var step = 0; step < MostSteps; step++)
        {
            var (gradient, information, likelihood) = At(x, yes, beta);
            if (Dense.Factor(information) is not { } factor) return null;
            var change = Dense.Solve(factor, gradient);
            for (var i = 0; i < n; i++) beta[i] += change[i];
            if (beta.Any(b => Math.Abs(b) > 1e4)) return null;
            if (change.Max(Math.Abs) > 1e-10) continue;
            var inverse = Dense.Inverse(factor);
            return new(beta, [.. Enumerable.Range(0, n).Select(i => Math.Sqrt(inverse[i, i]))], likelihood);
        }
        return null;
    }

    private static (double[], double[,], double) At(IReadOnlyList<double[]> x, IReadOnlyList<bool> yes, double[] beta)
    {
        var n = beta.Length;
        var (gradient, information, likelihood) = (new double[n], new double[n, n], 0.0);
        var row = new double[n];
        row[0] = 1;
        for (var o = 0; o < x.Count; o++)
        {
            x[o].CopyTo(row, 1);
            var eta = 0.0;
            for (var i = 0; i < n; i++) eta += beta[i] * row[i];
            var p = 1 / (1 + Math.Exp(-eta));
            likelihood += (yes[o] ? eta : 0) - (eta > 0 ? eta + Math.Log(1 + Math.Exp(-eta)) : Math.Log(1 + Math.Exp(eta)));
            for (var i = 0; i < n; i++)
            {
                gradient[i] += ((yes[o] ? 1 : 0) - p) * row[i];
                for (var j = 0; j < n; j++) information[i, j] += p * (1 - p) * row[i] * row[j];
            }
        }
        return (gradient, information, likelihood);
    }
}
