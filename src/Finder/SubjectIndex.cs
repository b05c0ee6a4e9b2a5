using Umpirage.Rules.Codes;

namespace Umpirage.Finder;

/// <summary>Everything worked out from the examples, which a question is held against. It is made by <see cref="IndexMaker"/> and kept in a file.</summary>
internal sealed class SubjectIndex
{
    public required IReadOnlyList<Sheet> Sheets { get; init; }
    public required TermBook Terms { get; init; }
    public required NearWords Near { get; init; }
    public required Likeness Likeness { get; init; }
    public required IReadOnlyList<Example> Examples { get; init; }
    /// <summary>For each example how it speaks for each subject.</summary>
    public required float[][] Weights { get; init; }
    public required FactBook Facts { get; init; }
    public Trees FactTrees { get; set; } = null!;
    /// <summary>What was measured while it was made, leaving each example out in turn.</summary>
    public string Figures { get; set; } = "";

    private List<int>[]? ofSubject;

    public IReadOnlyList<int>[] OfSubject => ofSubject ??= Grouped();

    private List<int>[] Grouped()
    {
        var groups = Sheets.Select(_ => new List<int>()).ToArray();
        for (var e = 0; e < Examples.Count; e++) groups[Examples[e].Subject].Add(e);
        return groups;
    }

    public Question Hear(Utterance said, Encoder encoder) => Question.Of(said, encoder.Of(said), Terms, Near);

    /// <summary>What the examples say of every subject, summed by likeness.</summary>
    public float[] Score(float[] likeness)
    {
        var score = new float[Sheets.Count];
        for (var e = 0; e < Examples.Count; e++) System.Numerics.Tensors.TensorPrimitives.MultiplyAdd<float>(Weights[e], likeness[e], score, score);
        return score;
    }

    public static int[] Top(float[] score, int most, Func<int, bool>? may = null) =>
        [.. Enumerable.Range(0, score.Length).Where(s => may?.Invoke(s) ?? true).OrderByDescending(s => score[s]).ThenBy(s => s).Take(most)];

    public FactEvidence Evidence(Question question, int subject, float[] likeness, int but = -1) => new(Facts, question, subject, Examples, likeness, OfSubject[subject], but, Terms);

    public static float[][] Chances(FactEvidence evidence, Trees trees) => [.. evidence.Rows.Select((rows, f) => rows.Select((row, v) => evidence.Told[f][v] ? trees.Chance(row) : 0).ToArray())];
}
