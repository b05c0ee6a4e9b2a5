namespace Umpirage.Solve.Crews.Trips;

/// <summary>
/// Branch and bound over a span of rounds, crew by crew in each round. On entering a round the least cost of every way to finish it is worked out
/// for every set of games left, so that a branch is cut by what this round and all later ones must cost.
/// </summary>
internal sealed class TripBranch
{
    private const int Never = Windows.Never;

    private readonly TripTask task;
    private readonly Windows windows;
    private readonly int from, to, crews, full;
    private readonly bool visits;
    private readonly Func<bool> stop;
    private readonly int[][] games;
    private readonly int[][] seen;
    private readonly ulong[] venues;
    private readonly int[][] cost, rest;
    private readonly int[][] order;
    private bool stopped;

    /// <param name="visits">Every crew has to see every venue: asked of the whole season only.</param>
    public TripBranch(TripTask task, Windows windows, int from, int to, bool visits, Func<bool> stop)
    {
        (this.task, this.windows, this.from, this.to, this.visits, this.stop) = (task, windows, from, to, visits, stop);
        crews = task.Crews;
        full = (1 << crews) - 1;
        games = [.. Enumerable.Range(0, crews).Select(_ => new int[task.Rounds])];
        seen = [.. Enumerable.Range(0, crews).Select(_ => new int[task.Teams])];
        venues = new ulong[crews];
        cost = [.. Enumerable.Range(0, task.Rounds).Select(_ => new int[crews * crews])];
        rest = [.. Enumerable.Range(0, task.Rounds).Select(r => r > from && r <= to ? new int[(crews + 1) << crews] : [])];
        order = [.. Enumerable.Range(0, task.Rounds * crews).Select(_ => new int[crews])];
    }

    public int Best { get; set; } = Never;
    public int[][]? Found { get; private set; }
    public long Nodes { get; private set; }
    public Action<int, int[][]>? Better { get; init; }
    /// <summary>A bound found by others meanwhile.</summary>
    public Func<int>? Others { get; init; }

    /// <summary>Searches everything; false when it was stopped.</summary>
    public bool Run()
    {
        // crews are alike: the first round is given out once
        for (var c = 0; c < crews; c++) Put(c, from, c);
        if (from == to) Best = 0;
        else Round(from + 1, 0);
        return !stopped;
    }


    /// <summary>Every way to give out the second round after the first, the cheapest first: they share the work.</summary>
    public IReadOnlyList<(int[] Games, int Cost)> Openings()
    {
        for (var c = 0; c < crews; c++) Put(c, from, c);
        var found = new List<(int[], int)>();
        void Next(int crew, int set, int[] chosen, int spent)
        {
            if (crew == crews) { found.Add(([.. chosen], spent)); return; }
            for (var left = full & ~set; left != 0; left &= left - 1)
            {
                var game = System.Numerics.BitOperations.TrailingZeroCount(left);
                if (!May(crew, from + 1, game)) continue;
                chosen[crew] = game;
                Next(crew + 1, set | 1 << game, chosen, spent + task.Distance[task.Home[from][crew]][task.Home[from + 1][game]]);
            }
        }
        Next(0, 0, new int[crews], 0);
        for (var c = 0; c < crews; c++) Take(c, from);
        return [.. found.OrderBy(f => f.Item2)];
    }

    /// <summary>Searches everything that begins so; false when it was stopped.</summary>
    public bool Run((int[] Games, int Cost) opening)
    {
        for (var c = 0; c < crews; c++) { Put(c, from, c); Put(c, from + 1, opening.Games[c]); }
        if (from + 1 < to) Round(from + 2, opening.Cost);
        else Told(opening.Cost);
        for (var c = 0; c < crews; c++) { Take(c, from + 1); Take(c, from); }
        return !stopped;
    }

