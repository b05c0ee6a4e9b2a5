namespace Umpirage.District.Fits;

/// <summary>An ability from answers to questions whose parameters are known or assumed: the mean and deviation of what is still likely.</summary>
public static class Measuring
{
    private static readonly Grid Fine = Grid.Even(5, 101);

    /// <summary>With no answers the prior comes back: <paramref name="prior"/>, or mean 0 and deviation 1.</summary>
    public static Ability Of(IEnumerable<(Item Item, bool Right)> answers, Ability? prior = null)
    {
        var (centre, spread) = prior is { } p ? (p.Mean, p.Error) : (0, 1);
        var log = new double[Fine.Points.Length];
        foreach (var (item, right) in answers)
            for (var k = 0; k < log.Length; k++)
            {
                var eta = item.Slope * (centre + spread * Fine.Points[k]) + item.Intercept;
                log[k] -= Math.Log(1 + Math.Exp(right ? -eta : eta));
            }
        var highest = log.Max();
        double mass = 0, mean = 0, square = 0;
        for (var k = 0; k < log.Length; k++)
        {
            var (x, w) = (centre + spread * Fine.Points[k], Math.Exp(log[k] - highest) * Fine.Weights[k]);
            mass += w; mean += w * x; square += w * x * x;
        }
        mean /= mass;
        return new(mean, Math.Sqrt(Math.Max(0, square / mass - mean * mean)));
    }
}
