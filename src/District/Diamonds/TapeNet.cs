namespace Umpirage.District.Diamonds;

/// <summary>
/// Points found from tape readings by least squares: places and their covariance in feet and square feet (from the tape's own deviation), and for
/// each reading what is left over, how far the other readings check it (0 not at all, 1 wholly) and the leftover in its own deviations.
/// </summary>
public sealed class TapeNet
{
    private readonly IReadOnlyDictionary<string, Pin> pins;
    private readonly Dictionary<string, int> at;
    private readonly CurvedFit fit;
    private readonly double[][] leftover;

    private TapeNet(IReadOnlyDictionary<string, Pin> pins, Dictionary<string, int> at, IReadOnlyList<Reading> readings, double deviation, CurvedFit fit)
    {
        (this.pins, this.at, Readings, Deviation, this.fit) = (pins, at, readings, deviation, fit);
        // what the fit leaves of unit errors: one less the projection on the slopes
        leftover = [.. fit.Slopes.Select((a, i) => fit.Slopes.Select((b, j) => (i == j ? 1 : 0) - Product(a, b)).ToArray())];
    }

    public IReadOnlyList<Reading> Readings { get; }

    /// <summary>The standard deviation of one tape reading, in feet, as it was given.</summary>
    public double Deviation { get; }

    public int Freedom => fit.Freedom;

    /// <summary>The deviation of a reading as the leftovers show it, in feet; 0 when nothing checks anything.</summary>
    public double Shown => fit.Deviation * Deviation;

    /// <summary>Finds the points that are not known; null when the readings do not hold them all.</summary>
    public static TapeNet? Of(IReadOnlyCollection<Pin> points, IReadOnlyList<Reading> readings, double deviation)
    {
        var pins = points.ToDictionary(p => p.Name);
        var at = new Dictionary<string, int>();
        var start = new List<double>();
        foreach (var pin in points)
        {
            if (pin.Hold == Hold.Known) continue;
            at[pin.Name] = start.Count;
            if (pin.Hold == Hold.Free) start.Add(pin.At.X);
            start.Add(pin.Hold == Hold.Free ? pin.At.Y : pin.At.Length);
        }
        if (start.Count == 0 || readings.Count < start.Count) return null;
        var fit = CurvedFit.Of([.. start], p => [.. readings.Select(r => (r.Feet - Place(pins[r.From], at, p).To(Place(pins[r.To], at, p))) / deviation)],
            p => [.. readings.Select(r => Slope(pins, at, p, r, deviation))], rounds: 200);
        return fit is null ? null : new(pins, at, readings, deviation, fit);
    }

    private static At Place(Pin pin, Dictionary<string, int> at, double[] p) => pin.Hold switch
    {
        Hold.Known => pin.At,
        Hold.Free => new(p[at[pin.Name]], p[at[pin.Name] + 1]),
        _ => pin.At * (p[at[pin.Name]] / pin.At.Length),
    };

    private static double[] Slope(Dictionary<string, Pin> pins, Dictionary<string, int> at, double[] p, Reading reading, double deviation)
    {
        var row = new double[p.Length];
        At from = Place(pins[reading.From], at, p), to = Place(pins[reading.To], at, p);
        var along = (to - from) * (1 / Math.Max(from.To(to), 1e-9) / deviation);
        Put(pins[reading.To], along * -1);
        Put(pins[reading.From], along);
        return row;

        void Put(Pin pin, At by)
        {
            if (pin.Hold == Hold.Known) return;
            var k = at[pin.Name];
            if (pin.Hold == Hold.Free) (row[k], row[k + 1]) = (row[k] + by.X, row[k + 1] + by.Y);
            else row[k] += (by.X * pin.At.X + by.Y * pin.At.Y) / pin.At.Length;
        }
    }

    private double Product(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
            for (var j = 0; j < b.Length; j++) sum += a[i] * fit.Cofactors[i][j] * b[j];
        return sum;
    }

    public At this[string point] => Place(pins[point], at, fit.Parameters);

    public IEnumerable<string> Points => pins.Keys;

    /// <summary>The covariance of a point's place, in square feet; nothing for a known one.</summary>
    public (double XX, double XY, double YY) Spread(string point)
    {
        var pin = pins[point];
        if (pin.Hold == Hold.Known) return default;
        var k = at[point];
        if (pin.Hold == Hold.Free) return (fit.Cofactors[k][k], fit.Cofactors[k][k + 1], fit.Cofactors[k + 1][k + 1]);
        var (u, v, q) = (pin.At.X / pin.At.Length, pin.At.Y / pin.At.Length, fit.Cofactors[k][k]);
        return (u * u * q, u * v * q, v * v * q);
    }

    /// <summary>The distance between two points as found, and its standard deviation, in feet.</summary>
    public (double Feet, double Deviation) Between(string a, string b)
    {
        var row = Slope(new Dictionary<string, Pin>(pins), at, fit.Parameters, new(a, b, 0), 1);
        return (this[a].To(this[b]), Math.Sqrt(Math.Max(0, Product(row, row))));
    }

    /// <summary>Reading less distance as found, in feet.</summary>
    public double Leftover(int reading) => fit.Residuals[reading] * Deviation;

    /// <summary>How far the other readings check this one: 0 not at all, 1 wholly.</summary>
    public double Checked(int reading) => Math.Max(0, leftover[reading][reading]);

    /// <summary>The leftover in its own standard deviations (Baarda 1968); 0 where nothing checks the reading.</summary>
    public double Standardized(int reading) => Checked(reading) < 1e-6 ? 0 : fit.Residuals[reading] / Math.Sqrt(Checked(reading));

    /// <summary>How alike two leftovers are, -1 to 1: near 1 either way, a fault in one looks like a fault in the other.</summary>
    public double Alike(int a, int b) => Checked(a) < 1e-6 || Checked(b) < 1e-6 ? 0 : leftover[a][b] / Math.Sqrt(Checked(a) * Checked(b));
}
