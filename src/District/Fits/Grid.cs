namespace Umpirage.District.Fits;

/// <summary>
/// Points of ability and their weights under a standard normal distribution, evenly spaced: such a sum is almost exact while the step is no wider
/// than what is still likely of one person, which narrows as more questions are asked.
/// </summary>
internal sealed record Grid(double[] Points, double[] Weights)
{
    public static Grid For(int questions) => questions <= 100 ? Even(6, 61) : Even(5.6, 113);

    public static Grid Even(double reach, int points)
    {
        double[] at = [.. Enumerable.Range(0, points).Select(k => -reach + 2 * reach * k / (points - 1))];
        double[] weight = [.. at.Select(x => Math.Exp(-x * x / 2))];
        var sum = weight.Sum();
        for (var k = 0; k < points; k++) weight[k] /= sum;
        return new(at, weight);
    }
}
