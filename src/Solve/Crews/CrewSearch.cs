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
    /// <summary>How much of the time that is left each priority may take; what is proven early leaves its time to the others.</summary>
    private static readonly double[] Shares = [0.4, 0.45, 0.3, 0.25, 0.45, 0.4, 1];

    /// <param name="reached">Told of each priority as soon as it is settled; a later one may still fill places besides.</param>
    public static CrewResult Find(CrewTask task, CancellationToken stop = default, Action<Stage>? reached = null)
    {
        var clock = Stopwatch.StartNew();
        var candidates = new Candidates(task);
        var model = new CrewModel(task, candidates);
        var stages = new List<Stage>();
        IReadOnlyList<Candidate> seats = [.. model.Seats.Select(s => s.Who)];
        var best = stop.IsCancellationRequested ? null : new Filling(task, candidates, seats).Keep().Fill().Chain(stop).Fill().Taken;
        var stopped = false;
        var goals = CrewGoals.Of(task, candidates, model).ToList();
        for (var i = 0; i < goals.Count && !stopped; i++)
        {
            var share = (task.Seconds - clock.Elapsed.TotalSeconds) * Shares[i];
            if (stop.IsCancellationRequested || share < 0.05) { stopped = true; break; }
            var (priority, cost, least) = goals[i];
            if (least > 0) model.Model.Add(cost >= least);
            model.Model.Minimize(cost);
            model.Model.ClearHints();
            for (var s = 0; s < model.Seats.Count; s++) model.Model.AddHint(model.Seats[s].Var, best![s]);
            var solver = new CpSolver { StringParameters = string.Create(CultureInfo.InvariantCulture, $"max_time_in_seconds:{share},num_workers:{task.Workers},random_seed:{task.Seed},linearization_level:2") };
            var began = clock.Elapsed;
            CpSolverStatus status;
            using (stop.Register(solver.StopSearch)) status = solver.Solve(model.Model);
            if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible)) { stopped = true; break; }
            best = [.. model.Seats.Select(s => solver.BooleanValue(s.Var))];
            // while it is about coverage, a priority is found without a look at the later ones: what still fits is filled, so that a hurried search leaves nothing open for no reason
            if (i < 2) best = new Filling(task, candidates, seats, best).Fill().Taken;
            var value = solver.Value(cost);
            stages.Add(new(priority, value, Math.Clamp((long)Math.Ceiling(solver.BestObjectiveBound - 1e-6), least, value), (clock.Elapsed - began).TotalSeconds));
            model.Model.Add(cost <= value);
            reached?.Invoke(stages[^1]);
            stopped = stop.IsCancellationRequested;
        }
        if (stages.Count == 0 && best is not null) Untried(task, model, best, goals[0].Least, stages);
        return Told(task, model, best, stages, stopped, clock);
    }

    /// <summary>No time for a search: what the plan to begin with leaves open, beside what the relaxation tells.</summary>
    private static void Untried(CrewTask task, CrewModel model, bool[] best, long least, List<Stage> stages)
    {
        var filled = model.Seats.Where((_, i) => best[i]).Select(s => (s.Who.Game.Key, s.Who.Place)).ToHashSet();
        long Open(Func<string, bool> which) => task.Games.Sum(g => CrewPlace.Of(g.Division).Count(p => which(p) && !filled.Contains((g.Key, p))));
        stages.Add(new("games without an umpire", Open(p => p == CrewPlace.Plate), least, 0));
        stages.Add(new("places without an umpire, played with one less", Open(p => p != CrewPlace.Plate && CrewPlace.IsRequired(p)), 0, 0));
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
        var open = Shortage.Of(plan, task.Games);
        // what was filled besides counts, too
        int[] left = [open.Count(o => o.Place == CrewPlace.Plate), open.Count(o => o.Place != CrewPlace.Plate && CrewPlace.IsRequired(o.Place)), open.Count(o => !CrewPlace.IsRequired(o.Place))];
        for (var i = 0; i < Math.Min(left.Length, stages.Count); i++) stages[i] = stages[i] with { Value = left[i], Bound = Math.Min(stages[i].Bound, left[i]) };
        return new(plan, stages, changes, open, Recount(plan, task.Games), stopped, clock.Elapsed.TotalSeconds);
    }

    private static CrewPerson? In(CrewPlan plan, CrewGame game, string place) => plan.CrewOf(game).FirstOrDefault(s => s.Place == place)?.Person;

    private static IReadOnlyList<Breach> Recount(CrewPlan plan, IReadOnlyList<CrewGame> games) => [.. games.SelectMany(plan.CrewOf).SelectMany(s => CrewCheck.Of(plan, s))];

    private static List<Breach> Hard(CrewPlan plan, IReadOnlyList<CrewGame> games) => [.. Recount(plan, games).Where(b => b.Hold != Hold.Wish)];
}
