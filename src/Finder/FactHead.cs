using System.Numerics.Tensors;

namespace Umpirage.Finder;

/// <summary>A value of a fact as the reader knows it: what it listens for among the words, what it takes from them, and how rare it is.</summary>
internal sealed record FactLabel(string Fact, string Value, float[] Listens, float[] Takes, float Bias);

/// <summary>How likely each value of a fact is said, and how much each word has to do with it.</summary>
/// <param name="Unsaid">How likely the words say nothing of the fact.</param>
internal sealed record FactChance(string Fact, IReadOnlyList<string> Values, float[] Said, float Unsaid, float[][] Words);

/// <summary>
/// Reads facts: each value of each fact of a subject listens to the words, and says how much what it hears speaks for it. The values of one
/// fact, and that nothing is said of it, share one probability.
/// </summary>
internal sealed class FactHead
{
    private readonly float[] listening, taking;
    private readonly int width;

    /// <param name="listening">Turns a word's numbers into what labels listen for; as many rows as a word has numbers.</param>
    /// <param name="taking">Turns a word's numbers into what labels take.</param>
    public FactHead(float[] listening, float[] taking)
    {
        (this.listening, this.taking) = (listening, taking);
        width = listening.Length / Encoder.Size;
    }

    public int Width => width;

    /// <summary>The labels of one subject held against the words, fact by fact in the labels' order.</summary>
    public IReadOnlyList<FactChance> Read(Meaning meaning, IReadOnlyList<FactLabel> labels)
    {
        var (words, scale) = (Enumerable.Range(0, meaning.Count).Where(w => meaning.Word(w).ContainsAnyExcept(0f)).ToArray(), 1 / MathF.Sqrt(width));
        if (words.Length == 0) return [];
        var heard = words.Select(w => Turned(meaning.Word(w), listening)).ToArray();
        var taken = words.Select(w => Turned(meaning.Word(w), taking)).ToArray();
        var facts = new List<FactChance>();
        for (var at = 0; at < labels.Count;)
        {
            var of = labels.Skip(at).TakeWhile(l => l.Fact == labels[at].Fact).ToList();
            at += of.Count;
            var odds = new float[of.Count + 1];
            var attention = new float[of.Count][];
            for (var v = 0; v < of.Count; v++)
            {
                var near = heard.Select(h => TensorPrimitives.Dot<float>(h, of[v].Listens) * scale).ToArray();
                TensorPrimitives.SoftMax<float>(near, near);
                attention[v] = new float[meaning.Count];
                for (var w = 0; w < words.Length; w++)
                {
                    attention[v][words[w]] = near[w];
                    odds[v] += near[w] * TensorPrimitives.Dot<float>(taken[w], of[v].Takes);
                }
                odds[v] = odds[v] * 2 * scale + of[v].Bias;
            }
            TensorPrimitives.SoftMax<float>(odds, odds);
            facts.Add(new(of[0].Fact, [.. of.Select(l => l.Value)], odds[..of.Count], odds[^1], attention));
        }
        return facts;
    }

    private float[] Turned(ReadOnlySpan<float> word, float[] by)
    {
        var turned = new float[width];
        for (var i = 0; i < word.Length; i++) TensorPrimitives.MultiplyAdd<float>(by.AsSpan(i * width, width), word[i], turned, turned);
        return turned;
    }

    public void Write(BinaryWriter to)
    {
        to.Write(width);
        Stored.WriteHalves(to, listening);
        Stored.WriteHalves(to, taking);
    }

    public static FactHead Read(BinaryReader from)
    {
        var width = from.ReadInt32();
        return new(Stored.ReadHalves(from, Encoder.Size * width), Stored.ReadHalves(from, Encoder.Size * width));
    }
}
