using System.Numerics;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Pitchers;

/// <summary>One sheet under one code, asked with every fact known.</summary>
internal sealed class Limit(Table table)
{
    private readonly Dictionary<string, int> facts = table.Sheet.Bound.Facts.ToDictionary(f => f.Name, f => f.Index);
    private readonly Dictionary<string, int> decisions = table.Sheet.Bound.Decisions.ToDictionary(d => d.Name, d => d.Index - table.Sheet.FactCount);
    private readonly int[] first = [.. table.Sheet.Domain.Take(table.Sheet.FactCount).Select(BitOperations.TrailingZeroCount)];

    /// <summary>A question with every fact at its first value.</summary>
    public int[] Ask() => [.. first];

    public void Put(int[] asked, string fact, double number) => asked[facts[fact]] = Band(fact, number);

    public void Put(int[] asked, string fact, string value) => asked[facts[fact]] = table.Sheet.Terms[facts[fact]].ValueIndex(value);

    /// <summary>The band a number falls in; one beyond the sheet's range counts as its end.</summary>
    public int Band(string fact, double number)
    {
        var band = table.Sheet.Terms[facts[fact]].Term.Band!;
        return table.Sheet.BandOf(facts[fact], Math.Clamp(number, band.Low, band.High));
    }

    public Cell Line(int[] asked) => table.At(asked) ?? throw new InvalidOperationException($"'{table.Sheet.Bound.Sheet.Name}' holds for impossible what was asked");

    public string Value(Cell line, string decision) => table.Sheet.Terms[table.Sheet.FactCount + decisions[decision]].Values[line.Values[decisions[decision]]];

    /// <summary>A parameter's value.</summary>
    public string Word(string parameter) => Taken(parameter).Value;

    /// <summary>The number a parameter sets; none where the code sets none.</summary>
    public int? Number(string parameter) => Taken(parameter).Quantity is { IsNone: false } number ? (int)number.Value : null;

    /// <summary>The same, with what stands behind the point.</summary>
    public double? Exactly(string parameter) => Taken(parameter).Quantity is { IsNone: false } number ? number.Value : null;

    /// <summary>Where a parameter's value comes from.</summary>
    public Citation Source(string parameter) => Taken(parameter).Citation;

    /// <summary>How a parameter's value is written.</summary>
    public string Said(string parameter) => Taken(parameter).Value;

    private Provenance Taken(string parameter) => table.Sheet.Values.First(v => Words.Same(v.Key.Name, parameter)).Value;

    /// <summary>The rule that decided, what it was held against, and where it stands.</summary>
    public Bar Because(Cell line, string decision, string said)
    {
        var clause = table.Sheet.Bound.Clauses[line.Clauses[decisions[decision]]];
        return new(table.Sheet.Bound.Sheet.Name, clause.Id, Rules.Plays.Because.Fill(table.Sheet, clause.Clause.Title), clause.Clause.Reason, said, table.Sheet.Code.Cite(clause.Clause));
    }
}
