namespace Umpirage.Rules.Codes;

/// <summary>
/// A sheet whose words have been bound to its facts, decisions and parameters, with the parts of other sheets that it uses.
/// Terms are facts first, then decisions in the order in which they can be decided. Independent of game, division and date.
/// </summary>
public sealed class BoundSheet
{
    public required Sheet Sheet { get; init; }
    public required IReadOnlyList<BoundTerm> Terms { get; init; }
    public required int FactCount { get; init; }
    public required IReadOnlyList<BoundClause> Impossible { get; init; }
    public required IReadOnlyList<BoundEffect> Effects { get; init; }
    /// <summary>Top rules and their exceptions, flat; an exception names its parent.</summary>
    public required IReadOnlyList<BoundClause> Clauses { get; init; }
    public required IReadOnlyList<Parameter> Parameters { get; init; }
    /// <summary>The moments in which a play can be told, the used sheets' included.</summary>
    public required IReadOnlyList<MomentLine> Moments { get; init; }

    /// <summary>For each clause the clauses that take its place where both hold: its exceptions, and whatever prevails over it or over its rule.</summary>
    public IReadOnlyList<IReadOnlyList<int>> Overriders => overriders ??= WorkOut();

    private IReadOnlyList<IReadOnlyList<int>>? overriders;

    private List<int>[] WorkOut()
    {
        var (over, children) = (new List<int>[Clauses.Count], new List<int>[Clauses.Count]);
        for (var i = 0; i < over.Length; i++) (over[i], children[i]) = ([], [i]);
        foreach (var clause in Clauses)
            if (clause.Parent >= 0)
            {
                over[clause.Parent].Add(clause.Index);
                children[clause.Parent].Add(clause.Index);
            }
        foreach (var clause in Clauses)
            foreach (var under in clause.PrevailsOver)
                foreach (var beaten in children[under])
                    foreach (var winner in children[clause.Index])
                        if (beaten != clause.Index && beaten != winner && !over[beaten].Contains(winner)) over[beaten].Add(winner);
        return over;
    }

    public IEnumerable<BoundTerm> Facts => Terms.Take(FactCount);
    public IEnumerable<BoundTerm> Decisions => Terms.Skip(FactCount);
    public IEnumerable<BoundTerm> OwnDecisions => Decisions.Where(d => d.Own);

    /// <summary>
    /// What the umpire announces, in the sheet's own order: all its decisions but the yes-or-no ones on which others hang; those are told as reasons.
    /// </summary>
    public IReadOnlyList<BoundTerm> Announced => announced ??=
    [
        .. Sheet.Decisions.Select(d => Find(d.Name)!)
            .Where(d => d.Values is not (["yes", "no"] or ["no", "yes"]) || !Clauses.Any(c => c.When.Any(w => w.Term == d.Index))),
    ];

    private IReadOnlyList<BoundTerm>? announced;

    public BoundTerm? Find(string name) => Terms.FirstOrDefault(t => Ground.Words.Same(t.Name, name));
}

/// <summary>A fact or decision with its place in <see cref="BoundSheet.Terms"/>. <paramref name="Own"/> is false when another sheet decides it.</summary>
public sealed record BoundTerm(Term Term, int Index, bool IsDecision, string Sheet, bool Own)
{
    public string Name => Term.Name;
    public IReadOnlyList<string> Values => Term.Values;
    /// <summary>Every value, as a set of bits.</summary>
    public ulong Full => Term.Values.Count == 64 ? ulong.MaxValue : (1UL << Term.Values.Count) - 1;

    public int ValueIndex(string value)
    {
        for (var i = 0; i < Values.Count; i++) if (Ground.Words.Same(Values[i], value)) return i;
        return -1;
    }
}

public sealed record BoundClause(
    Clause Clause, string Id, string Sheet, int Index, int Parent,
    IReadOnlyList<Condition> When, IReadOnlyList<Setting> Then, IReadOnlyList<int> PrevailsOver);

/// <summary>What is done to the game when all conditions hold.</summary>
public sealed record BoundEffect(IReadOnlyList<Condition> When, IReadOnlyList<string> Effects, int Line);

public enum Comparison { Is, IsNot, Before, After, AtLeast, AtMost }

/// <summary>One condition. Left is a term, or a parameter when <paramref name="Term"/> is negative.</summary>
public sealed record Condition(int Term, Parameter? Left, Comparison Comparison, IReadOnlyList<Operand> Operands, int Line);

/// <summary>A value word, or a parameter whose value is taken.</summary>
public sealed record Operand(string? Word, Parameter? Parameter);

/// <summary>A decision and what it is set to.</summary>
public sealed record Setting(int Decision, Operand Value, int Line);
