using System.Numerics.Tensors;
using Umpirage.Finder;
using Umpirage.Rules.Codes;

namespace Umpirage.Tune;

/// <summary>Every value of every fact of every subject, in their order, with the direction of its text "fact: value"; the same text under two subjects has the same name.</summary>
internal sealed class LabelBook
{
    private const float Long = 4;

    private readonly int[] starts;

    public LabelBook(IReadOnlyList<Sheet> sheets, Synonyms synonyms, LowerLayers layers)
    {
        (Sheets, starts) = (sheets, new int[sheets.Count + 1]);
        var (of, names, directions) = (new List<(int, int)>(), new Dictionary<string, int>(StringComparer.Ordinal), new List<float>());
        var called = new List<int>();
        for (var s = 0; s < sheets.Count; s++)
        {
            for (var f = 0; f < sheets[s].Facts.Count; f++)
                for (var v = 0; v < sheets[s].Facts[f].Values.Count; v++)
                {
                    var text = $"{sheets[s].Facts[f].Name}: {sheets[s].Facts[f].Values[v]}";
                    if (!names.TryGetValue(text, out var name)) names[text] = name = names.Count;
                    of.Add((f, v));
                    called.Add(name);
                    directions.AddRange(Direction(layers.Of(synonyms.Hear(text)).Last));
                }
            starts[s + 1] = of.Count;
        }
        (Of, Called, Names, Directions) = ([.. of], [.. called], names.Count, [.. directions]);
    }

    public IReadOnlyList<Sheet> Sheets { get; }
    public (int Fact, int Value)[] Of { get; }
    public int[] Called { get; }
    public int Names { get; }
    public float[] Directions { get; }
    public int Count => Of.Length;

    /// <summary>Where the subject's labels begin, and how many there are.</summary>
    public (int Start, int Count) Under(int subject) => (starts[subject], starts[subject + 1] - starts[subject]);

    /// <summary>The first and the last piece are the sentence's marks.</summary>
    private static float[] Direction(float[] pieces)
    {
        var sum = new float[Encoder.Size];
        for (var p = 1; p + 1 < pieces.Length / Encoder.Size; p++) TensorPrimitives.Add<float>(sum, pieces.AsSpan(p * Encoder.Size, Encoder.Size), sum);
        TensorPrimitives.Divide(sum, TensorPrimitives.Norm<float>(sum) / Long, sum);
        return sum;
    }
}
