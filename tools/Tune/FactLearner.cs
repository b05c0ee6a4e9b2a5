using System.Numerics;
using System.Numerics.Tensors;
using Umpirage.Finder;

namespace Umpirage.Tune;

/// <summary>
/// Learns to read facts. What a label listens for and takes is made from its text by tables all labels share, from a part shared by labels of
/// the same text, and from a part of its own. It learns from the lessons of its own subject, and where the words that tell it are known, from them.
/// </summary>
internal sealed class FactLearner
{
    private const float FreeDecay = 0.02f, Start = -2;
    private const int Size = Encoder.Size;

    private readonly Course course;
    private readonly LabelBook labels;
    private readonly Weights listening, taking, textListens, textTakes, sharedListens, sharedTakes, ownListens, ownTakes, bias;
    private readonly int width;

    public FactLearner(Course course, LabelBook labels, Random chance)
    {
        (this.course, this.labels, width) = (course, labels, course.Width);
        Weights Table(string name) => new Weights(name, Size, width, course.Threads).Scattered(chance, 1 / MathF.Sqrt(Size));
        Weights Free(string name, int rows) => new(name, rows, width, course.Threads, true) { Decay = FreeDecay };
        (listening, taking, textListens, textTakes) = (Table("listening"), Table("taking"), Table("text listens"), Table("text takes"));
        // at first a label listens for words like its own text
        listening.Numbers.CopyTo(textListens.Numbers, 0);
        taking.Numbers.CopyTo(textTakes.Numbers, 0);
        (sharedListens, sharedTakes, ownListens, ownTakes) = (Free("shared listens", labels.Names), Free("shared takes", labels.Names), Free("own listens", labels.Count), Free("own takes", labels.Count));
        bias = new("labels' bias", 1, labels.Count, course.Threads);
        bias.Numbers.AsSpan().Fill(Start);
    }

    public IReadOnlyList<Weights> All => [listening, taking, textListens, textTakes, sharedListens, sharedTakes, ownListens, ownTakes, bias];

    /// <summary>The head that reads by what was learned.</summary>
    public FactHead Head => new([.. listening.Numbers], [.. taking.Numbers]);

    public IReadOnlyList<FactLabel> LabelsOf(int subject)
    {
        var (start, count) = labels.Under(subject);
        var (listens, takes) = (Made(textListens, sharedListens, ownListens, start, count), Made(textTakes, sharedTakes, ownTakes, start, count));
        return [.. Enumerable.Range(0, count).Select(l =>
        {
            var fact = labels.Sheets[subject].Facts[labels.Of[start + l].Fact];
            return new FactLabel(fact.Name, fact.Values[labels.Of[start + l].Value], listens[(l * width)..((l + 1) * width)], takes[(l * width)..((l + 1) * width)], bias.Numbers[start + l]);
        })];
    }

    private float[] Made(Weights text, Weights shared, Weights own, int start, int count)
    {
        var made = new float[count * width];
        Matrix.Multiply(count, width, Size, labels.Directions.AsSpan(start * Size), Size, 1, text.Numbers, width, 1, made, width);
        for (var l = 0; l < count; l++)
        {
            var one = made.AsSpan(l * width, width);
            TensorPrimitives.Add(one, own.Row(start + l), one);
            TensorPrimitives.Add(one, shared.Row(labels.Called[start + l]), one);
        }
        return made;
    }

