using System.Numerics.Tensors;
using Umpirage.Finder;

namespace Umpirage.Tune;

/// <summary>The upper layers of the sentence model and what reads subjects and facts from them, learning together.</summary>
internal sealed class Network
{
    /// <summary>The layers that are tuned, and what the model file calls their tables.</summary>
    private static readonly (int Layer, string[] Tables)[] Tuned =
    [
        (3, ["966", "967", "970", "976", "977", "978"]),
        (4, ["979", "980", "983", "989", "990", "991"]),
        (5, ["992", "993", "996", "1002", "1003", "1004"]),
    ];
    private const int FewWords = 5;

    private readonly Course course;
    private readonly Block[] blocks;
    private readonly Random[] chances;
    private readonly List<Weights> all = [];

    public Network(Course course, byte[] model, LabelBook labels, IReadOnlyList<Lesson> lessons, int seed)
    {
        this.course = course;
        var chance = new Random(seed);
        chances = [.. Enumerable.Range(0, course.Threads).Select(t => new Random(seed * 100 + t))];
        blocks = [.. Tuned.Select(t => new Block(model, t.Layer, t.Tables, course.Rank, course.ModelPace, chance, course.Threads))];
        Subjects = new(course, lessons, labels.Sheets.Count + 1);
        Facts = new(course, labels, chance);
        all.AddRange(blocks.SelectMany(b => b.Lines).SelectMany(l => new[] { l.Tall, l.Wide }));
        all.AddRange(Subjects.All);
        all.AddRange(Facts.All);
    }

    public SubjectLearner Subjects { get; }
    public FactLearner Facts { get; }
    public IReadOnlyList<Weights> All => all;
    public IReadOnlyList<LowRank> Changes => [.. blocks.SelectMany(b => b.Lines).Select(l => l.Change)];

    /// <summary>Takes some lessons on one thread and gathers slopes.</summary>
    /// <param name="scale">What one lesson counts.</param>
    /// <returns>How surprising the right subjects were, summed.</returns>
    public double Learn(IReadOnlyList<Lesson> lessons, int thread, float scale)
    {
        if (lessons.Count == 0) return 0;
        var chance = chances[thread];
        var left = lessons.Select(l => l.Said.Words.Select(_ => l.Said.Words.Count > FewWords && chance.NextSingle() < course.WordsOut).ToArray()).ToArray();
        var pieces = lessons.Select((l, i) => Enumerable.Range(0, l.Pieces.Length).Where(p => l.Pieces[p] < 0 || !left[i][l.Pieces[p]]).ToArray()).ToArray();
        var starts = new int[lessons.Count + 1];
        for (var i = 0; i < lessons.Count; i++) starts[i + 1] = starts[i] + pieces[i].Length;
        var rows = new float[starts[^1] * Encoder.Size];
        for (var i = 0; i < lessons.Count; i++)
            for (var p = 0; p < pieces[i].Length; p++)
                TensorPrimitives.ConvertToSingle(lessons[i].Below.AsSpan(pieces[i][p] * Encoder.Size, Encoder.Size), rows.AsSpan((starts[i] + p) * Encoder.Size, Encoder.Size));
        var tapes = new List<Block.Tape>();
        foreach (var block in blocks) { tapes.Add(block.Forth(rows, starts)); rows = tapes[^1].Out; }
        float[]? slope = new float[rows.Length];
        var surprise = 0.0;
        for (var i = 0; i < lessons.Count; i++)
        {
            var (from, length) = (starts[i] * Encoder.Size, pieces[i].Length * Encoder.Size);
            var share = scale * (lessons[i].Source == Source.Sheet ? course.SheetShare : 1);
            surprise -= Math.Log(Subjects.Run(lessons[i], left[i], rows.AsSpan(from, length), slope.AsSpan(from, length), thread, chance, share)[lessons[i].Subject] + 1e-9);
            if (lessons[i].Source is Source.Asked or Source.Play) Facts.Learn(lessons[i], left[i], [.. pieces[i].Select(p => lessons[i].Pieces[p])], rows.AsSpan(from, length), slope.AsSpan(from, length), thread, chance, scale);
        }
        for (var b = blocks.Length - 1; b >= 0; b--) slope = blocks[b].Back(thread, tapes[b], slope!, starts, b > 0);
        return surprise;
    }

    public void Step(float pace)
    {
        foreach (var weights in all) weights.Step(pace);
        Merge();
    }

    /// <summary>Takes the layers' changes into their tables.</summary>
    public void Merge()
    {
        foreach (var line in blocks.SelectMany(b => b.Lines)) line.Merge();
    }

    /// <summary>What the tuned layers make of the rows below them.</summary>
    public float[] Through(float[] rows, int[] starts) => blocks.Aggregate(rows, (r, block) => block.Forth(r, starts).Out);

    /// <summary>Takes all lessons again and again, at a pace that rises quickly and then falls to nothing.</summary>
    public void Learn(IReadOnlyList<Lesson> lessons, int seed, Action<string> tell)
    {
        var chance = new Random(seed);
        var (steps, step) = ((lessons.Count + course.Batch - 1) / course.Batch * course.Rounds, 0);
        for (var round = 1; round <= course.Rounds; round++)
        {
            var surprise = 0.0;
            foreach (var batch in lessons.OrderBy(_ => chance.Next()).Chunk(course.Batch))
            {
                var parts = batch.OrderBy(l => l.Pieces.Length).Select((l, i) => (l, i)).ToLookup(p => p.i % course.Threads, p => p.l);
                var sums = new double[course.Threads];
                Parallel.For(0, course.Threads, new ParallelOptions { MaxDegreeOfParallelism = course.Threads }, t => sums[t] = Learn([.. parts[t]], t, 1f / batch.Length));
                surprise += sums.Sum();
                Step(course.Pace * Math.Min(1, (step + 1) / (0.05f * steps)) * (1 - (float)step / steps));
                step++;
            }
            tell($"round {round} of {course.Rounds}: surprise {surprise / lessons.Count:f3}");
        }
    }
}
