using Umpirage.Rules.Codes;

namespace Umpirage.Finder;

/// <summary>The names of the subjects' facts and values, and all words known to say them.</summary>
internal sealed class FactBook
{
    private const int MostKin = 10;

    public required IReadOnlyList<IReadOnlyList<Term>> Facts { get; init; }
    public required Span[][] Asked { get; init; }
    public required Span[][] Named { get; init; }

    private Dictionary<(string Fact, string Value), Span[]>? kin;

    /// <summary>What says the same value of a fact of the same name under other subjects.</summary>
    public IEnumerable<Span> Kin(int subject, int fact, int value)
    {
        kin ??= Asked.SelectMany(s => s).GroupBy(s => (Facts[s.Subject][s.Fact].Name, Facts[s.Subject][s.Fact].Values[s.Value])).ToDictionary(g => g.Key, g => g.ToArray());
        var term = Facts[subject][fact];
        if (!kin.TryGetValue((term.Name, term.Values[value]), out var all)) return [];
        var others = all.Where(s => s.Subject != subject).ToList();
        var step = Math.Max(1, others.Count / MostKin);
        return others.Where((_, i) => i % step == 0).Take(MostKin);
    }

    /// <summary>The words of asked questions that state facts, each with the direction it has within its question.</summary>
    public static IEnumerable<Span> Of(int example, Example asked, IReadOnlyList<Term> facts, TermBook terms)
    {
        foreach (var fact in asked.Asked!.Facts)
        {
            var start = asked.Said.Text.IndexOf(fact.Words, StringComparison.Ordinal);
            var inside = Enumerable.Range(0, asked.Said.Words.Count).Where(w => asked.Said.Words[w].End > start && asked.Said.Words[w].Start < start + fact.Words.Length).ToList();
            if (start < 0 || inside.Count == 0) continue;
            var (first, last) = (inside[0], inside[^1]);
            var direction = new float[Encoder.Size];
            asked.Meaning.Window(first, last, direction);
            var at = facts.ToList().FindIndex(f => f.Name == fact.Fact);
            var value = facts[at].Values.ToList().IndexOf(fact.Value);
            yield return new(asked.Subject, at, value, example, direction, last - first + 1, TermsOf(asked.Said, first, last, terms), Denial.Count(asked.Said, first, last) > 0);
        }
    }

    public static Sparse TermsOf(Utterance said, int first, int last, TermBook terms)
    {
        var inside = said.Terms.Where(t => t.Word >= first && t.Word <= last).ToList();
        return terms.Of(said with { Terms = inside });
    }

    /// <summary>The phrases by which the sheet itself names a value: the value's name beside the fact's, and the moments that tell it.</summary>
    public static IEnumerable<(int Fact, int Value, string Phrase)> Phrases(Sheet sheet)
    {
        for (var f = 0; f < sheet.Facts.Count; f++)
            for (var v = 0; v < sheet.Facts[f].Values.Count; v++)
            {
                var (fact, value) = (sheet.Facts[f], sheet.Facts[f].Values[v]);
                if (value is not ("yes" or "no")) yield return (f, v, value);
                yield return (f, v, value == "yes" ? fact.Name : value == "no" ? "not " + fact.Name : $"{fact.Name}: {value}");
                foreach (var telling in fact.ToldBy.Where(t => t.Value == value).Take(2)) yield return (f, v, string.Join(", then ", telling.InOrder));
            }
    }
}