    private void Told(int spent)
    {
        if (spent >= (Others is null ? Best : Math.Min(Best, Others()))) return;
        Best = spent;
        Found = [.. games.Select(g => g.ToArray())];
        Better?.Invoke(spent, Found);
    }

    private void Put(int crew, int round, int game)
    {
        games[crew][round] = game;
        var venue = task.Home[round][game];
        if (seen[crew][venue]++ == 0) venues[crew] |= 1UL << venue;
    }

    private void Take(int crew, int round)
    {
        var venue = task.Home[round][games[crew][round]];
        if (--seen[crew][venue] == 0) venues[crew] &= ~(1UL << venue);
    }

    private bool May(int crew, int round, int game)
    {
        var (home, away) = (task.Home[round][game], task.Away[round][game]);
        for (var r = Math.Max(from, round - task.VenueGap + 1); r < round; r++) if (task.Home[r][games[crew][r]] == home) return false;
        for (var r = Math.Max(from, round - task.TeamGap + 1); r < round; r++)
        {
            var (h, a) = (task.Home[r][games[crew][r]], task.Away[r][games[crew][r]]);
            if (h == home || h == away || a == home || a == away) return false;
        }
        if (!visits) return true;
        // what is not seen yet must fit in the rounds that are left
        var left = task.Teams - System.Numerics.BitOperations.PopCount(venues[crew] | 1UL << home);
        return left <= to - round;
    }

    private void Round(int round, int spent)
    {
        var (c, m) = (cost[round], rest[round]);
        for (var crew = 0; crew < crews; crew++)
        {
            var row = task.Distance[task.Home[round - 1][games[crew][round - 1]]];
            var any = false;
            for (var game = 0; game < crews; game++)
            {
                var may = May(crew, round, game);
                any |= may;
                c[crew * crews + game] = may ? row[task.Home[round][game]] : Never;
            }
            if (!any) return;
        }
        m[crews << crews | full] = 0;
        for (var crew = crews - 1; crew >= 0; crew--)
            for (var set = 0; set <= full; set++)
            {
                if (System.Numerics.BitOperations.PopCount((uint)set) != crew) continue;
                var least = Never;
                for (var left = full & ~set; left != 0; left &= left - 1)
                {
                    var game = System.Numerics.BitOperations.TrailingZeroCount(left);
                    var sum = c[crew * crews + game] + m[(crew + 1) << crews | set | 1 << game];
                    if (sum < least) least = sum;
                }
                m[crew << crews | set] = least;
            }
        Crew(round, 0, 0, spent);
    }

    private void Crew(int round, int crew, int set, int spent)
    {
        if (crew == crews)
        {
            if (round < to) { Round(round + 1, spent); return; }
            Told(spent);
            return;
        }
        if ((++Nodes & 0xFFF) == 0 && stop()) stopped = true;
        if (stopped) return;
        var (c, m, later) = (cost[round], rest[round], windows[round, to]);
        var limit = Others is null ? Best : Math.Min(Best, Others());
        var list = order[round * crews + crew];
        var count = 0;
        for (var left = full & ~set; left != 0; left &= left - 1)
        {
            var game = System.Numerics.BitOperations.TrailingZeroCount(left);
            var sum = c[crew * crews + game] + m[(crew + 1) << crews | set | 1 << game];
            if (sum >= Never || spent + sum + later >= limit) continue;
            // nearest first
            var at = count++;
            while (at > 0 && c[crew * crews + list[at - 1]] > c[crew * crews + game]) { list[at] = list[at - 1]; at--; }
            list[at] = game;
        }
        for (var i = 0; i < count; i++)
        {
            var game = list[i];
            limit = Others is null ? Best : Math.Min(Best, Others());
            if (spent + c[crew * crews + game] + m[(crew + 1) << crews | set | 1 << game] + windows[round, to] >= limit) continue;
            Put(crew, round, game);
            Crew(round, crew + 1, set | 1 << game, spent + c[crew * crews + game]);
            Take(crew, round);
            if (stopped) return;
        }
    }
}
