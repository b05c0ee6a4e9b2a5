using System.Numerics.Tensors;
using Umpirage.Finder;

namespace Umpirage.Tune;

/// <summary>Learns what speaks for each subject: the direction of the whole sentence, and its terms.</summary>
internal sealed class SubjectLearner
{
    /// <summary>The length all sentences' directions are brought to.</summary>
    public const float Long = 5;

    private readonly Course course;
    private readonly Dictionary<string, int> place = new(StringComparer.Ordinal);
    private readonly float[] telling;

    public SubjectLearner(Course course, IReadOnlyList<Lesson> lessons, int subjects)
    {
        this.course = course;
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var lesson in lessons) foreach (var term in TermBook.Grams(lesson.Said).Distinct()) seen[term] = seen.GetValueOrDefault(term) + 1;
        foreach (var term in seen.Where(s => s.Value >= course.RareTerm).Select(s => s.Key).Order(StringComparer.Ordinal)) place.Add(term, place.Count);
        telling = [.. place.Keys.Select(t => MathF.Log((lessons.Count + 1f) / (seen[t] + 0.5f)) * (t[0] == '~' ? TermBook.KinWeight : t.Contains(' ') ? TermBook.PairWeight : 1))];
        Takes = new("subjects", subjects, Encoder.Size, course.Threads) { Decay = 0.01f };
        Bias = new("subjects' bias", 1, subjects, course.Threads);
        Terms = new("terms", place.Count, subjects, course.Threads, true) { Pace = course.TermPace, Decay = 0.001f };
    }

    public Weights Takes { get; }
    public Weights Bias { get; }
    public Weights Terms { get; }
    public IReadOnlyList<Weights> All => [Takes, Bias, Terms];
    public IReadOnlyList<string> TermNames => [.. place.Keys];
    public float[] Telling => telling;

    /// <summary>The shares of the subjects; when learning, slopes too.</summary>
    /// <param name="rows">The sentence's rows of the model's numbers.</param>
    /// <param name="slope">Where the rows' slopes are added; empty when not learning.</param>
    public float[] Run(Lesson lesson, bool[] left, ReadOnlySpan<float> rows, Span<float> slope, int thread, Random chance, float scale)
    {
        var (learning, subjects, sum) = (!slope.IsEmpty, Bias.Columns, new float[Encoder.Size]);
        for (var i = 0; i < rows.Length; i += Encoder.Size) TensorPrimitives.Add(sum, rows.Slice(i, Encoder.Size), sum);
        var length = TensorPrimitives.Norm<float>(sum) / Long;
        var (whole, kept) = (new float[Encoder.Size], new float[Encoder.Size]);
        TensorPrimitives.Divide(sum, length, whole);
        for (var i = 0; i < kept.Length; i++) kept[i] = !learning ? 1 : chance.NextSingle() < course.WholeOut ? 0 : 1 / (1 - course.WholeOut);
        TensorPrimitives.Multiply<float>(whole, kept, whole);
        var shares = (float[])Bias.Numbers.Clone();
        for (var s = 0; s < subjects; s++) shares[s] += TensorPrimitives.Dot<float>(whole, Takes.Row(s));
        var terms = TermsOf(lesson.Said, left, learning ? chance : null);
        foreach (var (term, weight) in terms) TensorPrimitives.MultiplyAdd<float>(Terms.Row(term), weight, shares, shares);
        TensorPrimitives.SoftMax<float>(shares, shares);
        if (!learning) return shares;

        var wrong = new float[subjects];
        for (var s = 0; s < subjects; s++) wrong[s] = scale * (shares[s] - (s == lesson.Subject ? 1 - course.Smoothing : 0) - course.Smoothing / subjects);
        var back = new float[Encoder.Size];
        for (var s = 0; s < subjects; s++)
        {
            TensorPrimitives.MultiplyAdd<float>(whole, wrong[s], Takes.Slope(thread, s), Takes.Slope(thread, s));
            TensorPrimitives.MultiplyAdd<float>(Takes.Row(s), wrong[s], back, back);
        }
        TensorPrimitives.Add(Bias.Slopes(thread), wrong, Bias.Slopes(thread));
        foreach (var (term, weight) in terms) TensorPrimitives.MultiplyAdd<float>(wrong, weight, Terms.Slope(thread, term), Terms.Slope(thread, term));
        TensorPrimitives.Multiply<float>(back, kept, back);
        TensorPrimitives.Divide(sum, length * Long, sum);
        TensorPrimitives.MultiplyAdd<float>(sum, -TensorPrimitives.Dot<float>(back, sum), back, back);
        TensorPrimitives.Divide(back, length, back);
        for (var i = 0; i < rows.Length; i += Encoder.Size) TensorPrimitives.Add(slope.Slice(i, Encoder.Size), back, slope.Slice(i, Encoder.Size));
        return shares;
    }

    /// <summary>
    /// Learns once more from terms alone, and lets that speak along: beside the layers the terms themselves learn little, as all is told already,
    /// and on sentences not seen before they are a second opinion.
    /// </summary>
    public void HearTermsAlone(IReadOnlyList<Lesson> lessons, int seed)
    {
        var (subjects, chance, step) = (Bias.Columns, new Random(seed), 0);
        var (terms, bias) = (new Weights("terms alone", place.Count, subjects, 1, true) { Decay = 0.01f }, new Weights("bias alone", 1, subjects, 1));
        var steps = (lessons.Count + course.Batch - 1) / course.Batch * course.TermRounds;
        for (var round = 0; round < course.TermRounds; round++)
            foreach (var batch in lessons.OrderBy(_ => chance.Next()).Chunk(course.Batch))
            {
                foreach (var lesson in batch)
                {
                    var (heard, wrong) = (TermsOf(lesson.Said, new bool[lesson.Said.Words.Count], chance), (float[])bias.Numbers.Clone());
                    foreach (var (term, weight) in heard) TensorPrimitives.MultiplyAdd<float>(terms.Row(term), weight, wrong, wrong);
                    TensorPrimitives.SoftMax<float>(wrong, wrong);
                    var scale = (lesson.Source == Source.Sheet ? course.SheetShare : 1) / batch.Length;
                    for (var s = 0; s < subjects; s++) wrong[s] = scale * (wrong[s] - (s == lesson.Subject ? 1 - course.Smoothing : 0) - course.Smoothing / subjects);
                    foreach (var (term, weight) in heard) TensorPrimitives.MultiplyAdd<float>(wrong, weight, terms.Slope(0, term), terms.Slope(0, term));
                    TensorPrimitives.Add(bias.Slopes(0), wrong, bias.Slopes(0));
                }
                foreach (var weights in new[] { terms, bias }) weights.Step(course.TermsAlonePace * (1 - (float)step / steps));
                step++;
            }
        foreach (var (into, from) in new[] { (Terms, terms), (Bias, bias) }) TensorPrimitives.MultiplyAdd<float>(from.Numbers, course.TermsAloneShare, into.Numbers, into.Numbers);
    }

    private List<(int Term, float Weight)> TermsOf(Utterance said, bool[] left, Random? chance)
    {
        var weights = new SortedDictionary<int, float>();
        foreach (var term in TermBook.Grams(said with { Terms = [.. said.Terms.Where(t => !left[t.Word])] }))
            if (place.TryGetValue(term, out var at))
            {
                if (weights.TryGetValue(at, out var before)) weights[at] = before + TermBook.Again * telling[at];
                else if (chance is null || chance.NextSingle() >= course.TermsOut) weights[at] = telling[at];
            }
        var all = MathF.Sqrt(weights.Values.Sum(w => w * w)) + 1e-6f;
        return [.. weights.Select(w => (w.Key, TermBook.Length * w.Value / all))];
    }
}