    /// <param name="wordOf">The word of each row; -1 for what stands between words.</param>
    /// <param name="rows">The sentence's rows of the model's numbers.</param>
    /// <param name="slope">Where the rows' slopes are added.</param>
    public void Learn(Lesson lesson, bool[] left, int[] wordOf, ReadOnlySpan<float> rows, Span<float> slope, int thread, Random chance, float scale)
    {
        var (start, count) = labels.Under(lesson.Subject);
        var heard = wordOf.Where(w => w >= 0).Distinct().ToArray();
        if (count == 0 || heard.Length == 0 || !lesson.Complete && lesson.Facts.All(f => f == 0)) return;
        var (n, near) = (heard.Length, 1 / MathF.Sqrt(width));
        var at = wordOf.Select(w => Array.IndexOf(heard, w)).ToArray();
        var parts = heard.Select(w => wordOf.Count(o => o == w)).ToArray();
        var (words, kept) = (new float[n * Size], new float[Size]);
        for (var i = 0; i < Size; i++) kept[i] = chance.NextSingle() < course.NumbersOut ? 0 : 1 / (1 - course.NumbersOut);
        for (var r = 0; r < at.Length; r++)
            if (at[r] >= 0) TensorPrimitives.MultiplyAdd(rows.Slice(r * Size, Size), 1f / parts[at[r]], words.AsSpan(at[r] * Size, Size), words.AsSpan(at[r] * Size, Size));
        for (var w = 0; w < n; w++) TensorPrimitives.Multiply(words.AsSpan(w * Size, Size), kept, words.AsSpan(w * Size, Size));

        float[] heardAs = new float[n * width], takenAs = new float[n * width], look = new float[count * n], take = new float[count * n], odds = new float[count];
        var (listens, takes) = (Made(textListens, sharedListens, ownListens, start, count), Made(textTakes, sharedTakes, ownTakes, start, count));
        Matrix.Multiply(n, width, Size, words, Size, 1, listening.Numbers, width, 1, heardAs, width);
        Matrix.Multiply(n, width, Size, words, Size, 1, taking.Numbers, width, 1, takenAs, width);
        Matrix.Multiply(count, n, width, listens, width, 1, heardAs, 1, width, look, n);
        Matrix.Multiply(count, n, width, takes, width, 1, takenAs, 1, width, take, n);
        for (var l = 0; l < count; l++)
        {
            var row = look.AsSpan(l * n, n);
            TensorPrimitives.Multiply(row, near, row);
            TensorPrimitives.SoftMax<float>(row, row);
            odds[l] = TensorPrimitives.Dot<float>(row, take.AsSpan(l * n, n)) * near * 2 + bias.Numbers[start + l];
        }
        var wrong = Wrong(lesson, left, odds, scale * course.FactShare);
        TensorPrimitives.Add(bias.Slopes(thread).Slice(start, count), wrong, bias.Slopes(thread).Slice(start, count));

        float[] lookSlope = new float[count * n], takeSlope = new float[count * n];
        for (var l = 0; l < count; l++)
        {
            var row = look.AsSpan(l * n, n);
            var taken = take.AsSpan(l * n, n);
            var by = wrong[l] * near * 2;
            TensorPrimitives.Multiply(row, by, takeSlope.AsSpan(l * n, n));
            var middle = TensorPrimitives.Dot<float>(row, taken);
            for (var w = 0; w < n; w++) lookSlope[l * n + w] = row[w] * by * (taken[w] - middle);
        }
        foreach (var told in lesson.Told)
        {
            var l = Array.FindIndex(labels.Of, start, count, o => o == (told.Fact, told.Value)) - start;
            var inside = Enumerable.Range(0, n).Where(w => heard[w] >= told.First && heard[w] <= told.Last).Sum(w => look[l * n + w]);
            if (inside < 1e-6f) continue;
            for (var w = 0; w < n; w++)
                lookSlope[l * n + w] += course.ToldShare * scale * course.FactShare * look[l * n + w] * (heard[w] >= told.First && heard[w] <= told.Last ? 1 - 1 / inside : 1);
        }
        TensorPrimitives.Multiply(lookSlope, near, lookSlope);

        float[] heardSlope = new float[n * width], takenSlope = new float[n * width], back = new float[n * Size];
        Made(thread, start, count, n, lookSlope, heardAs, textListens, sharedListens, ownListens);
        Made(thread, start, count, n, takeSlope, takenAs, textTakes, sharedTakes, ownTakes);
        Matrix.Multiply(n, width, count, lookSlope, 1, n, listens, width, 1, heardSlope, width);
        Matrix.Multiply(n, width, count, takeSlope, 1, n, takes, width, 1, takenSlope, width);
        Matrix.Multiply(Size, width, n, words, 1, Size, heardSlope, width, 1, listening.Slopes(thread), width, true);
        Matrix.Multiply(Size, width, n, words, 1, Size, takenSlope, width, 1, taking.Slopes(thread), width, true);
        Matrix.Multiply(n, Size, width, heardSlope, width, 1, listening.Numbers, 1, width, back, Size);
        Matrix.Multiply(n, Size, width, takenSlope, width, 1, taking.Numbers, 1, width, back, Size, true);
        for (var w = 0; w < n; w++) TensorPrimitives.Multiply(back.AsSpan(w * Size, Size), kept, back.AsSpan(w * Size, Size));
        for (var r = 0; r < at.Length; r++)
            if (at[r] >= 0) TensorPrimitives.MultiplyAdd(back.AsSpan(at[r] * Size, Size), 1f / parts[at[r]], slope.Slice(r * Size, Size), slope.Slice(r * Size, Size));
    }

    /// <summary>How far each label's share is off; 0 where nobody knows.</summary>
    private float[] Wrong(Lesson lesson, bool[] left, float[] odds, float scale)
    {
        var wrong = new float[odds.Length];
        var from = 0;
        for (var f = 0; f < lesson.Facts.Length; f++)
        {
            var (values, bits) = (labels.Sheets[lesson.Subject].Facts[f].Values.Count, lesson.Facts[f]);
            var share = bits == 0 ? (lesson.Complete ? 1f : 0) : !BitOperations.IsPow2(bits) ? 0 : lesson.Source == Source.Play ? course.PlayShare : 1;
            // when all words that told it were left out, it is not told
            if (lesson.Told.FirstOrDefault(t => t.Fact == f, new(-1, 0, 0, 0)) is { Fact: >= 0 } told && Enumerable.Range(told.First, told.Last - told.First + 1).All(w => left[w])) share = 0;
            if (share > 0)
            {
                var shares = new float[values + 1];
                odds.AsSpan(from, values).CopyTo(shares);
                TensorPrimitives.SoftMax<float>(shares, shares);
                if (bits != 0) shares[BitOperations.TrailingZeroCount(bits)]--;
                TensorPrimitives.Multiply(shares.AsSpan(0, values), share * scale, wrong.AsSpan(from, values));
            }
            from += values;
        }
        return wrong;
    }

    /// <summary>Hands the slopes of what labels listen for, or take, to the three parts it is made from.</summary>
    private void Made(int thread, int start, int count, int words, float[] slope, float[] of, Weights text, Weights shared, Weights own)
    {
        var made = new float[count * width];
        Matrix.Multiply(count, width, words, slope, words, 1, of, width, 1, made, width);
        Matrix.Multiply(Size, width, count, labels.Directions.AsSpan(start * Size), 1, Size, made, width, 1, text.Slopes(thread), width, true);
        for (var l = 0; l < count; l++)
        {
            var one = made.AsSpan(l * width, width);
            TensorPrimitives.Add(own.Slope(thread, start + l), one, own.Slope(thread, start + l));
            TensorPrimitives.Add(shared.Slope(thread, labels.Called[start + l]), one, shared.Slope(thread, labels.Called[start + l]));
        }
    }
}
