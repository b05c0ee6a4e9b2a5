using System.Diagnostics;

namespace Umpirage.Solve.Crews.Trips;

/// <summary>Two threads: one works out what spans of rounds must cost, from the end of the season backwards, the other searches the season with these bounds.</summary>
public static class TripSearch
{
    public static TripResult Find(TripTask task, double seconds, CancellationToken cancelled = default)
    {
        var clock = Stopwatch.StartNew();
        var (rounds, windows) = (task.Rounds, new Windows(task.Rounds));
        var done = false;
        bool Stop() => Volatile.Read(ref done) || cancelled.IsCancellationRequested || clock.Elapsed.TotalSeconds > seconds;
        for (var r = rounds - 2; r >= 0; r--) Solve(task, windows, r, r + 1, Stop);
        // what matchings from round to round cost: told when a span turns out to be impossible, for which there is no bound
        var floor = Math.Min(windows[0, rounds - 1], Windows.Never - 1);
        var bounds = Task.Run(() => Bounds(task, windows, Stop), CancellationToken.None);
        int[][]? found = null;
        long? cost = null;
        var season = new TripBranch(task, windows, 0, rounds - 1, visits: true, Stop) { Better = (spent, games) => (cost, found) = (spent, games) };
        var all = season.Run();
        Volatile.Write(ref done, true);
        bounds.Wait(CancellationToken.None);
        var venues = found is null ? null : found.Select(g => g.Select((game, r) => task.Home[r][game]).ToArray()).ToArray();
        var bound = all && cost is { } proven ? proven : windows[0, rounds - 1] is var told && told < Windows.Never ? told : floor;
        return new(venues, cost, bound, all ? cost is null ? "infeasible" : "optimal" : cost is null ? "unknown" : "feasible", season.Nodes, clock.Elapsed.TotalSeconds);
    }

    /// <summary>Longer and longer spans; each is solved with the bounds of the shorter ones.</summary>
    private static void Bounds(TripTask task, Windows windows, Func<bool> stop)
    {
        var solved = new HashSet<(int, int)>();
        for (var length = 2; length < task.Rounds - 1; length++)
            for (var to = task.Rounds - 1; to - length >= 0; to -= length)
                for (var from = to - 2; from >= to - length; from--)
                {
                    if (stop()) return;
                    if (solved.Add((from, to))) Solve(task, windows, from, to, stop);
                }
    }

    private static void Solve(TripTask task, Windows windows, int from, int to, Func<bool> stop)
    {
        var span = new TripBranch(task, windows, from, to, visits: false, stop);
        if (span.Run()) windows.Raise(from, to, span.Best);
    }
}
