using System.Globalization;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Plays;

/// <summary>
/// What somebody says happened, in the words of one sheet under one code. It may leave facts open; it may turn out to be impossible, and only
/// <see cref="Umpire"/> knows. A fact that was not said keeps every value it may have.
/// </summary>
public sealed class Situation
{
    private Situation(CodeSheet sheet, ulong[] known) => (Sheet, Known) = (sheet, known);

    public CodeSheet Sheet { get; }
    /// <summary>For each term the values still possible, as bits. Decisions of other sheets may be said too.</summary>
    public ulong[] Known { get; }

    public static Situation Unknown(CodeSheet sheet) => new(sheet, [.. sheet.Domain]);

    public bool IsKnown(int term) => Known[term] != Sheet.Domain[term];

    /// <summary>The same situation with one fact narrowed to the given values.</summary>
    public Situation With(int term, ulong values)
    {
        var known = (ulong[])Known.Clone();
        known[term] = values;
        return new(Sheet, known);
    }

    /// <summary>Reads "fact is value" lines. Every line that cannot be read is a finding; the rest still counts.</summary>
    public static Situation Read(CodeSheet sheet, string file, IEnumerable<Phrase> given, List<Finding> findings)
    {
        var situation = Unknown(sheet);
        var terms = sheet.Terms.Where(t => !t.IsDecision || !t.Own).ToDictionary(t => t.Name, StringComparer.OrdinalIgnoreCase);
        var reader = new ConditionReader(terms, new Dictionary<string, Parameter>(), findings);
        foreach (var phrase in given)
        {
            if (Number(sheet, terms, phrase.Text) is var (fact, number))
            {
                var band = sheet.BandOf(fact, number);
                var range = sheet.Terms[fact].Term.Band!;
                if (band >= 0) { situation.Known[fact] &= 1UL << band; continue; }
                findings.Add(new(FindingKind.ImpossibleValue, file, phrase.Line, $"'{sheet.Terms[fact].Name}' is {number} {range.Unit}; it may be {range.Low} to {range.High}"));
                continue;
            }
            if (reader.Condition(file, phrase) is not { } condition) continue;
            var mask = CodeSheet.Mask(sheet.Terms[condition.Term], condition, sheet.Values);
            var narrowed = situation.Known[condition.Term] & mask;
            if (narrowed == 0)
                findings.Add(new(FindingKind.ImpossiblePlay, file, phrase.Line, (sheet.Domain[condition.Term] & mask) == 0
                    ? $"'{phrase.Text}' cannot be under {sheet.Code.Address}" : $"'{phrase.Text}' contradicts what was said before"));
            else situation.Known[condition.Term] = narrowed;
        }
        return situation;
    }

    private static (int Fact, double Number)? Number(CodeSheet sheet, Dictionary<string, BoundTerm> terms, string text)
    {
        var at = text.IndexOf(" is ", StringComparison.Ordinal);
        if (at <= 0 || !terms.TryGetValue(text[..at].Trim(), out var fact) || !sheet.Edges.ContainsKey(fact.Index)) return null;
        var word = text[(at + 4)..].Trim();
        if (double.TryParse(word, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)) return (fact.Index, number);
        return Quantity.TryRead(word, out var quantity) && !quantity.IsNone && quantity.Unit == fact.Term.Band!.Unit ? (fact.Index, quantity.Value) : null;
    }
}
