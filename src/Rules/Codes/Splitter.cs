using System.Numerics;

namespace Umpirage.Rules.Codes;

/// <summary>
/// Splits the space of cases, decision by decision, until every rule either holds in the whole of a part or nowhere in it. Always splits on
/// the term that most of the undecided rules ask about, into groups of values that none of them tells apart.
/// </summary>
internal sealed class Splitter(CodeSheet sheet, long work)
{
    private readonly List<Cell> cells = [];
    private readonly List<Fault> faults = [];
    private readonly bool[] fired = new bool[sheet.Bound.Clauses.Count];
    private readonly bool[] changes = new bool[sheet.Bound.Clauses.Count];
    private readonly List<int> walk = [0];
    private readonly int[] values = new int[sheet.Entries.Length];
    private readonly int[] clauses = new int[sheet.Entries.Length];
    private readonly Entry[] barred = [.. sheet.Impossible.Select(b => new Entry(-1, 0, -1, b, []))];
    private readonly int[] asked = new int[sheet.Terms.Count];
    private long left = work;
    private readonly long allowed = work;

    public Table Table()
    {
        var root = sheet.Domain.Any(d => d == 0) ? Codes.Table.Impossible : Split(-1, [.. sheet.Domain], barred, [], 0);
        walk[0] = root;
        return new()
        {
            Sheet = sheet, Cells = cells, Faults = faults, Fired = fired, Changes = changes, TooEntangled = left < 0, Work = allowed - left, Walk = [.. walk],
        };
    }

    /// <summary>Works out one decision over a space (-1: which cases are possible at all), then goes on to the next. Returns the node.</summary>
    private int Split(int decision, ulong[] space, IReadOnlyList<Entry> open, List<Entry> holding, int depth)
    {
        if (left < 0) return Codes.Table.Impossible;
        var partly = new List<Entry>();
        var wholly = holding;
        foreach (var entry in open)
        {
            left -= entry.Box.Terms.Length + entry.Holes.Length + 1;
            switch (entry.Meets(space))
            {
                case 1: partly.Add(entry); break;
                case 2:
                    if (decision < 0) return Codes.Table.Impossible;
                    if (ReferenceEquals(wholly, holding)) wholly = new(holding);
                    wholly.Add(entry);
                    break;
            }
        }
        if (partly.Count > 0) return Part(decision, space, partly, wholly, depth);
        if (decision < 0) return Next(0, space, depth);
        return Decide(decision, space, wholly, depth);
    }

    private int Next(int decision, ulong[] space, int depth)
    {
        if (decision < sheet.Entries.Length) return Split(decision, space, sheet.Entries[decision], [], depth);
        cells.Add(new(space[..sheet.FactCount], [.. values], [.. clauses]));
        left -= space.Length;
        return ~(cells.Count - 1);
    }

    private int Decide(int decision, ulong[] space, List<Entry> holding, int depth)
    {
        var term = sheet.FactCount + decision;
        if (holding.Count == 0 || holding.Any(e => e.Value != holding[0].Value))
        {
            if (faults.Count < 50) faults.Add(new(term, [.. space], holding));
            foreach (var entry in holding) fired[entry.Clause] = changes[entry.Clause] = true;
            return Codes.Table.Impossible;
        }
        foreach (var entry in holding)
        {
            fired[entry.Clause] = true;
            if (!changes[entry.Clause]) changes[entry.Clause] = Differs(entry);
        }
        (values[decision], clauses[decision]) = (holding[0].Value, holding[0].Clause);
        var narrowed = (ulong[])space.Clone();
        narrowed[term] = 1UL << holding[0].Value;
        return Next(decision + 1, narrowed, depth);
    }

    /// <summary>An exception changes something when its rule would have said otherwise, or nothing.</summary>
    private bool Differs(Entry entry)
    {
        var parent = sheet.Bound.Clauses[entry.Clause].Parent;
        if (parent < 0) return true;
        foreach (var other in sheet.Entries[entry.Decision - sheet.FactCount])
            if (other.Clause == parent) return other.Value != entry.Value;
        return true;
    }

    private int Part(int decision, ulong[] space, List<Entry> partly, List<Entry> wholly, int depth)
    {
        if (depth > 400) { left = -1; return Codes.Table.Impossible; }
        var term = MostAsked(space, partly);
        var groups = Groups(space, partly, term);
        var children = new int[groups.Count];
        for (var g = 0; g < groups.Count; g++)
        {
            var part = (ulong[])space.Clone();
            part[term] = groups[g];
            left -= space.Length / 4 + 1;
            children[g] = Split(decision, part, partly, wholly, depth + 1);
        }
        var node = walk.Count;
        walk.Add(term);
        for (var v = 0; v < sheet.Terms[term].Values.Count; v++)
        {
            var group = groups.FindIndex(g => (g >> v & 1) != 0);
            walk.Add(group < 0 ? Codes.Table.Impossible : children[group]);
        }
        return node;
    }

    private int MostAsked(ulong[] space, List<Entry> partly)
    {
        Array.Clear(asked);
        foreach (var entry in partly)
        {
            Ask(entry.Box, space);
            foreach (var hole in entry.Holes) if (hole.Meets(space) == 1) Ask(hole, space);
        }
        var best = 0;
        for (var t = 1; t < asked.Length; t++) if (asked[t] > asked[best]) best = t;
        return best;
    }

    private void Ask(Box box, ulong[] space)
    {
        for (var i = 0; i < box.Terms.Length; i++)
            if ((space[box.Terms[i]] & ~box.Masks[i]) != 0) asked[box.Terms[i]]++;
        left -= box.Terms.Length;
    }

    private static List<ulong> Groups(ulong[] space, List<Entry> partly, int term)
    {
        var groups = new List<ulong> { space[term] };
        foreach (var entry in partly)
        {
            Refine(groups, entry.Box, term);
            foreach (var hole in entry.Holes) Refine(groups, hole, term);
            if (groups.Count == BitOperations.PopCount(space[term])) break;
        }
        return groups;
    }

    private static void Refine(List<ulong> groups, Box box, int term)
    {
        var at = Array.IndexOf(box.Terms, term);
        if (at < 0) return;
        var mask = box.Masks[at];
        for (var i = groups.Count - 1; i >= 0; i--)
        {
            var (inside, outside) = (groups[i] & mask, groups[i] & ~mask);
            if (inside == 0 || outside == 0) continue;
            groups[i] = inside;
            groups.Add(outside);
        }
    }
}
