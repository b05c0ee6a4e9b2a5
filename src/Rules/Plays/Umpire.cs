using Umpirage.Rules.Codes;

namespace Umpirage.Rules.Plays;

/// <summary>Rules a situation: the verb of this room.</summary>
public static class Umpire
{
    /// <summary>The ruling, or the rulings still possible when facts are missing. More facts never add a ruling.</summary>
    public static Ruling Rule(Table table, Situation situation)
    {
        var sheet = table.Sheet;
        var lines = Lines(table, situation).ToList();
        if (lines.Count == 0) return new(situation, table, [], WhyImpossible(sheet, situation));
        var decided = new List<Decided>(sheet.Entries.Length);
        foreach (var term in sheet.Bound.Decisions)
        {
            var d = term.Index - sheet.FactCount;
            var possible = 0UL;
            var times = new int[sheet.Bound.Clauses.Count];
            foreach (var line in lines)
            {
                possible |= 1UL << line.Values[d];
                Deciding(sheet, situation, line, d, times);
            }
            List<string> values = [];
            for (var v = 0; v < term.Values.Count; v++) if ((possible >> v & 1) != 0) values.Add(term.Values[v]);
            // where rules agree, the one that decides in most of what is still open comes first: its conditions were said
            List<BoundClause> clauses = [.. sheet.Bound.Clauses.Where(c => times[c.Index] > 0)];
            clauses.Sort((a, b) => times[b.Index] != times[a.Index] ? times[b.Index] - times[a.Index] : a.Index - b.Index);
            decided.Add(new(term, values, clauses));
        }
        return new(situation, table, decided, []);
    }

    /// <summary>The lines of the table that fit what is known.</summary>
    public static IEnumerable<Cell> Lines(Table table, Situation situation)
    {
        var known = situation.Known;
        var facts = table.Sheet.FactCount;
        foreach (var cell in table.Cells)
        {
            var fits = true;
            for (var t = 0; t < facts && fits; t++) fits = (cell.Facts[t] & known[t]) != 0;
            for (var d = 0; d < cell.Values.Length && fits; d++) fits = (known[facts + d] >> cell.Values[d] & 1) != 0;
            if (fits) yield return cell;
        }
    }

    /// <summary>Counts every clause that gives the decision its value in this line: two rules may agree.</summary>
    private static void Deciding(CodeSheet sheet, Situation situation, Cell cell, int decision, int[] times)
    {
        var space = new ulong[sheet.Terms.Count];
        for (var t = 0; t < sheet.FactCount; t++) space[t] = cell.Facts[t] & situation.Known[t];
        for (var d = 0; d < cell.Values.Length; d++) space[sheet.FactCount + d] = 1UL << cell.Values[d];
        foreach (var entry in sheet.Entries[decision])
            if (entry.Value == cell.Values[decision] && entry.Meets(space) == 2) times[entry.Clause]++;
    }

    private static List<string> WhyImpossible(CodeSheet sheet, Situation situation)
    {
        var reasons = sheet.Bound.Impossible.Where(i => i.When.All(c => c.Term < 0 || (situation.Known[c.Term] & ~CodeSheet.Mask(sheet.Terms[c.Term], c, sheet.Values)) == 0))
            .Select(i => i.Clause.Title).ToList();
        if (reasons.Count == 0) reasons.Add("what was said does not fit together");
        return reasons;
    }
}
