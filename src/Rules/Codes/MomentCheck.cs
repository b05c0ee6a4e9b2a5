using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>
/// Checks how facts are told by moments: every moment known and used, and no order of moments that would tell two values of one fact. Two
/// tellings exclude each other when they need alternatives of one line, or when their orders together run in a circle.
/// </summary>
internal static class MomentCheck
{
    public static void Check(Sheet sheet, List<Finding> findings)
    {
        void Fault(FindingKind kind, int line, string message) => findings.Add(new(kind, sheet.File, line, message));
        var known = sheet.Moments.SelectMany(m => m.Alternatives).ToList();
        var lineOf = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        foreach (var moments in sheet.Moments)
            foreach (var moment in moments.Alternatives)
                if (moment == "") Fault(FindingKind.BlankCell, moments.Line, "a moment is blank");
                else if (!lineOf.TryAdd(moment, moments.Line)) Fault(FindingKind.ImpossibleValue, moments.Line, $"the moment '{moment}' stands twice; the first is in line {lineOf[moment]}");
        var used = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        foreach (var fact in sheet.Facts)
        {
            foreach (var telling in fact.ToldBy)
                foreach (var moment in telling.InOrder)
                {
                    used.Add(moment);
                    if (!lineOf.ContainsKey(moment)) Fault(FindingKind.UnknownWord, telling.Line, $"there is no moment '{moment}'; {Words.Offer(moment, known)}");
                }
            for (var i = 0; i < fact.ToldBy.Count && i < 100; i++)
                for (var j = 0; j < i; j++)
                    if (fact.ToldBy[i].Value != fact.ToldBy[j].Value && Together(fact.ToldBy[i].InOrder, fact.ToldBy[j].InOrder, lineOf))
                        Fault(FindingKind.Conflict, fact.ToldBy[i].Line, $"the same moments may tell that '{fact.Name}' is {fact.ToldBy[j].Value} and is {fact.ToldBy[i].Value}; the other is in line {fact.ToldBy[j].Line}");
        }
        foreach (var moment in known.Where(m => m != "" && !used.Contains(m)))
            Fault(FindingKind.Unused, lineOf[moment], $"no fact is told by the moment '{moment}'");
    }

    /// <summary>Whether one order of moments, each happening once, could hold both patterns.</summary>
    private static bool Together(IReadOnlyList<string> a, IReadOnlyList<string> b, Dictionary<string, int> lineOf)
    {
        var moments = a.Concat(b).Distinct(StringComparer.OrdinalIgnoreCase).ToList();
        if (moments.GroupBy(m => lineOf.GetValueOrDefault(m, -1)).Any(g => g.Key >= 0 && g.Count() > 1)) return false;
        var after = new HashSet<(string, string)>();
        foreach (var order in new[] { a, b })
            for (var i = 1; i < order.Count; i++) after.Add((order[i - 1].ToLowerInvariant(), order[i].ToLowerInvariant()));
        // take away what nothing has to come before, until nothing is left (an order exists) or none can be taken (a circle)
        var left = moments.Select(m => m.ToLowerInvariant()).ToHashSet();
        while (left.Count > 0)
        {
            var free = left.FirstOrDefault(m => !after.Any(p => p.Item2 == m && left.Contains(p.Item1)));
            if (free is null) return false;
            left.Remove(free);
        }
        return true;
    }
}
