using Umpirage.Rules.Codes;

namespace Umpirage.Rules.Plays;

/// <summary>
/// Rules a written play whose author left out what goes without saying: facts for which the sheet names a usual value. Takes only what the
/// ruling needs, and says what it took. Somebody who can be asked is asked instead.
/// </summary>
public static class Usual
{
    /// <param name="told">The moments that were told: a fact they have begun to tell is not taken as usual.</param>
    public static Ruling Rule(Table table, Situation said, IReadOnlyCollection<string> told)
    {
        var plain = Umpire.Rule(table, said);
        if (!plain.IsPossible || plain.IsRuled) return plain;
        var (filled, taken) = (said, new List<BoundTerm>());
        foreach (var fact in table.Sheet.Bound.Facts.Where(f => f.Term.Usually is not null && !said.IsKnown(f.Index) && !Begun(f, told)))
        {
            var usual = 1UL << fact.ValueIndex(fact.Term.Usually!);
            if ((table.Sheet.Domain[fact.Index] & usual) == 0 || !Umpire.Lines(table, filled.With(fact.Index, usual)).Any()) continue;
            filled = filled.With(fact.Index, usual);
            taken.Add(fact);
        }
        // what does not matter is not taken
        var words = Umpire.Rule(table, filled).InWords;
        foreach (var fact in taken.ToList())
        {
            var without = filled.With(fact.Index, table.Sheet.Domain[fact.Index]);
            if (Umpire.Rule(table, without).InWords != words) continue;
            filled = without;
            taken.Remove(fact);
        }
        return Umpire.Rule(table, filled) with { TakenAsUsual = taken };
    }

    private static bool Begun(BoundTerm fact, IReadOnlyCollection<string> told) =>
        fact.Term.ToldBy.Any(t => t.InOrder.Any(m => told.Contains(m, StringComparer.OrdinalIgnoreCase)));
}
