using System.Numerics.Tensors;
using System.Runtime.InteropServices;
using Umpirage.Finder;

namespace Umpirage.Tune;

/// <summary>One layer of the sentence model: every piece looks at every other of its sentence, then each is worked on alone.</summary>
internal sealed class Block
{
    private const int Size = Encoder.Size, Heads = 12, Width = Size / Heads, Inner = 4 * Size;

    private readonly Linear query, key, value, gather, widen, narrow;
    private readonly float[] firstWeight, firstBias, lastWeight, lastBias;

    /// <param name="tables">Names of the six tables in the model file: query, key, value, gather, widen, narrow.</param>
    public Block(byte[] model, int layer, string[] tables, int rank, float pace, Random chance, int threads)
    {
        var places = ModelFile.Tables(model);
        float[] Of(string name) => MemoryMarshal.Cast<byte, float>(model.AsSpan(places[name])).ToArray();
        float[] Named(string name) => Of($"encoder.layer.{layer}.{name}");
        Linear Line(int table, string bias) => new(tables[table], Of(tables[table]), Named(bias), rank, pace, chance, threads);
        (query, key, value) = (Line(0, "attention.self.query.bias"), Line(1, "attention.self.key.bias"), Line(2, "attention.self.value.bias"));
        (gather, widen, narrow) = (Line(3, "attention.output.dense.bias"), Line(4, "intermediate.dense.bias"), Line(5, "output.dense.bias"));
        (firstWeight, firstBias) = (Named("attention.output.LayerNorm.weight"), Named("attention.output.LayerNorm.bias"));
        (lastWeight, lastBias) = (Named("output.LayerNorm.weight"), Named("output.LayerNorm.bias"));
    }

    public IReadOnlyList<Linear> Lines => [query, key, value, gather, widen, narrow];

    /// <summary>What the way back needs of the way forth.</summary>
    internal sealed class Tape(int count)
    {
        public float[] In = [];
        public readonly float[] Query = new float[count * Size], Key = new float[count * Size], Value = new float[count * Size], Seen = new float[count * Size];
        public readonly float[] Middle = new float[count * Size], Level = new float[count * Size], Inverse = new float[count];
        public readonly float[] Bend = new float[count * Inner], Bent = new float[count * Inner], LastLevel = new float[count * Size], LastInverse = new float[count], Out = new float[count * Size];
        public readonly List<float[]> Looks = [];
    }

    /// <param name="starts">Where each sentence begins among the rows, and where the last one ends.</param>
    public Tape Forth(float[] rows, int[] starts)
    {
        var (n, scale) = (starts[^1], 1 / MathF.Sqrt(Width));
        var (tape, sum) = (new Tape(n) { In = rows }, new float[n * Size]);
        query.Forth(rows, n, tape.Query);
        key.Forth(rows, n, tape.Key);
        value.Forth(rows, n, tape.Value);
        foreach (var (at, count) in Places(starts))
        {
            var look = new float[count * count];
            Matrix.Multiply(count, count, Width, tape.Query.AsSpan(at), Size, 1, tape.Key.AsSpan(at), 1, Size, look, count);
            for (var r = 0; r < count; r++)
            {
                var row = look.AsSpan(r * count, count);
                TensorPrimitives.Multiply(row, scale, row);
                TensorPrimitives.SoftMax<float>(row, row);
            }
            Matrix.Multiply(count, Width, count, look, count, 1, tape.Value.AsSpan(at), Size, 1, tape.Seen.AsSpan(at), Size);
            tape.Looks.Add(look);
        }
        gather.Forth(tape.Seen, n, sum);
        TensorPrimitives.Add<float>(sum, rows, sum);
        Curves.Level(sum, firstWeight, firstBias, tape.Level, tape.Inverse, tape.Middle);
        widen.Forth(tape.Middle, n, tape.Bend);
        Curves.Bend(tape.Bend, tape.Bent);
        narrow.Forth(tape.Bent, n, sum);
        TensorPrimitives.Add<float>(sum, tape.Middle, sum);
        Curves.Level(sum, lastWeight, lastBias, tape.LastLevel, tape.LastInverse, tape.Out);
        return tape;
    }

    /// <summary>The slopes of all changes, and of what came in unless nobody needs it.</summary>
    public float[]? Back(int thread, Tape tape, float[] slope, int[] starts, bool needed)
    {
        var (n, scale) = (starts[^1], 1 / MathF.Sqrt(Width));
        float[] sum = new float[n * Size], inner = new float[n * Inner], middle = new float[n * Size], seen = new float[n * Size];
        float[] q = new float[n * Size], k = new float[n * Size], v = new float[n * Size];
        Curves.LevelBack(slope, lastWeight, tape.LastLevel, tape.LastInverse, sum);
        narrow.Back(thread, tape.Bent, n, sum, inner);
        TensorPrimitives.Multiply<float>(inner, tape.Bend, inner);
        widen.Back(thread, tape.Middle, n, inner, middle);
        TensorPrimitives.Add<float>(middle, sum, middle);
        Curves.LevelBack(middle, firstWeight, tape.Level, tape.Inverse, sum);
        gather.Back(thread, tape.Seen, n, sum, seen);
        foreach (var ((at, count), look) in Places(starts).Zip(tape.Looks))
        {
            var by = new float[count * count];
            Matrix.Multiply(count, count, Width, seen.AsSpan(at), Size, 1, tape.Value.AsSpan(at), 1, Size, by, count);
            Matrix.Multiply(count, Width, count, look, 1, count, seen.AsSpan(at), Size, 1, v.AsSpan(at), Size);
            for (var r = 0; r < count; r++)
            {
                var share = look.AsSpan(r * count, count);
                var row = by.AsSpan(r * count, count);
                TensorPrimitives.Subtract(row, TensorPrimitives.Dot<float>(share, row), row);
                TensorPrimitives.Multiply(row, share, row);
                TensorPrimitives.Multiply(row, scale, row);
            }
            Matrix.Multiply(count, Width, count, by, count, 1, tape.Key.AsSpan(at), Size, 1, q.AsSpan(at), Size);
            Matrix.Multiply(count, Width, count, by, 1, count, tape.Query.AsSpan(at), Size, 1, k.AsSpan(at), Size);
        }
        var into = needed ? new float[n * Size] : null;
        query.Back(thread, tape.In, n, q, into);
        key.Back(thread, tape.In, n, k, into, true);
        value.Back(thread, tape.In, n, v, into, true);
        if (into is not null) TensorPrimitives.Add<float>(into, sum, into);
        return into;
    }

    /// <summary>For each sentence and each head, where its numbers begin and how many rows there are.</summary>
    private static IEnumerable<(int At, int Count)> Places(int[] starts)
    {
        for (var s = 0; s + 1 < starts.Length; s++)
            for (var head = 0; head < Heads; head++) yield return (starts[s] * Size + head * Width, starts[s + 1] - starts[s]);
    }
}
