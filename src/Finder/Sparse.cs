namespace Umpirage.Finder;

/// <summary>A direction in which few numbers are not nothing: terms and their weights, of length one.</summary>
internal sealed record Sparse(int[] Terms, float[] Weights)
{
    public static Sparse Of(Dictionary<int, float> weights)
    {
        var norm = MathF.Sqrt(weights.Values.Sum(w => w * w));
        var terms = weights.Keys.Order().ToArray();
        return new(terms, [.. terms.Select(t => norm > 0 ? weights[t] / norm : 0)]);
    }
}

/// <summary>For every term the examples that have it, so that one question is held against all examples at once.</summary>
internal sealed class Postings
{
    private readonly List<(int Example, float Weight)>[] of;

    public Postings(IReadOnlyList<Sparse> examples, int terms)
    {
        of = new List<(int, float)>[terms];
        for (var i = 0; i < examples.Count; i++)
            for (var t = 0; t < examples[i].Terms.Length; t++) (of[examples[i].Terms[t]] ??= []).Add((i, examples[i].Weights[t]));
    }

    public void Add(Sparse question, Span<float> likeness)
    {
        for (var t = 0; t < question.Terms.Length; t++)
            if (of[question.Terms[t]] is { } list)
                foreach (var (example, weight) in list) likeness[example] += weight * question.Weights[t];
    }
}
