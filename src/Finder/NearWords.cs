using System.Numerics.Tensors;

namespace Umpirage.Finder;

/// <summary>
/// Which words of the examples stand near one another in meaning. A question's word brings its neighbours along, so that "the thrower" finds
/// what was told of a pitcher.
/// </summary>
internal sealed class NearWords
{
    private const int Most = 8;
    private const float Floor = 0.45f, Mix = 0.7f, Zero = 0.35f;

    private readonly Dictionary<string, int> place = new(StringComparer.Ordinal);
    private readonly float[][] direction;
    private readonly float[] centre = new float[Encoder.Size];
    private readonly float[] telling;
    private readonly (int Word, float Nearness)[][] near;

    public NearWords(IReadOnlyList<(Utterance Said, Meaning Meaning)> examples)
    {
        var (sums, count) = (new List<float[]>(), new List<int>());
        var word = new float[Encoder.Size];
        foreach (var (said, meaning) in examples)
            foreach (var (term, w) in said.Terms)
            {
                if (term[0] == '~') continue;
                if (place.TryAdd(term, sums.Count)) { sums.Add(new float[Encoder.Size]); count.Add(0); }
                meaning.Window(w, w, word);
                TensorPrimitives.Add(sums[place[term]], word, sums[place[term]]);
                count[place[term]]++;
            }
        direction = [.. sums];
        telling = [.. count.Select(c => MathF.Log((examples.Count + 1f) / (c + 0.5f)))];
        foreach (var d in direction) { Unit(d); TensorPrimitives.Add(centre, d, centre); }
        TensorPrimitives.Divide(centre, direction.Length, centre);
        foreach (var d in direction) Centred(d);
        near = new (int, float)[direction.Length][];
        Parallel.For(0, near.Length, i => near[i] = [.. Nearest(direction[i], i)]);
    }

    private NearWords(BinaryReader from)
    {
        var n = from.ReadInt32();
        (direction, telling, near) = (new float[n][], new float[n], new (int, float)[n][]);
        for (var i = 0; i < n; i++)
        {
            place[from.ReadString()] = i;
            telling[i] = from.ReadSingle();
            direction[i] = Stored.ReadHalves(from, Encoder.Size);
            near[i] = new (int, float)[from.ReadByte()];
            for (var k = 0; k < near[i].Length; k++) near[i][k] = (from.ReadInt32(), from.ReadSingle());
        }
        centre = Stored.ReadHalves(from, Encoder.Size);
    }

    public int Count => direction.Length;

    private static void Unit(Span<float> v)
    {
        var norm = TensorPrimitives.Norm<float>(v);
        if (norm > 0) TensorPrimitives.Divide(v, norm, v);
    }

    private void Centred(Span<float> v)
    {
        TensorPrimitives.Subtract(v, centre, v);
        Unit(v);
    }

    private IEnumerable<(int, float)> Nearest(float[] to, int but)
    {
        var all = new List<(int Word, float Nearness)>();
        for (var j = 0; j < direction.Length; j++)
            if (j != but && TensorPrimitives.Dot<float>(to, direction[j]) is > Floor and var near) all.Add((j, near));
        return all.OrderByDescending(a => a.Nearness).ThenBy(a => a.Word).Take(Most);
    }

    /// <summary>The question's words and their neighbours, each as telling as it is rare.</summary>
    public Sparse Of(Utterance said, Meaning meaning)
    {
        var weights = new Dictionary<int, float>();
        void Add(int at, float share)
        {
            var weight = share * telling[at];
            if (weight > weights.GetValueOrDefault(at)) weights[at] = weight;
        }
        foreach (var (term, w) in said.Terms)
        {
            if (term[0] == '~') continue;
            if (place.TryGetValue(term, out var at)) Add(at, 1);
            foreach (var (word, nearness) in at >= 0 && place.ContainsKey(term) ? near[at] : Unknown(meaning, w)) Add(word, Mix * (nearness - Zero) / (1 - Zero));
        }
        return Sparse.Of(weights);
    }

    private (int, float)[] Unknown(Meaning meaning, int w)
    {
        var v = new float[Encoder.Size];
        meaning.Window(w, w, v);
        Centred(v);
        return [.. Nearest(v, -1)];
    }

    public void Write(BinaryWriter to)
    {
        to.Write(Count);
        foreach (var (term, i) in place.OrderBy(p => p.Value))
        {
            to.Write(term);
            to.Write(telling[i]);
            Stored.WriteHalves(to, direction[i]);
            to.Write((byte)near[i].Length);
            foreach (var (word, nearness) in near[i]) { to.Write(word); to.Write(nearness); }
        }
        Stored.WriteHalves(to, centre);
    }

    public static NearWords Read(BinaryReader from) => new(from);
}
