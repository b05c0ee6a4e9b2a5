using Umpirage.Finder;
using Umpirage.Tune;

namespace Umpirage.Tests.Tune;

/// <summary>What the lessons' errors add up to, worked out from the finder's own heads rather than from the learners.</summary>
internal static class Measured
{
    public static double Loss(Network network, Course course, LabelBook labels, IReadOnlyList<Lesson> lessons)
    {
        var sum = 0.0;
        foreach (var lesson in lessons)
        {
            var rows = network.Through([.. lesson.Below.Select(h => (float)h)], [0, lesson.Pieces.Length]);
            var shares = network.Subjects.Run(lesson, new bool[lesson.Said.Words.Count], rows, [], 0, new Random(0), 1);
            var weight = lesson.Source == Source.Sheet ? course.SheetShare : 1;
            for (var s = 0; s < shares.Length; s++) sum -= weight * ((s == lesson.Subject ? 1 - course.Smoothing : 0) + course.Smoothing / shares.Length) * Math.Log(shares[s]);
            if (!lesson.Complete) continue;
            var words = new float[lesson.Said.Words.Count * Encoder.Size];
            for (var w = 0; w < lesson.Said.Words.Count; w++)
            {
                var pieces = Enumerable.Range(0, lesson.Pieces.Length).Where(p => lesson.Pieces[p] == w).ToList();
                for (var i = 0; i < Encoder.Size; i++) words[w * Encoder.Size + i] = pieces.Average(p => rows[p * Encoder.Size + i]);
            }
            var read = network.Facts.Head.Read(new(new float[Encoder.Size], words), network.Facts.LabelsOf(lesson.Subject));
            for (var f = 0; f < read.Count; f++)
            {
                var told = lesson.Told.Where(t => t.Fact == f).ToList();
                sum -= course.FactShare * Math.Log(told.Count == 0 ? read[f].Unsaid : read[f].Said[told[0].Value]);
                foreach (var t in told) sum -= course.FactShare * course.ToldShare * Math.Log(Enumerable.Range(t.First, t.Last - t.First + 1).Sum(w => read[f].Words[t.Value][w]));
            }
        }
        return sum;
    }
}
