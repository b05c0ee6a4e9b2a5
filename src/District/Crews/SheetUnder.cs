using System.Numerics;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Crews;

/// <summary>A rule that says no: its title with the numbers put in, and its source.</summary>
public sealed record Barred(string Title, Citation Source);

/// <summary>One sheet about umpires under one code, asked for one decision at a time.</summary>
internal sealed class SheetUnder(Table table)
{
    private readonly Dictionary<string, int> facts = table.Sheet.Bound.Facts.ToDictionary(f => f.Name, f => f.Index);
    private readonly Dictionary<string, int> decisions = table.Sheet.Bound.Decisions.ToDictionary(d => d.Name, d => d.Index - table.Sheet.FactCount);
    private readonly int[] first = [.. table.Sheet.Domain.Take(table.Sheet.FactCount).Select(BitOperations.TrailingZeroCount)];

    /// <summary>What the sheet decides when these facts hold; facts on which the decision does not hang stay at their first value.</summary>
    /// <param name="given">A fact with a word, or with a number that is put in its band; one beyond the sheet's range counts as its end.</param>
    public (string Value, Barred By) Ask(string decision, params ReadOnlySpan<(string Fact, string? Word, double Number)> given)
    {
        Span<int> asked = stackalloc int[first.Length];
        first.CopyTo(asked);
        foreach (var (fact, word, number) in given) asked[facts[fact]] = word is null ? Band(fact, number) : table.Sheet.Terms[facts[fact]].ValueIndex(word);
        var line = table.At(asked) ?? throw new InvalidOperationException($"'{table.Sheet.Bound.Sheet.Name}' holds an umpire's day for impossible");
        var d = decisions[decision];
        var clause = table.Sheet.Bound.Clauses[line.Clauses[d]].Clause;
        return (table.Sheet.Terms[table.Sheet.FactCount + d].Values[line.Values[d]], new(Because.Fill(table.Sheet, clause.Title), table.Sheet.Code.Cite(clause)));
    }

    public int Band(string fact, double number)
    {
        var band = table.Sheet.Terms[facts[fact]].Term.Band!;
        return table.Sheet.BandOf(facts[fact], Math.Clamp(number, band.Low, band.High));
    }

    public int ValueAt(string fact, string value) => table.Sheet.Terms[facts[fact]].ValueIndex(value);

    public string Word(string parameter) => Taken(parameter).Value;
    public double Number(string parameter) => Taken(parameter).Quantity!.Value;
    public Citation Source(string parameter) => Taken(parameter).Citation;

    private Provenance Taken(string parameter) => table.Sheet.Values.First(v => Words.Same(v.Key.Name, parameter)).Value;
}
