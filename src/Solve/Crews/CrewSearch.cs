using System.Diagnostics;
using System.Globalization;
using Google.OrTools.Sat;
using Umpirage.District.Crews;

namespace Umpirage.Solve.Crews;

/// <summary>
/// Finds crews by the stated priorities, one after the other: what one has reached, the next may not spoil. Nothing is saved here, and every plan is
/// recounted by District's check before it is handed back; whenever the search is stopped, the last good plan stands.
/// </summary>
public static class CrewSearch
{
    public static CrewResult Find(CrewTask task, CancellationToken stop = default)
    {
        var clock = Stopwatch.StartNew();
        var candidates = new Candidates(task);
        var model = new CrewModel(task, candidates);
        // a greatest flow over hours, grades and offers bounds what any plan can fill; told to the search, it need not prove it again
        var least = task.Games.Sum(g => g.Division.Crew) - Forecast.Most(task.Plan, task.Games);
        model.Model.Add(LinearExpr.Sum(task.Games.SelectMany(g => CrewPlace.Of(g.Division).Where(CrewPlace.IsRequired).Select(p => model.Holes[(g.Key, p)]))) >= least);
        var stages = new List<Stage>();
        bool[]? best = null;
        var stopped = false;
        var goals = CrewGoals.Of(task, model).ToList();
        for (var i = 0; i < goals.Count && !stopped; i++)
        {
            var left = task.Seconds - clock.Elapsed.TotalSeconds;
            // what is left is shared out, more to the first; a stage that is proven early leaves its time to the others
            var share = i == goals.Count - 1 ? left : left * 0.4;
            if (stop.IsCancellationRequested || share < 0.05) { stopped = true; break; }
            var (priority, cost) = goals[i];
            model.Model.Minimize(cost);
            model.Model.ClearHints();
            if (best is not null) for (var s = 0; s < best.Length; s++) model.Model.AddHint(model.Seats[s].Var, best[s]);
            else Published(task, model);
            var solver = new CpSolver { StringParameters = string.Create(CultureInfo.InvariantCulture, $"max_time_in_seconds:{share},num_workers:{task.Workers},random_seed:{task.Seed},linearization_level:2") };
            var began = clock.Elapsed;
            CpSolverStatus status;
            using (stop.Register(solver.StopSearch)) status = solver.Solve(model.Model);
            if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible)) { stopped = true; break; }
            best = [.. model.Seats.Select(s => solver.BooleanValue(s.Var))];
            var (value, bound) = ((long)Math.Round(solver.ObjectiveValue), (long)Math.Ceiling(solver.BestObjectiveBound - 1e-6));
            stages.Add(new(priority, value, Math.Min(value, bound), (clock.Elapsed - began).TotalSeconds));
            model.Model.Add(cost <= value);
            stopped = stop.IsCancellationRequested;
        }
        return Told(task, model, best, stages, stopped, clock);
    }

    private static void Published(CrewTask task, CrewModel model)
    {
        var now = task.Games.SelectMany(task.Plan.CrewOf).Select(s => (s.Game.Key, s.Place, s.Person.Key)).ToHashSet();
        foreach (var (who, var) in model.Seats) model.Model.AddHint(var, now.Contains((who.Game.Key, who.Place, who.Person.Key)));
    }

    private static CrewResult Told(CrewTask task, CrewModel model, bool[]? best, List<Stage> stages, bool stopped, Stopwatch clock)
    {
        if (best is null) return new(task.Plan, [], [], Shortage.Of(task.Plan, task.Games), Recount(task.Plan, task.Games), true, clock.Elapsed.TotalSeconds);
        var plan = task.Plan.Without(task.Games).With(model.Seats.Where((_, i) => best[i]).Select(s => (s.Who.Game, s.Who.Place, s.Who.Person)));
        // the search does not judge: whatever the check refuses is opened, and nothing else hangs on it
        for (var breaches = Hard(plan, task.Games); breaches.Count > 0; breaches = Hard(plan, task.Games))
            plan = breaches.DistinctBy(b => (b.Game, b.Place)).Aggregate(plan, (p, b) => p.With(p.Game(b.Game)!, b.Place, null));
        var changes = task.Games.SelectMany(g => CrewPlace.All.Select(p => (Game: g, Place: p)))
            .Select(x => new CrewChange(x.Game, x.Place, In(task.Plan, x.Game, x.Place), In(plan, x.Game, x.Place))).Where(c => c.From?.Key != c.To?.Key).ToList();
        return new(plan, stages, changes, Shortage.Of(plan, task.Games), Recount(plan, task.Games), stopped, clock.Elapsed.TotalSeconds);
    }

    private static CrewPerson? In(CrewPlan plan, CrewGame game, string place) => plan.CrewOf(game).FirstOrDefault(s => s.Place == place)?.Person;

    private static IReadOnlyList<Breach> Recount(CrewPlan plan, IReadOnlyList<CrewGame> games) => [.. games.SelectMany(plan.CrewOf).SelectMany(s => CrewCheck.Of(plan, s))];

    private static List<Breach> Hard(CrewPlan plan, IReadOnlyList<CrewGame> games) => [.. Recount(plan, games).Where(b => b.Hold != Hold.Wish)];
}
