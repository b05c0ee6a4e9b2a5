namespace Umpirage.Rules.Codes;

/// <summary>
/// A set of cases given by conditions that all hold: for some terms, the set of allowed values as bits; every other term is free.
/// Everything the checker proves is intersection and subtraction of boxes.
/// </summary>
public sealed class Box
{
    public static Box All { get; } = new([], []);

    private Box(int[] terms, ulong[] masks) => (Terms, Masks) = (terms, masks);

    public int[] Terms { get; }
    public ulong[] Masks { get; }

    /// <summary>A box from conditions already turned to masks; null when no case is left.</summary>
    public static Box? Of(List<Allowed> conditions)
    {
        if (conditions.Count == 0) return All;
        var (terms, masks, count) = (new int[conditions.Count], new ulong[conditions.Count], 0);
        foreach (var condition in conditions)
        {
            var at = 0;
            while (at < count && terms[at] < condition.Term) at++;
            if (at < count && terms[at] == condition.Term)
            {
                if ((masks[at] &= condition.Mask) == 0) return null;
                continue;
            }
            if (condition.Mask == 0) return null;
            for (var i = count; i > at; i--) (terms[i], masks[i]) = (terms[i - 1], masks[i - 1]);
            (terms[at], masks[at]) = (condition.Term, condition.Mask);
            count++;
        }
        return count == terms.Length ? new(terms, masks) : new(terms[..count], masks[..count]);
    }

    public static Box? Both(Box a, Box b) => Of([.. a.Conditions, .. b.Conditions]);

    private IEnumerable<Allowed> Conditions
    {
        get { for (var i = 0; i < Terms.Length; i++) yield return new(Terms[i], Masks[i]); }
    }

    /// <summary>How this box meets a space of cases: 0 not at all, 2 all of it, 1 part of it.</summary>
    public int Meets(ulong[] space)
    {
        var meets = 2;
        for (var i = 0; i < Terms.Length; i++)
        {
            var s = space[Terms[i]];
            var mask = Masks[i];
            if ((s & mask) == 0) return 0;
            if ((s & ~mask) != 0) meets = 1;
        }
        return meets;
    }

    public bool Holds(ReadOnlySpan<int> values)
    {
        for (var i = 0; i < Terms.Length; i++)
            if ((Masks[i] >> values[Terms[i]] & 1) == 0) return false;
        return true;
    }
}

/// <summary>The values one term may take, as bits.</summary>
public sealed record Allowed(int Term, ulong Mask);

/// <summary>One way of setting a decision: where its box holds, outside its holes, the decision has this value.</summary>
public sealed class Entry(int decision, int value, int clause, Box box, Box[] holes)
{
    public int Decision { get; } = decision;
    public int Value { get; } = value;
    public int Clause { get; } = clause;
    public Box Box { get; } = box;
    public Box[] Holes { get; } = holes;

    /// <summary>0 nowhere in the space, 2 everywhere in it, 1 in part.</summary>
    public int Meets(ulong[] space)
    {
        var meets = Box.Meets(space);
        if (meets == 0) return 0;
        foreach (var hole in Holes)
        {
            var into = hole.Meets(space);
            if (into == 2) return 0;
            if (into == 1) meets = 1;
        }
        return meets;
    }

    public bool Holds(ReadOnlySpan<int> values)
    {
        if (!Box.Holds(values)) return false;
        foreach (var hole in Holes) if (hole.Holds(values)) return false;
        return true;
    }
}
