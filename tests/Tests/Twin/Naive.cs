namespace Umpirage.Tests.Twin;

/// <summary>
/// The twin of the checker: goes through every case one by one and judges each law as the guide says, with no boxes and no splitting.
/// </summary>
internal sealed class Naive(RandomSheet sheet)
{
    public enum Kind { Impossible, Ruled, Broken }

    /// <summary>What becomes of one case: each decision's value, or the fact that some decision has none or two.</summary>
    public (Kind Kind, int[] Values) Judge(int[] facts)
    {
        if (sheet.Impossible.Any(i => i.All(t => Holds(t, facts, [])))) return (Kind.Impossible, []);
        var values = new List<int>();
        for (var d = 0; d < sheet.Decisions.Count; d++)
        {
            var speaking = Enumerable.Range(0, sheet.Laws.Count).Where(l => sheet.Laws[l].Then.ContainsKey(d) && Holds(l, facts, values)).ToList();
            var left = speaking.Where(l => !speaking.Any(o => Beats(o, l))).Select(l => sheet.Laws[l].Then[d].Value).Distinct().ToList();
            if (left.Count != 1) return (Kind.Broken, []);
            values.Add(left[0]);
        }
        return (Kind.Ruled, [.. values]);
    }

    public IEnumerable<int[]> Cases()
    {
        var facts = new int[sheet.Facts.Count];
        while (true)
        {
            yield return [.. facts];
            var at = 0;
            while (at < facts.Length && ++facts[at] == sheet.Facts[at]) facts[at++] = 0;
            if (at == facts.Length) yield break;
        }
    }

    private bool Holds(int law, int[] facts, List<int> values) =>
        (sheet.Laws[law].Parent < 0 || Holds(sheet.Laws[law].Parent, facts, values)) && sheet.Laws[law].When.All(t => Holds(t, facts, values));

    private bool Holds(RandomSheet.Test test, int[] facts, List<int> values)
    {
        var value = test.Term < facts.Length ? facts[test.Term] : values[test.Term - facts.Length];
        return test.Op switch
        {
            "is" => test.Values.Contains(value), "is not" => !test.Values.Contains(value), "is before" => value < test.Values[0],
            "is after" => value > test.Values[0], "is at least" => value >= test.Values[0], _ => value <= test.Values[0],
        };
    }

    /// <summary>An exception takes its rule's place; a law that prevails, with its exceptions, takes the place of the other and of its exceptions.</summary>
    private bool Beats(int over, int under)
    {
        if (over == under) return false;
        if (sheet.Laws[over].Parent == under) return true;
        var winners = new[] { over, sheet.Laws[over].Parent }.Where(w => w >= 0);
        var beaten = new[] { under, sheet.Laws[under].Parent }.Where(b => b >= 0).ToList();
        return winners.Any(w => w != under && sheet.Laws[w].Beats.Any(b => beaten.Contains(b) && b != over));
    }
}
