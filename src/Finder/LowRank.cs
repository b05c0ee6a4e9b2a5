using System.Numerics.Tensors;
using System.Runtime.InteropServices;

namespace Umpirage.Finder;

/// <summary>
/// A small change of one of the sentence model's tables, learned from the trade's texts: the product of a tall and a wide table of few numbers.
/// </summary>
/// <param name="Table">The table's name in the model file.</param>
/// <param name="Tall">Its rows times the rank, row by row.</param>
/// <param name="Wide">The rank times its columns, row by row.</param>
internal sealed record LowRank(string Table, int Rank, float[] Tall, float[] Wide)
{
    public int Rows => Tall.Length / Rank;
    public int Columns => Wide.Length / Rank;

    /// <summary>Adds the change to the table where it lies.</summary>
    /// <exception cref="FormatException">The model has no such table, or one of another size.</exception>
    public static void Merge(byte[] model, IReadOnlyList<LowRank> changes)
    {
        var tables = ModelFile.Tables(model);
        foreach (var change in changes)
        {
            if (!tables.TryGetValue(change.Table, out var place)) throw new FormatException($"the sentence model has no table '{change.Table}'");
            var table = MemoryMarshal.Cast<byte, float>(model.AsSpan(place));
            if (table.Length != change.Rows * change.Columns) throw new FormatException($"the sentence model's table '{change.Table}' has {table.Length} numbers; the change is of {change.Rows} rows and {change.Columns} columns");
            change.AddTo(table);
        }
    }

    public void AddTo(Span<float> table)
    {
        for (var r = 0; r < Rows; r++)
        {
            var row = table.Slice(r * Columns, Columns);
            for (var k = 0; k < Rank; k++) TensorPrimitives.MultiplyAdd(Wide.AsSpan(k * Columns, Columns), Tall[r * Rank + k], row, row);
        }
    }
}
