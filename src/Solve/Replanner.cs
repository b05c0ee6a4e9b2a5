using System.Diagnostics;
using Umpirage.District.Calendar;

namespace Umpirage.Solve;

/// <summary>
/// Finds new places for games that have to move. Aims, in this order: as many games placed as can be, as few others moved as can be, days late,
/// teams with too few pitchers, late starts of the young under lights, other parks. It only finds: the checker of District judges every plan.
/// </summary>
public static class Replanner
{
    /// <summary>A plan that breaks nothing new. When it is stopped, the last good plan stands.</summary>
    public static Replan Plan(Replanning asked, Effort effort, CancellationToken stop = default)
    {
        var watch = Stopwatch.StartNew();
        var first = new ReplanSearch(asked, [], effort, watch, stop).Run();
        if (first.Without.Count == 0 || stop.IsCancellationRequested) return first;
        // only now are games looked at that could stay where they are
        var others = asked.InTheWay(first.Without.Select(w => w.Game));
        if (others.Count == 0 || watch.Elapsed.TotalSeconds >= effort.Seconds) return first;
        var second = new ReplanSearch(asked, others, effort, watch, stop).Run();
        return second.Without.Count < first.Without.Count ? second with { Rounds = first.Rounds + second.Rounds } : first with { LookedAt = others.Count, Took = watch.Elapsed };
    }
}
