using System.Numerics;
using System.Numerics.Tensors;
using Umpirage.Finder;

namespace Umpirage.Tune;

/// <summary>Measures what was learned on the lessons held out, through the finder's own reading, and chooses the limits there.</summary>
internal sealed class Measures
{
    /// <summary>So many of the facts filled are to be right.</summary>
    private const double Right = 0.96;

    private readonly Learned learned;
    private readonly IReadOnlyList<Lesson> lessons;
    private readonly float[][] scores;
    private readonly Meaning[] meanings;
    private readonly List<(Lesson Lesson, float Said, bool Right)> fills = [];
    private readonly Dictionary<Lesson, int> stated = [];

    public Measures(Learned learned, IReadOnlyList<Lesson> lessons)
    {
        (this.learned, this.lessons) = (learned, lessons);
        using var encoder = new Encoder(learned.Changes);
        meanings = [.. lessons.Select(l => encoder.Of(l.Said))];
        scores = [.. lessons.Select((l, i) => learned.Scores(l.Said, meanings[i]))];
        for (var i = 0; i < lessons.Count; i++) if (lessons[i].Source is Source.Asked or Source.Play) Facts(lessons[i], meanings[i]);
    }

    private void Facts(Lesson lesson, Meaning meaning)
    {
        stated[lesson] = lesson.Facts.Count(BitOperations.IsPow2);
        foreach (var (chance, fact) in learned.Facts.Read(meaning, learned.Subjects[lesson.Subject].Labels).Select((c, f) => (c, f)))
        {
            // where the list is not complete, nobody knows whether what it lacks is said
            if (lesson.Facts[fact] == 0 && !lesson.Complete) continue;
            var best = Array.IndexOf(chance.Said, chance.Said.Max());
            fills.Add((lesson, chance.Said[best], (lesson.Facts[fact] >> best & 1) != 0));
        }
    }

    /// <summary>The share of the best subject that is not talk of other things.</summary>
    private float Fit(int lesson)
    {
        var shares = (float[])scores[lesson].Clone();
        TensorPrimitives.SoftMax<float>(shares, shares);
        return shares[..^1].Max();
    }

    private static double Share(IEnumerable<float> of, Func<float, bool> which) => of.DefaultIfEmpty(0).Average(s => which(s) ? 1.0 : 0);

    public Floors Floors(float[] middle)
    {
        var apart = Enumerable.Range(0, lessons.Count).ToLookup(l => lessons[l].Source == Source.Unrelated, Fit);
        // where questions that are called talk of other things, and the other way round, are fewest together
        var fit = Enumerable.Range(5, 26).Select(f => f / 100f).MinBy(f => Share(apart[false], s => s < f) + Share(apart[true], s => s >= f));
        var (pull, start) = Pull(middle);
        return new(fit, Limit.Of(fills.Select(f => (f.Said, f.Right)), Right), pull, start);
    }

    /// <summary>How a subject that was not learned is best drawn: each known one is taken for new in turn, and stands for itself by likeness alone.</summary>
    private (float Pull, float Start) Pull(float[] middle)
    {
        var own = Enumerable.Range(0, lessons.Count).Where(l => lessons[l].Source == Source.Asked).ToLookup(l => lessons[l].Subject);
        var best = (Surprise: double.MaxValue, Pull: 0f, Start: 0f);
        foreach (var pull in new[] { 5f, 10, 20, 40 })
            foreach (var start in new[] { -9f, -6, -3, 0, 3 })
            {
                var surprise = 0.0;
                foreach (var subject in own)
                {
                    var direction = new float[Encoder.Size];
                    foreach (var l in subject) TensorPrimitives.Add<float>(direction, meanings[l].Whole, direction);
                    foreach (var l in Enumerable.Range(0, lessons.Count))
                    {
                        if (lessons[l].Source != Source.Asked || subject.Count() < 2 && lessons[l].Subject == subject.Key) continue;
                        var seen = (float[])direction.Clone();
                        // an example is not held against itself
                        if (lessons[l].Subject == subject.Key) TensorPrimitives.Subtract<float>(seen, meanings[l].Whole, seen);
                        TensorPrimitives.Divide(seen, TensorPrimitives.Norm<float>(seen), seen);
                        var shares = (float[])scores[l].Clone();
                        shares[subject.Key] = start + pull * (TensorPrimitives.Dot<float>(seen, meanings[l].Whole) - TensorPrimitives.Dot<float>(middle, meanings[l].Whole));
                        TensorPrimitives.SoftMax<float>(shares, shares);
                        surprise -= Math.Log(shares[lessons[l].Subject] + 1e-9);
                    }
                }
                if (surprise < best.Surprise) best = (surprise, pull, start);
            }
        return (best.Pull, best.Start);
    }

    public string Figures()
    {
        var told = new StringWriter();
        foreach (var (name, which) in new (string, Func<Lesson, bool>)[] { ("asked, facts all listed", l => l.Complete), ("asked, facts partly listed", l => l.Source == Source.Asked && !l.Complete), ("plays", l => l.Source == Source.Play) })
        {
            var ranks = Enumerable.Range(0, lessons.Count).Where(l => which(lessons[l])).Select(l => scores[l].Count(s => s > scores[l][lessons[l].Subject])).ToList();
            if (ranks.Count == 0) continue;
            told.WriteLine($"held out, {name}: {ranks.Count}, first {100.0 * ranks.Count(r => r == 0) / ranks.Count:f1} %, among three {100.0 * ranks.Count(r => r < 3) / ranks.Count:f1} %");
            var all = stated.Where(s => which(s.Key)).Sum(s => s.Value);
            foreach (var floor in new[] { 0.5f, 0.6f, 0.7f, 0.8f, 0.85f, 0.9f, 0.95f, 0.98f })
            {
                var over = fills.Where(f => which(f.Lesson) && f.Said >= floor).ToList();
                told.WriteLine($"  facts from {floor:f2}: filled {100.0 * over.Count(f => f.Right) / all:f1} %, of those right {100.0 * over.Count(f => f.Right) / Math.Max(1, over.Count):f1} %");
            }
        }
        return told.ToString();
    }
}
