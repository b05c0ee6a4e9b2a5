using Umpirage.Rules.Codes;
using Umpirage.Rules.Games;
using Umpirage.Rules.Plays;

namespace Umpirage.Rules.Calls;

/// <summary>One way a play can end: the choice a side makes, if there is one, the ruling, and the game after it.</summary>
public sealed record Ending(string? Side, string? Choice, Ruling Ruling, Game? After, IReadOnlyList<string> Reasons);

/// <summary>Lays both sides of a choice beside each other.</summary>
public static class Choices
{
    /// <summary>
    /// Every way the play can end: one for each value of a choice still open that makes a difference, or the one there is. Games are given
    /// when it is known how the game stood.
    /// </summary>
    public static IReadOnlyList<Ending> Of(Ruling ruling, Game? before, WrittenPlay written, Place subject)
    {
        var open = ruling.Situation.Sheet.Bound.Facts.FirstOrDefault(f => f.Term.ChoiceOf is not null && !ruling.Situation.IsKnown(f.Index));
        if (open is null || ruling.IsRuled) return [End(ruling, null, null)];
        var endings = open.Values.Select((v, i) => (Value: v, Ruling: Umpire.Rule(ruling.Table, ruling.Situation.With(open.Index, 1UL << i)))).Where(e => e.Ruling.IsPossible)
            .Select(e => End(e.Ruling, open.Term.ChoiceOf, e.Value)).ToList();
        return [.. endings.DistinctBy(e => e.Ruling.InWords)];

        Ending End(Ruling one, string? side, string? choice)
        {
            var reasons = new List<string>();
            var after = before is null || ruling.Situation.Sheet.Bound.Effects.Count == 0 || !Effects.Certain(one) ? null : Effects.Apply(before, written, one, subject, reasons);
            return new(side, choice, one, after, reasons);
        }
    }
}
