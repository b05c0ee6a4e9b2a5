using System.Numerics.Tensors;

namespace Umpirage.Finder;

/// <summary>
/// Subjects that came after what was learned: each is found by the middle direction of what is said of it. That is worked out from the texts
/// on first use and kept in a file.
/// </summary>
internal static class NewSubjects
{
    private const string Version = "umpirage finder index 8";

    /// <summary>For each subject the middle of its examples' directions, of length one.</summary>
    public static float[][] Directions(IReadOnlyList<Example> examples, int subjects, Func<Utterance, Meaning> encode)
    {
        var sums = Enumerable.Range(0, subjects).Select(_ => new float[Encoder.Size]).ToArray();
        foreach (var example in examples) TensorPrimitives.Add(sums[example.Subject], encode(example.Said).Whole, sums[example.Subject]);
        foreach (var sum in sums)
            if (TensorPrimitives.Norm<float>(sum) is > 0 and var length) TensorPrimitives.Divide(sum, length, sum);
        return sums;
    }

    public static void Write(Stream to, float[][] directions, string key)
    {
        using var file = new BinaryWriter(to, System.Text.Encoding.UTF8, true);
        file.Write(Version);
        file.Write(key);
        file.Write(directions.Length);
        foreach (var direction in directions) Stored.WriteHalves(file, direction);
    }

    /// <summary>Null when the file was made from other texts, is of another version or broken.</summary>
    public static float[][]? Read(Stream from, string key)
    {
        try
        {
            using var file = new BinaryReader(from, System.Text.Encoding.UTF8, true);
            if (file.ReadString() != Version || file.ReadString() != key) return null;
            var directions = new float[file.ReadInt32()][];
            for (var d = 0; d < directions.Length; d++) directions[d] = Stored.ReadHalves(file, Encoder.Size);
            return directions;
        }
        catch (Exception broken) when (broken is EndOfStreamException or FormatException or ArgumentException or OverflowException)
        {
            return null;
        }
    }
}
