namespace Umpirage.Finder;

/// <summary>Every stem, pair of stems and synonym group of the examples, and how telling each is: what stands everywhere tells little.</summary>
internal sealed class TermBook
{
    private const float PairWeight = 0.8f, KinWeight = 0.7f, Again = 0.3f;

    private readonly Dictionary<string, int> place = new(StringComparer.Ordinal);
    private readonly float[] telling;

    public TermBook(IReadOnlyList<Utterance> examples)
    {
        var seen = new List<int>();
        foreach (var example in examples)
            foreach (var term in Grams(example).Distinct())
            {
                if (place.TryAdd(term, seen.Count)) seen.Add(0);
                seen[place[term]]++;
            }
        telling = [.. seen.Select(s => MathF.Log((examples.Count + 1f) / (s + 0.5f)))];
    }

    public int Count => telling.Length;

    /// <summary>How telling one term is; an unknown one is as telling as can be.</summary>
    public float Telling(string term) => place.TryGetValue(term, out var at) ? telling[at] : 9;

    public Sparse Of(Utterance utterance)
    {
        var weights = new Dictionary<int, float>();
        foreach (var term in Grams(utterance))
        {
            if (!place.TryGetValue(term, out var at)) continue;
            var weight = telling[at] * (term[0] == '~' ? KinWeight : term.Contains(' ') ? PairWeight : 1);
            weights[at] = weights.TryGetValue(at, out var before) ? before + Again * weight : weight;
        }
        return Sparse.Of(weights);
    }

    private TermBook(BinaryReader from)
    {
        telling = new float[from.ReadInt32()];
        for (var i = 0; i < telling.Length; i++)
        {
            place[from.ReadString()] = i;
            telling[i] = from.ReadSingle();
        }
    }

    public void Write(BinaryWriter to)
    {
        to.Write(Count);
        foreach (var (term, i) in place.OrderBy(p => p.Value)) { to.Write(term); to.Write(telling[i]); }
    }

    public static TermBook Read(BinaryReader from) => new(from);

    private static IEnumerable<string> Grams(Utterance utterance)
    {
        string? before = null;
        foreach (var (term, _) in utterance.Terms)
        {
            yield return term;
            if (term[0] == '~') continue;
            if (before is not null) yield return before + " " + term;
            before = term;
        }
    }
}
