using System.Globalization;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>Tells facts of one sheet under one code: as sentences, and in the sheet's own words. A band of numbers is told by a number at its edge.</summary>
/// <param name="also">A second code under which a number has to lie in the same band.</param>
internal sealed class Teller(CodeSheet sheet, PhraseBook phrases, CodeSheet? also = null)
{
    /// <summary>The sentence for a fact's value.</summary>
    public string Sentence(int fact, int value)
    {
        var term = sheet.Terms[fact];
        if (Number(fact, value) is { } number && phrases.Number(term.Sheet, term.Name, number, term.Term.Band!.Unit) is { } counted) return counted;
        return phrases.Fact(term.Sheet, term.Name, term.Values[value]) ?? $"{Words.Upper(term.Name)}: {term.Values[value]}.";
    }

    /// <summary>The sentence for "fact is value" or "fact is number" as it stands in a play.</summary>
    public string Said(string given)
    {
        foreach (var term in sheet.Bound.Facts.Where(f => given.StartsWith(f.Name + " is ", StringComparison.OrdinalIgnoreCase)))
        {
            var value = given[(term.Name.Length + 4)..].Trim();
            if (double.TryParse(value, CultureInfo.InvariantCulture, out var number) && phrases.Number(term.Sheet, term.Name, number, term.Term.Band?.Unit ?? "") is { } counted) return counted;
            if (phrases.Fact(term.Sheet, term.Name, value) is { } sentence) return sentence;
        }
        return Words.Upper(given) + ".";
    }

    /// <summary>What is told: the scene, then the facts that make it plain what the play is about, then the others in the sheet's order.</summary>
    public IReadOnlyList<string> Tell(IReadOnlyCollection<int> told, int[] facts)
    {
        var leads = Leads;
        var sentences = told.OrderBy(t => leads.Contains(t) ? 0 : 1).ThenBy(t => t).Select(t => Sentence(t, facts[t]));
        return [.. phrases.Setting(sheet.Bound.Sheet.Name) is { } setting ? sentences.Prepend(setting) : sentences];
    }

    /// <summary>The facts that are always told.</summary>
    public IReadOnlyList<int> Leads => leads ??= phrases.Leads(sheet.Bound.Sheet.Name) is { } named ? [.. named.Select(n => sheet.Bound.Find(n)?.Index ?? -1).Where(i => i >= 0)]
        : phrases.Setting(sheet.Bound.Sheet.Name) is not null ? [] : [.. Enumerable.Range(0, sheet.FactCount).Where(t => sheet.Terms[t].Sheet == sheet.Bound.Sheet.Name).Take(1)];

    private IReadOnlyList<int>? leads;

    /// <summary>The same as "fact is value", or "fact is number".</summary>
    public string Given(int fact, int value) =>
        $"{sheet.Terms[fact].Name} is {(Number(fact, value) is { } number ? PhraseBook.Written(number) : sheet.Terms[fact].Values[value])}";

    /// <summary>The whole number of a band that lies nearest to where the ruling turns; a fraction when no whole one lies in it; null for a fact in words.</summary>
    public double? Number(int fact, int value)
    {
        if (also is null) return Number(sheet, fact, value);
        foreach (var number in (double?[])[Number(sheet, fact, value), Number(also, fact, value)])
            if (number is { } n && Lies(sheet, fact, n, value) && Lies(also, fact, n, value)) return n;
        return null;
    }

    private static bool Lies(CodeSheet sheet, int fact, double number, int value) => sheet.Edges.ContainsKey(fact) && sheet.BandOf(fact, number) == value;

    private static double? Number(CodeSheet sheet, int fact, int value)
    {
        if (!sheet.Edges.TryGetValue(fact, out var edges) || edges.Length == 0) return null;
        var band = sheet.Terms[fact].Term.Band!;
        // without a limit there is no edge to come near to
        if (value == 0 && double.IsPositiveInfinity(edges[0])) return Math.Ceiling(band.Low + (band.High - band.Low) / 10);
        var low = value == 0 ? band.Low : Math.Max(band.Low, edges[value - 1]);
        var high = value == edges.Length ? band.High : Math.Min(band.High, edges[value]);
        foreach (var step in (double[])[1, 0.5, 0.25, 0.125, 0.0625, 0.03125])
        {
            // the first band turns at its upper edge, every other at its lower
            var number = value == 0 ? Math.Ceiling(high / step - 1e-9) * step - step : Math.Ceiling(low / step - 1e-9) * step;
            if (value == 0 && sheet.BandOf(fact, number + step) == 0) number += step;
            if (number < low) number += step;
            if (sheet.BandOf(fact, number) == value) return number;
        }
        return null;
    }
}
