using System.Numerics.Tensors;

namespace Umpirage.Finder;

/// <summary>A question as the finder holds it against the examples: its words, its meaning as a whole and part by part, and its telling terms.</summary>
internal sealed class Question
{
    private const int ShortestPart = 3, LongestWindow = 16;

    public required Utterance Said { get; init; }
    public required Meaning Meaning { get; init; }
    public required Sparse Terms { get; init; }
    public required Sparse Near { get; init; }
    public required float[][] Parts { get; init; }
    /// <summary>How telling each word is.</summary>
    public required float[] Telling { get; init; }

    private float[]? norms;

    public int Words => Said.Words.Count;

    public static Question Of(Utterance said, Meaning meaning, TermBook terms, NearWords near)
    {
        var telling = new float[said.Words.Count];
        foreach (var (term, word) in said.Terms) if (term[0] != '~') telling[word] = Math.Max(telling[word], terms.Telling(term));
        return new() { Said = said, Meaning = meaning, Terms = terms.Of(said), Near = near.Of(said, meaning), Parts = [.. PartsOf(said, meaning)], Telling = telling };
    }

    /// <summary>The directions of the sentence's parts; a part of a word or two goes with the next.</summary>
    public static IEnumerable<float[]> PartsOf(Utterance said, Meaning meaning)
    {
        var (start, count) = (0, said.Words.Count);
        for (var i = 1; i <= count; i++)
        {
            if (i < count && (said.Words[i].Part == said.Words[i - 1].Part || i - start < ShortestPart)) continue;
            var part = new float[Encoder.Size];
            meaning.Window(start, i - 1, part);
            yield return part;
            start = i;
        }
    }

    /// <summary>The length of the sum over a window of words, which turns products of sums into likenesses.</summary>
    public float Norm(int first, int last)
    {
        norms ??= Norms();
        return norms[first * (LongestWindow + 1) + last - first];
    }

    private float[] Norms()
    {
        var all = new float[Words * (LongestWindow + 1)];
        var window = new float[Encoder.Size];
        for (var s = 0; s < Words; s++)
            for (var e = s; e < Math.Min(Words, s + LongestWindow + 1); e++)
            {
                TensorPrimitives.Subtract<float>(Meaning.Sums.AsSpan((e + 1) * Encoder.Size, Encoder.Size), Meaning.Sums.AsSpan(s * Encoder.Size, Encoder.Size), window);
                all[s * (LongestWindow + 1) + e - s] = TensorPrimitives.Norm<float>(window);
            }
        return all;
    }

    /// <summary>The window of about so many words that is most like a direction.</summary>
    public (float Likeness, int First, int Last) BestWindow(float[] direction, int words)
    {
        if (Words == 0) return (0, 0, 0);
        Span<float> along = Words < 300 ? stackalloc float[Words + 1] : new float[Words + 1];
        for (var i = 0; i <= Words; i++) along[i] = TensorPrimitives.Dot<float>(Meaning.Sums.AsSpan(i * Encoder.Size, Encoder.Size), direction);
        var best = (-1f, 0, 0);
        var (least, most) = (Math.Clamp(words - 2, 1, LongestWindow - 4), Math.Min(words + 3, LongestWindow));
        least = Math.Min(least, Words);
        for (var s = 0; s < Words; s++)
            for (var e = s + least - 1; e < Math.Min(Words, s + most); e++)
            {
                var like = (along[e + 1] - along[s]) / Math.Max(Norm(s, e), 1e-6f);
                if (like > best.Item1) best = (like, s, e);
            }
        return best;
    }
}
