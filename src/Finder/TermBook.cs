using System.Numerics.Tensors;

namespace Umpirage.Finder;

/// <summary>
/// Stems, pairs of stems and synonym groups that tell of a subject, and what each of them tells: a number for every subject. What stands
/// everywhere tells little.
/// </summary>
internal sealed class TermBook
{
    public const float PairWeight = 0.8f, KinWeight = 0.7f, Again = 0.3f, Length = 2;

    private readonly Dictionary<string, int> place = new(StringComparer.Ordinal);
    private readonly float[] telling, scale;
    private readonly sbyte[] tells;
    private readonly int subjects;

    /// <param name="tells">For each term a number for each subject, to be multiplied by the term's scale.</param>
    public TermBook(IReadOnlyList<string> terms, float[] telling, float[] scale, sbyte[] tells, int subjects)
    {
        for (var i = 0; i < terms.Count; i++) place.Add(terms[i], i);
        (this.telling, this.scale, this.tells, this.subjects) = (telling, scale, tells, subjects);
    }

    /// <summary>Adds what the words tell to the subjects' scores.</summary>
    public void Add(Utterance said, Span<float> scores)
    {
        var weights = new SortedDictionary<int, float>();
        foreach (var term in Grams(said))
            if (place.TryGetValue(term, out var at)) weights[at] = weights.TryGetValue(at, out var before) ? before + Again * telling[at] : telling[at];
        var all = MathF.Sqrt(weights.Values.Sum(w => w * w)) + 1e-6f;
        Span<float> row = stackalloc float[subjects];
        foreach (var (at, weight) in weights)
        {
            TensorPrimitives.ConvertTruncating<sbyte, float>(tells.AsSpan(at * subjects, subjects), row);
            TensorPrimitives.MultiplyAdd(row, Length * weight / all * scale[at], scores[..subjects], scores[..subjects]);
        }
    }

    public static IEnumerable<string> Grams(Utterance said)
    {
        string? before = null;
        foreach (var (term, _) in said.Terms)
        {
            yield return term;
            if (term[0] == '~') continue;
            if (before is not null) yield return before + " " + term;
            before = term;
        }
    }

    public void Write(BinaryWriter to)
    {
        to.Write(telling.Length);
        foreach (var (term, at) in place.OrderBy(p => p.Value)) { to.Write(term); to.Write(telling[at]); to.Write(scale[at]); }
        foreach (var number in tells) to.Write(number);
    }

    public static TermBook Read(BinaryReader from, int subjects)
    {
        var count = from.ReadInt32();
        var (terms, telling, scale, tells) = (new string[count], new float[count], new float[count], new sbyte[count * subjects]);
        for (var i = 0; i < count; i++) (terms[i], telling[i], scale[i]) = (from.ReadString(), from.ReadSingle(), from.ReadSingle());
        from.BaseStream.ReadExactly(System.Runtime.InteropServices.MemoryMarshal.AsBytes(tells.AsSpan()));
        return new(terms, telling, scale, tells, subjects);
    }
}
