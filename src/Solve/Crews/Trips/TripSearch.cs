using System.Diagnostics;

namespace Umpirage.Solve.Crews.Trips;

/// <summary>Two threads: one works out what spans of rounds must cost, from the end of the season backwards, while the other searches the season with these bounds; then both search.</summary>
public static class TripSearch
{
    private const double ShareOfBounds = 0.3;

    /// <summary>With more crews there are too many ways to begin for them to be listed and shared out; one thread then searches alone.</summary>
    private const int MostShared = 8;

    public static TripResult Find(TripTask task, double seconds, CancellationToken cancelled = default)
    {
        var clock = Stopwatch.StartNew();
        var (rounds, windows) = (task.Rounds, new Windows(task.Rounds));
        var done = false;
        bool Stop() => cancelled.IsCancellationRequested || clock.Elapsed.TotalSeconds > seconds;
        for (var r = rounds - 2; r >= 0; r--) Solve(task, windows, r, r + 1, Stop);
        // what matchings from round to round cost: told when a span turns out to be impossible, for which there is no bound
        var floor = Math.Min(windows[0, rounds - 1], Windows.Never - 1);
        int[][]? found = null;
        var best = Windows.Never;
        var holding = new Lock();
        void Better(int spent, int[][] games) { lock (holding) if (spent < best) { Volatile.Write(ref best, spent); found = games; } }
        TripBranch Season() => new(task, windows, 0, rounds - 1, visits: true, Stop) { Better = Better, Others = () => Volatile.Read(ref best) };
        var openings = task.Crews <= MostShared ? Season().Openings() : [];
        var (next, all, nodes) = (-1, true, 0L);
        void Work()
        {
            var branch = Season();
            if (task.Crews > MostShared && Interlocked.Increment(ref next) == 0 && !branch.Run()) Volatile.Write(ref all, false);
            for (var o = Interlocked.Increment(ref next); o < openings.Count; o = Interlocked.Increment(ref next))
            {
                if (openings[o].Cost + windows[1, rounds - 1] >= Volatile.Read(ref best)) continue;
                if (branch.Run(openings[o])) continue;
                Volatile.Write(ref all, false);
                break;
            }
            Interlocked.Add(ref nodes, branch.Nodes);
        }
        // longer spans bind better and take longer; when they have had their share of the time, their thread helps with the season
        var bounds = Task.Run(() => { Bounds(task, windows, () => Volatile.Read(ref done) || Stop() || clock.Elapsed.TotalSeconds > seconds * ShareOfBounds); Work(); }, CancellationToken.None);
        Work();
        Volatile.Write(ref done, true);
        bounds.Wait(CancellationToken.None);
        long? cost = found is null ? null : best;
        var venues = found is null ? null : found.Select(g => g.Select((game, r) => task.Home[r][game]).ToArray()).ToArray();
        var bound = all && cost is { } proven ? proven : windows[0, rounds - 1] is var told && told < Windows.Never ? told : floor;
        return new(venues, cost, bound, all ? cost is null ? "infeasible" : "optimal" : cost is null ? "unknown" : "feasible", nodes, clock.Elapsed.TotalSeconds);
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
