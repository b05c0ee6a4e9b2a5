using System.Numerics.Tensors;
using Umpirage.Finder;
using Umpirage.Rules.Codes;

namespace Umpirage.Tune;

/// <summary>Makes lessons of everything the finder may learn from, and gathers what the facts' values are called.</summary>
internal static class Lessons
{
    /// <summary>
    /// Questions asked from this place on in a file list every fact they state; the older ones above list only some. The mark is a comment line.
    /// </summary>
    public const string Mark = "# from here on every fact a question states is listed";

    public static List<Lesson> Of(Codebook book, IReadOnlyList<Sheet> sheets, Material material, Synonyms synonyms, IEnumerable<string> unrelated, LowerLayers layers)
    {
        var complete = material.Asked.SelectMany(CompleteIn).ToHashSet(StringComparer.Ordinal);
        var lessons = new List<Lesson>();
        foreach (var example in Examples.Gather(book, sheets, material, synonyms))
        {
            var (words, below, _) = layers.Of(example.Said);
            var source = example.Origin switch { Origin.Asked => Source.Asked, Origin.Play => Source.Play, _ => Source.Sheet };
            lessons.Add(new(source, example.Subject, example.Said, example.Facts, example.Asked is { } asked && complete.Contains(asked.Text), words, Halves(below))
            {
                Told = example.Asked is { } told ? [.. ToldIn(told, example.Said, sheets[example.Subject])] : [],
            });
        }
        foreach (var line in unrelated.Where(l => l.Length > 0 && l[0] != '#'))
        {
            var said = synonyms.Hear(line);
            var (words, below, _) = layers.Of(said);
            lessons.Add(new(Source.Unrelated, sheets.Count, said, [], false, words, Halves(below)));
        }
        return lessons;
    }

    /// <summary>Half as long, which is exact enough and lets all lessons lie in memory.</summary>
    private static Half[] Halves(float[] numbers)
    {
        var halves = new Half[numbers.Length];
        TensorPrimitives.ConvertToHalf(numbers, halves);
        return halves;
    }

    private static IEnumerable<string> CompleteIn(SourceText text) =>
        text.Text.Split('\n').SkipWhile(l => l.Trim() != Mark).Where(l => l.StartsWith("  ", StringComparison.Ordinal) && !l.StartsWith("   ", StringComparison.Ordinal)).Select(Rules.Ground.Words.Tidy);

    private static IEnumerable<Told> ToldIn(AskedQuestion asked, Utterance said, Sheet sheet)
    {
        foreach (var fact in asked.Facts)
        {
            var start = said.Text.IndexOf(fact.Words, StringComparison.Ordinal);
            var inside = Enumerable.Range(0, said.Words.Count).Where(w => said.Words[w].End > start && said.Words[w].Start < start + fact.Words.Length).ToList();
            var at = sheet.Facts.FindIndex(f => f.Name == fact.Fact);
            if (start >= 0 && inside.Count > 0) yield return new(at, sheet.Facts[at].Values.ToList().IndexOf(fact.Value), inside[0], inside[^1]);
        }
    }
}
