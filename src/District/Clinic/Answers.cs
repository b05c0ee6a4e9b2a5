using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>Answers that decisions of the same name have in other sheets: wrong ones for a decision that can come out in one way only.</summary>
internal sealed class Answers(Codebook book)
{
    private readonly ILookup<string, (string Sheet, string Value)> byName =
        book.Sheets.SelectMany(s => s.Decisions.SelectMany(d => d.Values.Select(v => (Name: Last(d.Name), s.Name, Value: v)))).ToLookup(x => x.Name, x => (x.Item2, x.Value));

    public IEnumerable<string> Elsewhere(string sheet, string decision, string right, PhraseBook phrases) =>
        phrases.Others(sheet, decision).Concat(byName[Last(decision)].Where(x => x.Sheet != sheet && !Near(x.Value, right)).GroupBy(x => x.Value).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal).Select(g => g.Key))
            .Where(v => !Words.Same(v, right));

    /// <summary>"none" and "no penalty" are one answer.</summary>
    private static bool Near(string a, string b) => Nothing(a) && Nothing(b);

    private static bool Nothing(string value) => value is "none" || value.StartsWith("no ", StringComparison.Ordinal) || value.StartsWith("nothing", StringComparison.Ordinal) || value.StartsWith("nobody", StringComparison.Ordinal);

    private static string Last(string name) => name.Split(' ')[^1].ToLowerInvariant();
}
