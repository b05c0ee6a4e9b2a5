using System.Numerics.Tensors;
using Umpirage.Finder;

namespace Umpirage.Tune;

/// <summary>One of the model's tables, which stays as it is, and the low-rank change of it that is learned.</summary>
internal sealed class Linear
{
    private readonly float[] fixedTable, bias, table, turned;
    private readonly int rows, columns, rank;
    private readonly string name;

    public Linear(string name, float[] table, float[] bias, int rank, float pace, Random chance, int threads)
    {
        (this.name, fixedTable, this.bias, this.rank) = (name, table, bias, rank);
        (rows, columns) = (table.Length / bias.Length, bias.Length);
        (this.table, turned) = (new float[table.Length], new float[table.Length]);
        Tall = new Weights(name + " tall", rows, rank, threads) { Pace = pace }.Scattered(chance, 1 / MathF.Sqrt(rows));
        Wide = new Weights(name + " wide", rank, columns, threads) { Pace = pace };
        Merge();
    }

    public Weights Tall { get; }
    public Weights Wide { get; }

    public LowRank Change => new(name, rank, [.. Tall.Numbers], [.. Wide.Numbers]);

    /// <summary>Takes the change into the table, after each step.</summary>
    public void Merge()
    {
        fixedTable.CopyTo(table, 0);
        Matrix.Multiply(rows, columns, rank, Tall.Numbers, rank, 1, Wide.Numbers, columns, 1, table, columns, true);
        for (var r = 0; r < rows; r++) for (var c = 0; c < columns; c++) turned[c * rows + r] = table[r * columns + c];
    }

    public void Forth(float[] x, int count, float[] y)
    {
        Matrix.Multiply(count, columns, rows, x, rows, 1, table, columns, 1, y, columns);
        for (var i = 0; i < count; i++) TensorPrimitives.Add(y.AsSpan(i * columns, columns), bias, y.AsSpan(i * columns, columns));
    }

    /// <param name="into">Where the slope of what came in goes; null where nobody needs it.</param>
    public void Back(int thread, float[] x, int count, float[] slope, float[]? into, bool grow = false)
    {
        var (low, lowSlope) = (new float[count * rank], new float[count * rank]);
        Matrix.Multiply(count, rank, rows, x, rows, 1, Tall.Numbers, rank, 1, low, rank);
        Matrix.Multiply(rank, columns, count, low, 1, rank, slope, columns, 1, Wide.Slopes(thread), columns, true);
        Matrix.Multiply(count, rank, columns, slope, columns, 1, Wide.Numbers, 1, columns, lowSlope, rank);
        Matrix.Multiply(rows, rank, count, x, 1, rows, lowSlope, rank, 1, Tall.Slopes(thread), rank, true);
        if (into is not null) Matrix.Multiply(count, rows, columns, slope, columns, 1, turned, rows, 1, into, rows, grow);
    }
}
