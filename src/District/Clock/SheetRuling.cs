using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Clock;

/// <summary>What a sheet of the code says to a moment of the game: its decisions, why, the sources, and what would have to be known to say more.</summary>
public sealed record SheetRuling(string Sheet, IReadOnlyList<string> Ruling, IReadOnlyList<string> Why, IReadOnlyList<string> Sources, IReadOnlyList<string> DoNow, string? AskNext)
{
    private IReadOnlyList<Decided> Decisions { get; init; } = [];

    /// <summary>The values of a decision that are still possible; one when it is ruled, none when what was said cannot be.</summary>
    public IReadOnlyList<string> Values(string decision) => Decisions.FirstOrDefault(d => Words.Same(d.Term.Name, decision))?.Values ?? [];

    /// <summary>True when the decision can only come out this way.</summary>
    public bool Is(string decision, string value) => Values(decision) is [var only] && Words.Same(only, value);

    /// <summary>True when the decision may still come out this way.</summary>
    public bool MayBe(string decision, string value) => Values(decision).Any(v => Words.Same(v, value));

    /// <summary>Rules "fact is value" lines under a worked-out sheet. What cannot be read is a finding.</summary>
    internal static SheetRuling Of(Table table, IEnumerable<string> given, List<Finding> findings)
    {
        var situation = Situation.Read(table.Sheet, table.Sheet.Bound.Sheet.File, given.Select(g => new Phrase(g, 0)), findings);
        var ruling = Umpire.Rule(table, situation);
        var answer = Answer.Of(ruling, [], []);
        // a decision of which this moment says nothing is left out, unless nothing is left
        var blank = Umpire.Rule(table, Situation.Unknown(table.Sheet)).Announced.Select(d => d.Values.Count).ToList();
        List<string> told = ruling.IsPossible ? [.. answer.Ruling.Where((_, i) => ruling.Announced.ElementAt(i).Values.Count < blank[i])] : [];
        return new(answer.Sheet, told.Count > 0 ? told : answer.Ruling, answer.Why, answer.Sources, answer.DoNow, answer.AskNext) { Decisions = [.. ruling.Own] };
    }
}
