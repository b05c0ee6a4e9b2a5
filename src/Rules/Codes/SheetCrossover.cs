
namespace Umpirage.Rules.Codes;

/// <summary>Compares the decisions of one sheet under two codes by splitting the space of cases on what either asks.</summary>
internal sealed class SheetCrossover
{
    private readonly CodeSheet one;
    private readonly ulong[] domain;
    private readonly Entry[][] here;
    private readonly Entry[][] there;
    private readonly Table[] tables;
    private List<ulong[]> reachable = [];

    public SheetCrossover(CodeSheet one, CodeSheet two)
    {
        this.one = one;
        domain = [.. one.Terms.Select(t => one.Domain[t.Index] & two.Domain[two.Bound.Find(t.Name)!.Index])];
        here = one.Entries;
        // the second code's entries in the first one's numbering: a layer's exceptions may have moved a decision
        there = [.. one.Bound.Decisions.Select(d => two.Entries[two.Bound.Find(d.Name)!.Index - two.FactCount].Select(e => Moved(e, two)).ToArray())];
        tables = [Table.Of(one), Table.Of(two)];
    }

    private Entry Moved(Entry entry, CodeSheet from)
    {
        if (from.Bound == one.Bound) return entry;
        Box Move(Box box) => Box.Of([.. box.Terms.Select((t, i) => new Allowed(one.Bound.Find(from.Terms[t].Name)!.Index, box.Masks[i]))])!;
        return new(one.Bound.Find(from.Terms[entry.Decision].Name)!.Index, entry.Value, entry.Clause, Move(entry.Box), [.. entry.Holes.Select(Move)]);
    }

    public IReadOnlyList<RulingDifference> Rulings()
    {
        var lines = new List<RulingDifference>();
        foreach (var decision in one.Bound.OwnDecisions)
        {
            var d = decision.Index - one.FactCount;
            if (Alike(here[d], there[d])) continue;
            reachable = Reachable(d);
            var leaves = new List<(ulong[] Space, int Here, int There)>();
            Differences(d, [.. domain], leaves);
            while (leaves.Count > 0)
            {
                var (space, a, b) = leaves[0];
                var wide = Pruned(Within(Wording.Widen(one, space, s => AllDiffer(d, Within(s), a, b))));
                leaves.RemoveAll(l => l.Here == a && l.There == b && Inside(Pruned(l.Space), wide));
                lines.Add(new(decision.Name, Wording.Say(one, wide), decision.Values[a], decision.Values[b], wide));
            }
        }
        return lines;
    }

    /// <summary>Leaves out of what is said the values that cannot occur together with the rest of it.</summary>
    private ulong[] Pruned(ulong[] wide)
    {
        for (var t = 0; t < wide.Length; t++)
        {
            if (wide[t] == domain[t]) continue;
            var kept = wide[t];
            for (var v = 0; v < 64; v++)
            {
                var bit = 1UL << v;
                if ((kept & bit) == 0 || kept == bit) continue;
                wide[t] = bit;
                if (!CanOccur(wide)) kept &= ~bit;
            }
            wide[t] = kept;
        }
        return wide;
    }

    private static bool Alike(Entry[] a, Entry[] b) =>
        a.Length == b.Length && a.Zip(b).All(p => p.First.Value == p.Second.Value && Alike(p.First.Box, p.Second.Box)
            && p.First.Holes.Length == p.Second.Holes.Length && p.First.Holes.Zip(p.Second.Holes).All(h => Alike(h.First, h.Second)));

    private static bool Alike(Box a, Box b) => a.Terms.AsSpan().SequenceEqual(b.Terms) && a.Masks.AsSpan().SequenceEqual(b.Masks);

    private ulong[] Within(ulong[] space)
    {
        var within = new ulong[space.Length];
        for (var t = 0; t < space.Length; t++) within[t] = space[t] & domain[t];
        return within;
    }

    private static bool Inside(ulong[] space, ulong[] wide)
    {
        for (var t = 0; t < space.Length; t++) if ((space[t] & ~wide[t]) != 0) return false;
        return true;
    }

    /// <summary>What can really occur before this decision, as far as either code's rules for it ask: the lines of both tables, cut down to that.</summary>
    private List<ulong[]> Reachable(int decision)
    {
        var asked = here[decision].Concat(there[decision]).SelectMany(e => e.Holes.Prepend(e.Box)).SelectMany(b => b.Terms).Distinct().Order().ToArray();
        var known = new HashSet<string>();
        var spaces = new List<ulong[]>();
        for (var k = 0; k < tables.Length; k++)
        {
            var bound = tables[k].Sheet.Bound;
            var place = one.Terms.Select(t => bound == one.Bound ? t.Index : bound.Find(t.Name)!.Index).ToArray();
            foreach (var cell in tables[k].Cells)
            {
                var space = (ulong[])domain.Clone();
                foreach (var t in asked)
                {
                    var at = place[t];
                    space[t] &= at < one.FactCount ? cell.Facts[at] : 1UL << cell.Values[at - one.FactCount];
                }
                if (Array.IndexOf(space, 0UL) < 0 && known.Add(string.Join(',', asked.Select(t => space[t])))) spaces.Add(space);
            }
        }
        return spaces;
    }

    private bool CanOccur(ulong[] space)
    {
        foreach (var cell in reachable)
        {
            var meets = true;
            for (var t = 0; t < space.Length && meets; t++) meets = (cell[t] & space[t]) != 0;
            if (meets) return true;
        }
        return false;
    }

    private void Differences(int decision, ulong[] space, List<(ulong[], int, int)> into)
    {
        if (!CanOccur(space)) return;
        if (SplitOn(decision, space) is not { } parts)
        {
            if (Values(decision, space) is var (a, b) && a != b) into.Add((space, a, b));
            return;
        }
        foreach (var part in parts) Differences(decision, part, into);
    }

    /// <summary>Whether every case of the space that can occur differs in just this way.</summary>
    private bool AllDiffer(int decision, ulong[] space, int a, int b)
    {
        if (!CanOccur(space)) return true;
        if (SplitOn(decision, space) is not { } parts) return Values(decision, space) is var (x, y) && x == a && y == b;
        foreach (var part in parts) if (!AllDiffer(decision, part, a, b)) return false;
        return true;
    }

    private (int, int)? Values(int decision, ulong[] space) =>
        Value(here[decision], space) is { } a && Value(there[decision], space) is { } b ? (a, b) : null;

    private static int? Value(Entry[] entries, ulong[] space)
    {
        foreach (var entry in entries) if (entry.Meets(space) == 2) return entry.Value;
        return null;
    }

    private IEnumerable<ulong[]>? SplitOn(int decision, ulong[] space)
    {
        foreach (var entry in here[decision].Concat(there[decision]))
        {
            if (entry.Meets(space) != 1) continue;
            foreach (var box in entry.Holes.Prepend(entry.Box))
                if (box.Meets(space) == 1) return Parts(space, box);
        }
        return null;
    }

    private static IEnumerable<ulong[]> Parts(ulong[] space, Box box)
    {
        for (var i = 0; i < box.Terms.Length; i++)
        {
            var t = box.Terms[i];
            if ((space[t] & ~box.Masks[i]) == 0) continue;
            var (inside, outside) = ((ulong[])space.Clone(), (ulong[])space.Clone());
            inside[t] &= box.Masks[i];
            outside[t] &= ~box.Masks[i];
            return [inside, outside];
        }
        return [space];
    }
}
