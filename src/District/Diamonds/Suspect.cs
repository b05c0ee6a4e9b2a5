namespace Umpirage.District.Diamonds;

/// <summary>
/// A reading that does not fit the others: by how much it is wrong as the others show it, in feet, and other readings in which the fault would look the
/// same.
/// </summary>
public sealed record Suspect(Reading Reading, double Wrong, double Deviations, IReadOnlyList<Reading> Or)
{
    public string InWords =>
        $"{Reading.Between} read {Tape.Told(Reading.Feet)}; the others say {Tape.Told(Reading.Feet - Wrong)}, {Tape.Told(Math.Abs(Wrong))} {(Wrong > 0 ? "less" : "more")}: tape it again"
        + (Or.Count == 0 ? "" : $" (it may as well be {Rules.Ground.Words.Or([.. Or.Select(r => r.Between)])}: tape that again, too)");

    /// <summary>A leftover beyond this many of its own deviations does not come by chance: once in a thousand readings (two-sided normal).</summary>
    private const double Limit = 3.29;

    /// <summary>Two leftovers as alike as this cannot be told apart.</summary>
    private const double TooAlike = 0.98;

    /// <summary>
    /// Takes out the reading that fits worst, one at a time, until none is beyond the limit. Every suspect is named; the net that is left stands
    /// on the others.
    /// </summary>
    public static (TapeNet Net, IReadOnlyList<Suspect> Suspects) Hunt(TapeNet net, IReadOnlyCollection<Pin> pins)
    {
        var suspects = new List<Suspect>();
        while (net.Freedom > 0)
        {
            var worst = Enumerable.Range(0, net.Readings.Count).MaxBy(i => Math.Abs(net.Standardized(i)));
            if (Math.Abs(net.Standardized(worst)) <= Limit) break;
            List<Reading> or = [.. Enumerable.Range(0, net.Readings.Count).Where(i => i != worst && Math.Abs(net.Alike(worst, i)) > TooAlike).Select(i => net.Readings[i])];
            suspects.Add(new(net.Readings[worst], net.Leftover(worst) / net.Checked(worst), Math.Abs(net.Standardized(worst)), or));
            if (TapeNet.Of(pins, [.. net.Readings.Where((_, i) => i != worst)], net.Deviation) is not { } without) break;
            net = without;
        }
        return (net, suspects);
    }
}
