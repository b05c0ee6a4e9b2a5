using System.Numerics.Tensors;

namespace Umpirage.Finder;

/// <summary>A subject that came after what was learned.</summary>
/// <param name="Direction">The middle of what is said of it.</param>
/// <param name="Floor">Words less like it than this are not taken to be about it.</param>
internal sealed record NewSubject(float[] Direction, float Floor);

/// <summary>
/// Subjects that came after what was learned: each is found by the middle direction of what is said of it. That is worked out from the texts
/// on first use and kept in a file.
/// </summary>
internal static class NewSubjects
{
    private const string Version = "umpirage finder index 9";

    /// <summary>For each subject the middle of its examples' directions, of length one, and how like it three in four of its own examples are, each held against the others.</summary>
    public static NewSubject[] Of(IReadOnlyList<Example> examples, int subjects, Func<Utterance, Meaning> encode)
    {
        var own = Enumerable.Range(0, subjects).Select(_ => new List<float[]>()).ToArray();
        foreach (var example in examples) own[example.Subject].Add(encode(example.Said).Whole);
        return [.. own.Select(Of)];
    }

    private static NewSubject Of(List<float[]> own)
    {
        var sum = new float[Encoder.Size];
        foreach (var one in own) TensorPrimitives.Add(sum, one, sum);
        List<float> like = [];
        var others = new float[Encoder.Size];
        foreach (var one in own)
        {
            TensorPrimitives.Subtract(sum, one, others);
            if (TensorPrimitives.Norm<float>(others) is > 0 and var without) like.Add(TensorPrimitives.Dot<float>(one, others) / without);
        }
        if (TensorPrimitives.Norm<float>(sum) is > 0 and var length) TensorPrimitives.Divide(sum, length, sum);
        return new(sum, like.Count == 0 ? 0 : like.Order().ElementAt(like.Count / 4));
    }

    public static void Write(Stream to, IReadOnlyList<NewSubject> subjects, string key)
    {
        using var file = new BinaryWriter(to, System.Text.Encoding.UTF8, true);
        file.Write(Version);
        file.Write(key);
        file.Write(subjects.Count);
        foreach (var subject in subjects)
        {
            Stored.WriteHalves(file, subject.Direction);
            file.Write(subject.Floor);
        }
    }

    /// <summary>Null when the file was made from other texts, is of another version or broken.</summary>
    public static NewSubject[]? Read(Stream from, string key)
    {
        try
        {
            using var file = new BinaryReader(from, System.Text.Encoding.UTF8, true);
            if (file.ReadString() != Version || file.ReadString() != key) return null;
            var subjects = new NewSubject[file.ReadInt32()];
            for (var d = 0; d < subjects.Length; d++) subjects[d] = new(Stored.ReadHalves(file, Encoder.Size), file.ReadSingle());
            return subjects;
        }
        catch (Exception broken) when (broken is EndOfStreamException or FormatException or ArgumentException or OverflowException)
        {
            return null;
        }
    }
}
