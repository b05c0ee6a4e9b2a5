using System.Numerics;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Plays;

/// <summary>
/// One sheet under one code, asked again and again with every fact known: a walk down its table instead of a ruling. A fact on which an answer does
/// not hang may stay at its first value.
/// </summary>
public sealed class AskedSheet(Table table)
{
    private readonly Dictionary<string, int> facts = table.Sheet.Bound.Facts.ToDictionary(f => f.Name, f => f.Index);
    private readonly Dictionary<string, int> decisions = table.Sheet.Bound.Decisions.ToDictionary(d => d.Name, d => d.Index - table.Sheet.FactCount);
    private readonly int[] first = [.. table.Sheet.Domain.Take(table.Sheet.FactCount).Select(BitOperations.TrailingZeroCount)];

    public string Name => table.Sheet.Bound.Sheet.Name;

    /// <summary>A question with every fact at its first value.</summary>
    public int[] Ask() => [.. first];

    public void Put(Span<int> asked, string fact, double number) => asked[facts[fact]] = Band(fact, number);

    public void Put(Span<int> asked, string fact, string value) => asked[facts[fact]] = ValueAt(fact, value);

    /// <summary>What the sheet decides when these facts hold, and the rule that decided.</summary>
    /// <param name="given">A fact with a word, or with a number that is put in its band.</param>
    public (string Value, BoundClause By) Ask(string decision, params ReadOnlySpan<(string Fact, string? Word, double Number)> given)
    {
        Span<int> asked = stackalloc int[first.Length];
        first.CopyTo(asked);
        foreach (var (fact, word, number) in given)
            if (word is null) Put(asked, fact, number);
            else Put(asked, fact, word);
        var line = Line(asked);
        return (Value(line, decision), By(line, decision));
    }

    /// <summary>The band a number falls in; one beyond the sheet's range counts as its end.</summary>
    public int Band(string fact, double number)
    {
        var band = table.Sheet.Terms[facts[fact]].Term.Band!;
        return table.Sheet.BandOf(facts[fact], Math.Clamp(number, band.Low, band.High));
    }

    /// <summary>The place of a value among a fact's values.</summary>
    public int ValueAt(string fact, string value) => table.Sheet.Terms[facts[fact]].ValueIndex(value);

    /// <exception cref="InvalidOperationException">The sheet holds for impossible what was asked: an error of the caller.</exception>
    public Cell Line(ReadOnlySpan<int> asked) => table.At(asked) ?? throw new InvalidOperationException($"'{Name}' holds for impossible what was asked");

    public string Value(Cell line, string decision) => table.Sheet.Terms[table.Sheet.FactCount + decisions[decision]].Values[line.Values[decisions[decision]]];

    /// <summary>The rule that gave a decision its value.</summary>
    public BoundClause By(Cell line, string decision) => table.Sheet.Bound.Clauses[line.Clauses[decisions[decision]]];

    /// <summary>A rule's title with the code's own values in it, and its source under this code.</summary>
    public (string Title, Citation Source) Told(BoundClause by) => (Because.Fill(table.Sheet, by.Clause.Title), table.Sheet.Code.Cite(by.Clause));

    /// <summary>A parameter's value as it is written.</summary>
    public string Word(string parameter) => Taken(parameter).Value;

    /// <summary>The whole number a parameter sets; none where the code sets none.</summary>
    public int? Number(string parameter) => (int?)Exactly(parameter);

    /// <summary>The same, with what stands behind the point.</summary>
    public double? Exactly(string parameter) => Taken(parameter).Quantity is { IsNone: false } number ? number.Value : null;

    /// <summary>Where a parameter's value comes from.</summary>
    public Citation Source(string parameter) => Taken(parameter).Citation;

    private Provenance Taken(string parameter) => table.Sheet.Values.First(v => Words.Same(v.Key.Name, parameter)).Value;
}
