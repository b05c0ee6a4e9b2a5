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

    /// <summary>Milliseconds.</summary>
    private const int StopWithin = 50;

    /// <param name="reached">Told of each priority as soon as it is settled; a later one may still fill places besides.</param>
    public static CrewResult Find(CrewTask task, CancellationToken stop = default, Action<Stage>? reached = null)
    {
        var clock = Stopwatch.StartNew();
        var candidates = new Candidates(task);
        var model = new CrewModel(task, candidates);
        var stages = new List<Stage>();
        IReadOnlyList<Candidate> seats = [.. model.Seats.Select(s => s.Who)];
        var relaxed = Relaxation.Of(task, candidates);
        long[] least = [relaxed.Plates, relaxed.Required, relaxed.All];
        var best = stop.IsCancellationRequested ? null : Begun(task, candidates, relaxed, seats, stop);
        var stopped = false;
        var goals = CrewGoals.Of(task, relaxed, model).ToList();
        for (var i = 0; i < goals.Count && !stopped; i++)
        {
            var share = (task.Seconds - clock.Elapsed.TotalSeconds) * Shares[i];
            if (stop.IsCancellationRequested || share < 0.05) { stopped = true; break; }
            var (priority, cost) = goals[i];
            // what the flow says of all the places so far, less what is open before
            var atLeast = i < least.Length ? Math.Max(0, least[i] - stages.Sum(s => s.Value)) : 0;
            if (atLeast > 0) model.Model.Add(cost >= atLeast);
            model.Model.Minimize(cost);
            model.Model.ClearHints();
            for (var s = 0; s < model.Seats.Count; s++) model.Model.AddHint(model.Seats[s].Var, best![s]);
            var solver = new CpSolver { StringParameters = string.Create(CultureInfo.InvariantCulture, $"max_time_in_seconds:{share},num_workers:{task.Workers},random_seed:{task.Seed},linearization_level:2") };
            var began = clock.Elapsed;
            CpSolverStatus status;
            // asked again and again: a stop that comes before the solver has begun would pass it by
            using (new Timer(_ => { if (stop.IsCancellationRequested) solver.StopSearch(); }, null, StopWithin, StopWithin)) status = solver.Solve(model.Model);
            stopped = stop.IsCancellationRequested;
            // broken off, a search may hold less than it began with; once it is no longer about coverage, that is not looked at
            if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible) || (stopped && i >= least.Length)) { stopped = true; break; }
            var value = solver.Value(cost);
            bool[] found = [.. model.Seats.Select(s => solver.BooleanValue(s.Var))];
            if (i < least.Length)
            {
                // a priority is found without a look at the later ones: what still fits is filled, so that a hurried search leaves nothing open for no reason
                var (filled, before) = (new Filling(task, candidates, seats, found).Fill(), new Filling(task, candidates, seats, best));
                // of two that cover the same, the one that was there first: it keeps what is published
                best = filled.Open.IsLessThan(before.Open) ? filled.Taken : before.Taken;
                value = Math.Min(value, before.Open[i]);
            }
            else best = found;
            stages.Add(new(priority, value, Math.Clamp((long)Math.Ceiling(solver.BestObjectiveBound - 1e-6), atLeast, value), (clock.Elapsed - began).TotalSeconds));
            reached?.Invoke(stages[^1]);
            model.Model.Add(cost <= value);
        }
        if (stages.Count == 0 && best is not null) Untried(new Filling(task, candidates, seats, best).Open, relaxed, stages);
        return Told(task, model, best, stages, stopped, clock);
    }

    /// <summary>Two plans to begin with, one from the places as published, one with the flow's besides: the better.</summary>
    private static bool[] Begun(CrewTask task, Candidates candidates, Relaxation relaxed, IReadOnlyList<Candidate> seats, CancellationToken stop)
    {
        Filling New() => new Filling(task, candidates, seats).Keep();
        var (plain, flowing) = (New().Fill().Chain(stop).Fill(), New().Try(relaxed.Seats).Fill().Chain(stop).Fill().Chain(stop));
        return flowing.Open.IsLessThan(plain.Open) ? flowing.Taken : plain.Taken;
    }

    /// <summary>No time for a search: what the plan to begin with leaves open, beside what the relaxation tells.</summary>
    private static void Untried(Left open, Relaxation relaxed, List<Stage> stages)
    {
        stages.Add(new("games without an umpire", open.Plates, relaxed.Plates, 0));
        stages.Add(new("places without an umpire, played with one less", open.Bases, Math.Max(0, relaxed.Required - open.Plates), 0));
    }

    private static CrewResult Told(CrewTask task, CrewModel model, bool[]? best, List<Stage> stages, bool stopped, Stopwatch clock)
    {
        if (best is null) return new(task.Plan, [], [], Shortage.Of(task.Plan, task.Games), Recount(task.Plan, task.Games), true, clock.Elapsed.TotalSeconds);
        var plan = task.Plan.Without(task.Games).With(model.Seats.Where((_, i) => best[i]).Select(s => (s.Who.Game, s.Who.Place, s.Who.Person)));
        // the search does not judge: whatever the check refuses is opened, and nothing else hangs on it
        for (var breaches = Hard(plan, task.Games); breaches.Count > 0; breaches = Hard(plan, task.Games))
            plan = breaches.DistinctBy(b => (b.Game, b.Place)).Aggregate(plan, (p, b) => p.With(p.Game(b.Game)!, b.Place, null));
        // and what covers less than the plan that stands is no gain
        if (Left.In(task.Plan, task.Games).IsLessThan(Left.In(plan, task.Games)) && Hard(task.Plan, task.Games).Count == 0) plan = task.Plan;
        var changes = task.Games.SelectMany(g => CrewPlace.All.Select(p => (Game: g, Place: p)))
            .Select(x => new CrewChange(x.Game, x.Place, In(task.Plan, x.Game, x.Place), In(plan, x.Game, x.Place))).Where(c => c.From?.Key != c.To?.Key).ToList();
        var open = Shortage.Of(plan, task.Games);
        // what was filled besides counts, too
        var left = Left.In(plan, task.Games);
        for (var i = 0; i < Math.Min(Left.Kinds, stages.Count); i++) stages[i] = stages[i] with { Value = left[i], Bound = Math.Min(stages[i].Bound, left[i]) };
        return new(plan, stages, changes, open, Recount(plan, task.Games), stopped, clock.Elapsed.TotalSeconds);
    }

    private static CrewPerson? In(CrewPlan plan, CrewGame game, string place) => plan.CrewOf(game).FirstOrDefault(s => s.Place == place)?.Person;

    private static IReadOnlyList<Breach> Recount(CrewPlan plan, IReadOnlyList<CrewGame> games) => [.. games.SelectMany(plan.CrewOf).SelectMany(s => CrewCheck.Of(plan, s))];

    private static List<Breach> Hard(CrewPlan plan, IReadOnlyList<CrewGame> games) => [.. Recount(plan, games).Where(b => b.Hold != Hold.Wish)];
}
