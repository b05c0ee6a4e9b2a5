using System.Numerics.Tensors;

namespace Umpirage.Finder;

/// <summary>How alike a question is to every example: by meaning as a whole, part by part, by shared terms and by near words, and all together.</summary>
internal sealed class Likeness
{
    private const float Sharpness = 4, TermSharpness = 3, TermShare = 2;

    private readonly float[][] whole;
    private readonly float[][][] parts;
    private readonly Sparse[] terms, near;
    private readonly Postings byTerm, byNear;

    public Likeness(IReadOnlyList<Question> examples, int termCount, int nearCount)
        : this([.. examples.Select(e => e.Meaning.Whole)], [.. examples.Select(e => e.Parts)], [.. examples.Select(e => e.Terms)], [.. examples.Select(e => e.Near)], termCount, nearCount) { }

    private Likeness(float[][] whole, float[][][] parts, Sparse[] terms, Sparse[] near, int termCount, int nearCount)
    {
        (this.whole, this.parts, this.terms, this.near) = (whole, parts, terms, near);
        (byTerm, byNear) = (new(terms, termCount), new(near, nearCount));
    }

    public int Count => whole.Length;

    public Sparse TermsOf(int example) => terms[example];

    /// <summary>Likeness in four ways to the given examples, or to all; nothing where it was not asked.</summary>
    public (float[] Whole, float[] Parts, float[] Terms, float[] Near) Ways(Question question, IEnumerable<int>? only = null)
    {
        var (w, p, t, n) = (new float[Count], new float[Count], new float[Count], new float[Count]);
        byTerm.Add(question.Terms, t);
        byNear.Add(question.Near, n);
        foreach (var j in only ?? Enumerable.Range(0, Count))
        {
            w[j] = TensorPrimitives.Dot<float>(question.Meaning.Whole, whole[j]);
            p[j] = PartLikeness(question.Parts, parts[j]);
        }
        return (w, p, t, n);
    }

    public static float[] Together((float[] Whole, float[] Parts, float[] Terms, float[] Near) ways, IEnumerable<int>? only = null)
    {
        var all = new float[ways.Whole.Length];
        foreach (var j in only ?? Enumerable.Range(0, all.Length))
            all[j] = (MathF.Exp(Sharpness * (ways.Whole[j] - 1)) + ways.Parts[j]) / 2 + TermShare * MathF.Exp(TermSharpness * ((ways.Terms[j] + ways.Near[j]) / 2 - 1));
        return all;
    }

    /// <summary>Each part finds its like on the other side, both ways.</summary>
    private static float PartLikeness(float[][] a, float[][] b)
    {
        if (a.Length == 0 || b.Length == 0) return 0;
        Span<float> back = stackalloc float[Math.Min(b.Length, 64)];
        back.Fill(-1);
        var forth = 0f;
        foreach (var part in a)
        {
            var best = -1f;
            for (var j = 0; j < back.Length; j++)
            {
                var like = TensorPrimitives.Dot<float>(part, b[j]);
                if (like > best) best = like;
                if (like > back[j]) back[j] = like;
            }
            forth += MathF.Exp(Sharpness * (best - 1));
        }
        var sum = 0f;
        foreach (var best in back) sum += MathF.Exp(Sharpness * (best - 1));
        return (forth / a.Length + sum / back.Length) / 2;
    }

    public void Write(BinaryWriter to, int termCount, int nearCount)
    {
        to.Write(Count);
        to.Write(termCount);
        to.Write(nearCount);
        for (var i = 0; i < Count; i++)
        {
            Stored.WriteHalves(to, whole[i]);
            to.Write((byte)Math.Min(parts[i].Length, 255));
            foreach (var part in parts[i].Take(255)) Stored.WriteHalves(to, part);
            foreach (var sparse in new[] { terms[i], near[i] })
            {
                Stored.WriteInts(to, sparse.Terms);
                Stored.WriteHalves(to, sparse.Weights);
            }
        }
    }

    public static Likeness Read(BinaryReader from)
    {
        var (count, termCount, nearCount) = (from.ReadInt32(), from.ReadInt32(), from.ReadInt32());
        var (whole, parts, terms, near) = (new float[count][], new float[count][][], new Sparse[count], new Sparse[count]);
        for (var i = 0; i < count; i++)
        {
            whole[i] = Stored.ReadHalves(from, Encoder.Size);
            parts[i] = new float[from.ReadByte()][];
            for (var p = 0; p < parts[i].Length; p++) parts[i][p] = Stored.ReadHalves(from, Encoder.Size);
            terms[i] = ReadSparse(from);
            near[i] = ReadSparse(from);
        }
        return new(whole, parts, terms, near, termCount, nearCount);
    }

    private static Sparse ReadSparse(BinaryReader from)
    {
        var terms = Stored.ReadInts(from);
        return new(terms, Stored.ReadHalves(from, terms.Length));
    }
}
