using System.Numerics.Tensors;

namespace Umpirage.Tune;

/// <summary>A table that is learned, and how each thread would have it change. It is moved by running means of the slopes (Adam).</summary>
internal sealed class Weights
{
    private const float Memory = 0.9f, SquareMemory = 0.98f;

    private readonly float[][] slopes;
    private readonly bool[][]? touched;
    private readonly float[] mean, square;
    private int steps;

    /// <param name="sparse">A step moves only the rows that were touched.</param>
    public Weights(string name, int rows, int columns, int threads, bool sparse = false)
    {
        (Name, Rows, Columns, Numbers) = (name, rows, columns, new float[rows * columns]);
        slopes = [.. Enumerable.Range(0, threads).Select(_ => new float[rows * columns])];
        touched = sparse ? [.. Enumerable.Range(0, threads).Select(_ => new bool[rows])] : null;
        (mean, square) = (new float[rows * columns], new float[rows * columns]);
    }

    public string Name { get; }
    public int Rows { get; }
    public int Columns { get; }
    public float[] Numbers { get; }
    /// <summary>How fast it learns beside others.</summary>
    public float Pace { get; init; } = 1;
    /// <summary>How fast what nothing speaks for is forgotten.</summary>
    public float Decay { get; init; }

    /// <summary>Starts from chance, evenly about nothing.</summary>
    public Weights Scattered(Random chance, float spread)
    {
        for (var i = 0; i < Numbers.Length; i++) Numbers[i] = (float)(spread * Math.Sqrt(-2 * Math.Log(1 - chance.NextDouble())) * Math.Cos(2 * Math.PI * chance.NextDouble()));
        return this;
    }

    public Span<float> Row(int row) => Numbers.AsSpan(row * Columns, Columns);

    public Span<float> Slopes(int thread) => slopes[thread];

    public Span<float> Slope(int thread, int row)
    {
        if (touched is not null) touched[thread][row] = true;
        return slopes[thread].AsSpan(row * Columns, Columns);
    }

    public void Step(float pace)
    {
        steps++;
        var (first, second) = (1 - MathF.Pow(Memory, steps), 1 - MathF.Pow(SquareMemory, steps));
        pace *= Pace;
        Parallel.For(0, Rows, new ParallelOptions { MaxDegreeOfParallelism = slopes.Length }, row =>
        {
            if (touched is not null)
            {
                var any = false;
                foreach (var mark in touched) { any |= mark[row]; mark[row] = false; }
                if (!any) return;
            }
            var slope = slopes[0].AsSpan(row * Columns, Columns);
            foreach (var other in slopes.Skip(1))
            {
                TensorPrimitives.Add(slope, other.AsSpan(row * Columns, Columns), slope);
                other.AsSpan(row * Columns, Columns).Clear();
            }
            for (int i = row * Columns, at = 0; at < Columns; i++, at++)
            {
                mean[i] = Memory * mean[i] + (1 - Memory) * slope[at];
                square[i] = SquareMemory * square[i] + (1 - SquareMemory) * slope[at] * slope[at];
                Numbers[i] -= pace * (mean[i] / first / (MathF.Sqrt(square[i] / second) + 1e-8f) + Decay * Numbers[i]);
            }
            slope.Clear();
        });
    }
}
