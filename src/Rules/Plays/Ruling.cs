using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Plays;

/// <summary>
/// The answer to a situation. Each decision holds the values that are still possible; the play is ruled when each of the sheet's own decisions
/// has one. A situation that cannot be has no values and says why in <see cref="Impossible"/>.
/// </summary>
public sealed record Ruling(Situation Situation, Table Table, IReadOnlyList<Decided> Decisions, IReadOnlyList<string> Impossible)
{
    /// <summary>Facts nobody spoke of that were taken as they usually are; without them the play would not be ruled.</summary>
    public IReadOnlyList<BoundTerm> TakenAsUsual { get; init; } = [];

    public bool IsPossible => Impossible.Count == 0;
    public bool IsRuled => IsPossible && Own.All(d => d.Values.Count == 1);
    public IEnumerable<Decided> Own => Decisions.Where(d => d.Term.Own);

    /// <summary>What the umpire announces, in the sheet's order.</summary>
    public IEnumerable<Decided> Announced => Situation.Sheet.Bound.Announced.Select(a => Decisions[a.Index - Situation.Sheet.FactCount]);

    public Decided? Find(string decision) => Decisions.FirstOrDefault(d => Words.Same(d.Term.Name, decision));

    /// <summary>For a term of a possible situation the values still possible, as bits: of a fact those not ruled out by what was said, of a decision those left.</summary>
    internal ulong Known(int term)
    {
        var sheet = Situation.Sheet;
        if (term < sheet.FactCount) return Situation.Known[term];
        var decided = Decisions[term - sheet.FactCount];
        return decided.Values.Aggregate(0UL, (bits, value) => bits | 1UL << decided.Term.ValueIndex(value));
    }

    /// <summary>"runner: out; ball: dead", with every value still possible.</summary>
    public string InWords => IsPossible ? string.Join("; ", Announced.Select(d => d.InWords)) : "cannot be: " + string.Join("; ", Impossible);
}

/// <summary>One decision of a ruling: its possible values and the clauses that decide them, in the sheet's order.</summary>
public sealed record Decided(BoundTerm Term, IReadOnlyList<string> Values, IReadOnlyList<BoundClause> By)
{
    public string InWords => $"{Term.Name}: {Words.Or(Values)}";
}
