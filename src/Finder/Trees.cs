namespace Umpirage.Finder;

/// <summary>
/// Boosted decision trees: many small questions about a row of features, whose answers add up to the odds that something is so. Grown the same
/// way every time; nothing in it is left to chance.
/// </summary>
internal sealed class Trees
{
    private const int Bins = 64;

    /// <summary>For each node: the feature asked about (-1 at a leaf), the limit, and the leaf's weight. Children of n are 2n+1 and 2n+2.</summary>
    private readonly record struct Node(short Feature, float Limit, float Weight);

    private readonly List<Node[]> trees = [];
    private double start;

    private Trees() { }

    /// <summary>The odds, as a logarithm: above 0 it is more likely so than not.</summary>
    public float Odds(ReadOnlySpan<float> row)
    {
        var sum = start;
        foreach (var tree in trees)
        {
            var at = 0;
            while (tree[at].Feature >= 0) at = 2 * at + (row[tree[at].Feature] <= tree[at].Limit ? 1 : 2);
            sum += tree[at].Weight;
        }
        return (float)sum;
    }

    public float Chance(ReadOnlySpan<float> row) => 1 / (1 + MathF.Exp(-Odds(row)));

    public static Trees Grow(IReadOnlyList<float[]> rows, IReadOnlyList<bool> so, int count, int depth, double rate, double least, IReadOnlyList<float>? weight = null)
    {
        var (n, features) = (rows.Count, rows[0].Length);
        var limits = new float[features][];
        var binned = new byte[features][];
        Parallel.For(0, features, f => (limits[f], binned[f]) = Binned(rows, f));
        double w(int i) => weight?[i] ?? 1;
        var all = Enumerable.Range(0, n).Sum(w);
        var positive = Enumerable.Range(0, n).Where(i => so[i]).Sum(w);
        var made = new Trees { start = Math.Log((positive + 1) / (all - positive + 1)) };
        var odds = new double[n];
        Array.Fill(odds, made.start);
        var (slope, bend) = (new double[n], new double[n]);
        for (var t = 0; t < count; t++)
        {
            for (var i = 0; i < n; i++)
            {
                var p = 1 / (1 + Math.Exp(-odds[i]));
                (slope[i], bend[i]) = (w(i) * ((so[i] ? 1 : 0) - p), w(i) * Math.Max(p * (1 - p), 1e-6));
            }
            made.trees.Add(GrowOne(limits, binned, slope, bend, odds, n, depth, rate, least));
        }
        return made;
    }

    private static (float[], byte[]) Binned(IReadOnlyList<float[]> rows, int feature)
    {
        var sorted = rows.Select(r => r[feature]).Order().ToArray();
        var limits = new List<float>();
        for (var b = 1; b < Bins; b++)
        {
            var limit = sorted[(int)((long)b * (sorted.Length - 1) / Bins)];
            if (limits.Count == 0 || limit > limits[^1]) limits.Add(limit);
        }
        var edges = limits.ToArray();
        var bins = new byte[rows.Count];
        for (var i = 0; i < bins.Length; i++)
        {
            var at = Array.BinarySearch(edges, rows[i][feature]);
            bins[i] = (byte)(at < 0 ? ~at : at);
        }
        return (edges, bins);
    }

    private static Node[] GrowOne(float[][] limits, byte[][] binned, double[] slope, double[] bend, double[] odds, int n, int depth, double rate, double least)
    {
        var size = (1 << (depth + 1)) - 1;
        var tree = new Node[size];
        var members = new int[]?[size];
        members[0] = Enumerable.Range(0, n).ToArray();
        for (var at = 0; at < size; at++)
        {
            if (members[at] is not { } here) continue;
            var (s, b) = (0.0, 0.0);
            foreach (var i in here) { s += slope[i]; b += bend[i]; }
            var (feature, bin) = at < size / 2 && b >= 2 * least ? Best(binned, limits, here, slope, bend, s, b, least) : (-1, 0);
            if (feature < 0)
            {
                var weight = rate * s / (b + 1);
                tree[at] = new(-1, 0, (float)weight);
                foreach (var i in here) odds[i] += weight;
                continue;
            }
            tree[at] = new((short)feature, limits[feature][bin], 0);
            members[2 * at + 1] = [.. here.Where(i => binned[feature][i] <= bin)];
            members[2 * at + 2] = [.. here.Where(i => binned[feature][i] > bin)];
            members[at] = null;
        }
        return tree;
    }

    private static (int Feature, int Bin) Best(byte[][] binned, float[][] limits, int[] here, double[] slope, double[] bend, double s, double b, double least)
    {
        var gains = new (double Gain, int Bin)[binned.Length];
        Parallel.For(0, binned.Length, f =>
        {
            Span<double> slopes = stackalloc double[Bins + 1], bends = stackalloc double[Bins + 1];
            slopes.Clear();
            bends.Clear();
            var bins = binned[f];
            foreach (var i in here) { slopes[bins[i]] += slope[i]; bends[bins[i]] += bend[i]; }
            var (left, under, best) = (0.0, 0.0, (0.0, -1));
            for (var at = 0; at < limits[f].Length; at++)
            {
                left += slopes[at];
                under += bends[at];
                if (under < least || b - under < least) continue;
                var gain = left * left / (under + 1) + (s - left) * (s - left) / (b - under + 1) - s * s / (b + 1);
                if (gain > best.Item1 + 1e-9) best = (gain, at);
            }
            gains[f] = best;
        });
        var chosen = -1;
        for (var f = 0; f < gains.Length; f++)
            if (gains[f].Bin >= 0 && gains[f].Gain > 1e-6 && (chosen < 0 || gains[f].Gain > gains[chosen].Gain)) chosen = f;
        return chosen < 0 ? (-1, 0) : (chosen, gains[chosen].Bin);
    }

    public void Write(BinaryWriter to)
    {
        to.Write(start);
        to.Write(trees.Count);
        foreach (var tree in trees)
        {
            to.Write(tree.Length);
            foreach (var node in tree) { to.Write(node.Feature); to.Write(node.Limit); to.Write(node.Weight); }
        }
    }

    public static Trees Read(BinaryReader from)
    {
        var read = new Trees { start = from.ReadDouble() };
        for (var t = from.ReadInt32(); t > 0; t--)
        {
            var tree = new Node[from.ReadInt32()];
            for (var n = 0; n < tree.Length; n++) tree[n] = new(from.ReadInt16(), from.ReadSingle(), from.ReadSingle());
            read.trees.Add(tree);
        }
        return read;
    }
}
