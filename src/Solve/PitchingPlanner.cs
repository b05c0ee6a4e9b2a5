using System.Diagnostics;
using Google.OrTools.Sat;
using Umpirage.District.Pitchers;

namespace Umpirage.Solve;

/// <summary>
/// Finds who pitches how much in a team's coming games. Aims, in this order: certain games covered, likely games covered, few loads near a limit or
/// a step of rest, the heaviest total small, few appearances. It chooses among ways that District has ruled to be allowed.
/// </summary>
public static class PitchingPlanner
{
    /// <summary>An inning is taken to cost so many pitches (common practice, no source).</summary>
    public const int PitchesAnInning = 15;

    /// <summary>Steps tried in turn, finest first, in pitches; innings and outs go by whole innings.</summary>
    private static readonly int[] Steps = [5, 10, 15, 30];

    /// <param name="games">In the order of play. InvalidDataException when there are more than can be looked at.</param>
    public static PitchingPlan Plan(string team, IReadOnlyList<Starter> pitchers, IReadOnlyList<ComingGame> games, Effort effort, int pitchesAnInning = PitchesAnInning, CancellationToken stop = default)
    {
        var watch = Stopwatch.StartNew();
        if (games.Count == 0) return new(team, Unit.Pitches, 1, [], true, watch.Elapsed);
        var unit = Itineraries.UnitOf(games[0].Code);
        foreach (var step in unit switch { Unit.Pitches => Steps, Unit.Outs => [3], _ => [1] })
        {
            var ways = new Itineraries(games, team, unit, pitchesAnInning, step);
            var all = new List<(Starter Pitcher, IReadOnlyList<Itinerary> Ways)>();
            foreach (var pitcher in pitchers)
                if (ways.Of(pitcher) is { } own) all.Add((pitcher, own)); else break;
            if (all.Count == pitchers.Count) return Choose(team, unit, step, ways, all, games, effort, watch, stop);
        }
        throw new InvalidDataException($"{games.Count} games are more than can be planned at once; name fewer days");
    }

    private static PitchingPlan Choose(
        string team, Unit unit, int step, Itineraries ways, List<(Starter Pitcher, IReadOnlyList<Itinerary> Ways)> all, IReadOnlyList<ComingGame> games, Effort effort, Stopwatch watch, CancellationToken stop)
    {
        var model = new CpModel();
        var chosen = all.Select(p => p.Ways.Select((_, w) => model.NewBoolVar($"{p.Pitcher.Ledger.Player} {w}")).ToArray()).ToList();
        foreach (var own in chosen) model.AddExactlyOne(own);
        var most = all.Max(p => p.Ways.Max(w => w.Amounts.Sum()));
        var heaviest = model.NewIntVar(0, most, "heaviest");
        List<LinearExpr> aims = [];
        // each weight is larger than all that is less important can come to: certain games, likely ones, edges, the heaviest load, appearances, and nobody throws for nothing
        long appearance = (long)all.Count * most + 1, load = appearance * (all.Count * games.Count + 1), edge = load * (most + 1), likely = edge * (all.Count * games.Count + 1), certain = likely * (games.Sum(ways.Demand) + 1);
        for (var g = 0; g < games.Count; g++)
        {
            var missing = model.NewIntVar(0, ways.Demand(games[g]), $"missing {g}");
            var loads = new List<LinearExpr> { missing };
            for (var p = 0; p < all.Count; p++)
                for (var w = 0; w < chosen[p].Length; w++)
                    if (all[p].Ways[w].Amounts[g] is > 0 and var amount) loads.Add(LinearExpr.Term(chosen[p][w], amount));
            model.Add(LinearExpr.Sum(loads) >= ways.Demand(games[g]));
            aims.Add(LinearExpr.Term(missing, games[g].Certain ? certain : likely));
        }
        for (var p = 0; p < all.Count; p++)
        {
            model.Add(LinearExpr.WeightedSum(chosen[p], all[p].Ways.Select(w => (long)w.Amounts.Sum()).ToArray()) <= heaviest);
            aims.Add(LinearExpr.WeightedSum(chosen[p], all[p].Ways.Select(w => w.Edges.Count(e => e is not null) * edge + w.Amounts.Count(a => a > 0) * appearance + w.Amounts.Sum()).ToArray()));
        }
        aims.Add(LinearExpr.Term(heaviest, load));
        model.Minimize(LinearExpr.Sum(aims));
        // nobody pitching is a plan, too, and the first: the last one there is stands
        for (var p = 0; p < all.Count; p++) for (var w = 0; w < chosen[p].Length; w++) model.AddHint(chosen[p][w], w == 0);
        // so many alike columns are sooner searched than simplified
        var solver = new CpSolver { StringParameters = effort.Settings(effort.Seconds - watch.Elapsed.TotalSeconds) + " cp_model_presolve:false" };
        using var stopping = stop.Register(solver.StopSearch);
        var status = solver.Solve(model);
        var found = status is CpSolverStatus.Optimal or CpSolverStatus.Feasible;
        List<(Starter Pitcher, Itinerary Way)> plan = [.. all.Select((p, i) => (p.Pitcher, found ? p.Ways[Array.FindIndex(chosen[i], solver.BooleanValue)] : p.Ways[0]))];
        return new(team, unit, step, [.. games.Select((g, i) => Told(ways, games, plan, i))], status == CpSolverStatus.Optimal, watch.Elapsed);
    }

    private static GamePlan Told(Itineraries ways, IReadOnlyList<ComingGame> games, List<(Starter Pitcher, Itinerary Way)> plan, int at)
    {
        List<PlannedLoad> loads = [.. plan.Where(p => p.Way.Amounts[at] > 0).Select(p => new PlannedLoad(p.Way.Player, p.Way.Amounts[at], p.Way.Edges[at])).OrderByDescending(l => l.Amount).ThenBy(l => l.Player, StringComparer.Ordinal)];
        var out_ = new List<(string, string)>();
        foreach (var (pitcher, way) in plan.Where(p => p.Way.Amounts[at] == 0))
        {
            var ledger = pitcher.Ledger;
            for (var g = 0; g < at; g++) if (way.Amounts[g] > 0) ledger = ways.With(ledger, games[g], way.Amounts[g]);
            var bars = Itineraries.Bars(ledger, pitcher, games[at]);
            out_.Add((way.Player, bars.Count > 0 ? string.Join("; ", bars.Select(b => b.InWords)) : "may pitch, and is kept for other games"));
        }
        return new(games[at], ways.Demand(games[at]), loads, out_);
    }
}
