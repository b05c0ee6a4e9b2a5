using System.Numerics;

namespace Umpirage.Rules.Codes;

/// <summary>
/// Splits the space of cases, decision by decision, until every rule either holds in the whole of a part or nowhere in it. Always splits on
/// the term that most of the undecided rules ask about, into groups of values that none of them tells apart. Works on one space and one
/// stack of entries, changed and put back: only the lines of the table are kept.
/// </summary>
internal sealed class Splitter(CodeSheet sheet, long work)
{
    // what a part and a line cost beside the comparisons they need, in steps
    private const int PerPart = 12, PerLine = 30;
    private const int Deepest = 400;

    private readonly List<Cell> cells = [];
    private readonly List<Fault> faults = [];
    private readonly bool[] fired = new bool[sheet.Bound.Clauses.Count];
    private readonly bool[] changes = new bool[sheet.Bound.Clauses.Count];
    private readonly List<int> walk = [0];
    private readonly int[] values = new int[sheet.Entries.Length];
    private readonly int[] clauses = new int[sheet.Entries.Length];
    private readonly Entry[] barred = [.. sheet.Impossible.Select(b => new Entry(-1, 0, -1, b, []))];
    private readonly int[] asked = new int[sheet.Terms.Count];
    private readonly ulong[] space = [.. sheet.Domain];
    private readonly List<Entry> open = [];
    private readonly List<Entry> holding = [];
    private readonly long allowed = work;
    private long left = work;

    public Table Table()
    {
        walk[0] = sheet.Domain.Any(d => d == 0) ? Codes.Table.Impossible : Begin(-1, barred, 0);
        return new()
        {
            Sheet = sheet, Cells = cells, Faults = faults, Fired = fired, Changes = changes, TooEntangled = left < 0, Work = allowed - left, Walk = [.. walk],
        };
    }

    /// <summary>Begins one decision (-1: which cases are possible at all) in the present space. Returns the node.</summary>
    private int Begin(int decision, Entry[] entries, int depth)
    {
        var (from, held) = (open.Count, holding.Count);
        open.AddRange(entries);
        var node = Split(decision, from, open.Count, held, depth);
        open.RemoveRange(from, open.Count - from);
        holding.RemoveRange(held, holding.Count - held);
        return node;
    }

    /// <summary>Sorts the open entries into those that hold here wholly, in part, or not; then splits, decides, or goes on.</summary>
    private int Split(int decision, int from, int to, int held, int depth)
    {
        if (left < 0) return Codes.Table.Impossible;
        left -= PerPart;
        var (partly, whole) = (open.Count, holding.Count);
        for (var i = from; i < to; i++)
        {
            var entry = open[i];
            left -= entry.Box.Terms.Length + entry.Holes.Length + 1;
            var meets = entry.Meets(space);
            if (meets == 1) open.Add(entry);
            else if (meets == 2) holding.Add(entry);
        }
        int node;
        if (decision < 0 && holding.Count > held) node = Codes.Table.Impossible;
        else if (open.Count > partly) node = Part(decision, partly, open.Count, held, depth);
        else node = decision < 0 ? Next(0, depth) : Decide(decision, held, depth);
        open.RemoveRange(partly, open.Count - partly);
        holding.RemoveRange(whole, holding.Count - whole);
        return node;
    }

    private int Next(int decision, int depth)
    {
        if (decision < sheet.Entries.Length) return Begin(decision, sheet.Entries[decision], depth);
        var last = cells.Count > 0 ? cells[^1] : null;
        var same = last is not null && values.AsSpan().SequenceEqual(last.Values) && clauses.AsSpan().SequenceEqual(last.Clauses);
        cells.Add(same ? new(space[..sheet.FactCount], last!.Values, last.Clauses) : new(space[..sheet.FactCount], [.. values], [.. clauses]));
        left -= PerLine;
        return ~(cells.Count - 1);
    }

    private int Decide(int decision, int held, int depth)
    {
        var term = sheet.FactCount + decision;
        var agree = holding.Count > held;
        for (var i = held + 1; i < holding.Count && agree; i++) agree = holding[i].Value == holding[held].Value;
        if (!agree)
        {
            if (faults.Count < 50) faults.Add(new(term, [.. space], holding[held..]));
            for (var i = held; i < holding.Count; i++) fired[holding[i].Clause] = changes[holding[i].Clause] = true;
            return Codes.Table.Impossible;
        }
        for (var i = held; i < holding.Count; i++)
        {
            var entry = holding[i];
            fired[entry.Clause] = true;
            if (!changes[entry.Clause]) changes[entry.Clause] = Differs(entry);
        }
        (values[decision], clauses[decision]) = (holding[held].Value, holding[held].Clause);
        var kept = space[term];
        space[term] = 1UL << holding[held].Value;
        var node = Next(decision + 1, depth);
        space[term] = kept;
        return node;
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

    private int Part(int decision, int from, int to, int held, int depth)
    {
        if (depth > Deepest) { left = -1; return Codes.Table.Impossible; }
        var term = MostAsked(from, to);
        Span<ulong> groups = stackalloc ulong[64];
        Span<int> children = stackalloc int[64];
        var count = Groups(from, to, term, groups);
        var kept = space[term];
        for (var g = 0; g < count; g++)
        {
            space[term] = groups[g];
            children[g] = Split(decision, from, to, held, depth + 1);
        }
        space[term] = kept;
        var node = walk.Count;
        walk.Add(term);
        for (var v = 0; v < sheet.Terms[term].Values.Count; v++)
        {
            var child = Codes.Table.Impossible;
            for (var g = 0; g < count; g++) if ((groups[g] >> v & 1) != 0) child = children[g];
            walk.Add(child);
        }
        return node;
    }

    private int MostAsked(int from, int to)
    {
        Array.Clear(asked);
        for (var i = from; i < to; i++)
        {
            Ask(open[i].Box);
            foreach (var hole in open[i].Holes) if (hole.Meets(space) == 1) Ask(hole);
        }
        var best = 0;
        for (var t = 1; t < asked.Length; t++) if (asked[t] > asked[best]) best = t;
        return best;
    }

    private void Ask(Box box)
    {
        for (var i = 0; i < box.Terms.Length; i++)
            if ((space[box.Terms[i]] & ~box.Masks[i]) != 0) asked[box.Terms[i]]++;
        left -= box.Terms.Length;
    }

    private int Groups(int from, int to, int term, Span<ulong> groups)
    {
        var (count, most) = (1, BitOperations.PopCount(space[term]));
        groups[0] = space[term];
        for (var i = from; i < to && count < most; i++)
        {
            Refine(groups, ref count, open[i].Box, term);
            foreach (var hole in open[i].Holes) Refine(groups, ref count, hole, term);
        }
        return count;
    }

    private static void Refine(Span<ulong> groups, ref int count, Box box, int term)
    {
        var at = Array.IndexOf(box.Terms, term);
        if (at < 0) return;
        var mask = box.Masks[at];
        for (var i = count - 1; i >= 0; i--)
        {
            var (inside, outside) = (groups[i] & mask, groups[i] & ~mask);
            if (inside == 0 || outside == 0) continue;
            groups[i] = inside;
            groups[count++] = outside;
        }
    }
}
