namespace Umpirage.District.Fits;

/// <summary>
/// What is believed of one ability, as weights over a grid: grows with each answer, and tells how likely the ability lies above a mark. Starts as the
/// standard normal distribution.
/// </summary>
public sealed class Belief
{
    private static readonly Grid Points = Grid.Even(4.5, 61);

    private readonly double[] mass;

    private Belief(double[] mass) => this.mass = mass;

    /// <summary>Before any answer.</summary>
    public static Belief Start { get; } = new([.. Points.Weights]);

    /// <summary>The belief after an answer.</summary>
    public Belief After(Item item, bool right)
    {
        var (next, sum) = (new double[mass.Length], 0.0);
        for (var k = 0; k < next.Length; k++)
        {
            var p = item.Chance(Points.Points[k]);
            next[k] = mass[k] * (right ? p : 1 - p);
            sum += next[k];
        }
        for (var k = 0; k < next.Length; k++) next[k] /= sum;
        return new(next);
    }

    public Ability Ability
    {
        get
        {
            double mean = 0, square = 0;
            for (var k = 0; k < mass.Length; k++) { mean += mass[k] * Points.Points[k]; square += mass[k] * Points.Points[k] * Points.Points[k]; }
            return new(mean, Math.Sqrt(Math.Max(0, square - mean * mean)));
        }
    }

    /// <summary>How likely the ability is at least this high; a point of the grid on the mark counts half.</summary>
    public double Above(double mark)
    {
        var above = 0.0;
        for (var k = 0; k < mass.Length; k++)
            if (Math.Abs(Points.Points[k] - mark) < 1e-9) above += mass[k] / 2;
            else if (Points.Points[k] > mark) above += mass[k];
        return above;
    }
}
