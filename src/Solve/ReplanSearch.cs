using System.Diagnostics;
using Google.OrTools.Sat;
using Umpirage.District.Calendar;

namespace Umpirage.Solve;

/// <summary>One search: every game that must move, and some that may, each in one of its places or, if it must move, in none.</summary>
internal sealed class ReplanSearch(Replanning asked, IReadOnlyList<ScheduledGame> others, Effort effort, Stopwatch watch, CancellationToken stop)
{
    private readonly CpModel model = new();
    private readonly List<(Placement Place, BoolVar Chosen)> choices = [];
    private readonly Dictionary<string, List<int>> ofGame = [];
    private readonly Dictionary<string, BoolVar> nowhere = [];
    private readonly Dictionary<string, NoPlace> against = [];
    private readonly HashSet<string> mustMove = [.. asked.MustMove.Select(g => g.Key)];
    private Schedule without = asked.Schedule;
    private long perMove, perNowhere;
    private int rounds;

    public Replan Run()
    {
        without = asked.Schedule.Without(mustMove.Concat(others.Select(g => g.Key)).ToHashSet());
        foreach (var game in asked.MustMove) Add(game, stays: false);
        foreach (var game in others) Add(game, stays: true);
        OneGameAtATime();
        OneTeamAtATime();
        Weigh();
        var plan = Greedy();
        Hint(plan);
        var (atLeast, proven) = (0, false);
        while (!stop.IsCancellationRequested && effort.Seconds - watch.Elapsed.TotalSeconds > 0.05)
        {
            var solver = new CpSolver { StringParameters = effort.Settings(effort.Seconds - watch.Elapsed.TotalSeconds) };
            using var stopping = stop.Register(solver.StopSearch);
            var status = solver.Solve(model);
            if (status is not (CpSolverStatus.Optimal or CpSolverStatus.Feasible)) break;
            rounds++;
            List<Placement> found = [.. choices.Where(c => solver.BooleanValue(c.Chosen)).Select(c => c.Place)];
            atLeast = Math.Max(atLeast, AtLeast(solver, found));
            var wrong = asked.NewlyBroken(without.With([.. found.Select(p => p.Game)]));
            if (wrong.Count == 0)
            {
                (plan, proven) = (found, status == CpSolverStatus.Optimal);
                break;
            }
            if (!wrong.All(v => Forbid(v, found))) break;
        }
        return Told(plan, atLeast, proven);
    }

    private void Add(ScheduledGame game, bool stays)
    {
        var (places, why) = asked.Places(without, game);
        against[game.Key] = why;
        ofGame[game.Key] = [];
        foreach (var place in stays ? places.Prepend(Replanning.Stays(game)) : places)
        {
            ofGame[game.Key].Add(choices.Count);
            choices.Add((place, model.NewBoolVar($"{game.Key}@{place.Game.Diamond}@{place.Game.Start:MMddHHmm}")));
        }
        var all = ofGame[game.Key].Select(c => (ILiteral)choices[c].Chosen).ToList();
        if (!stays) all.Add(nowhere[game.Key] = model.NewBoolVar($"{game.Key} nowhere"));
        model.AddExactlyOne(all);
    }

    /// <summary>At each start on a diamond at most one of the games that would be under way.</summary>
    private void OneGameAtATime()
    {
        foreach (var diamond in choices.GroupBy(c => (c.Place.Game.Diamond, c.Place.Game.Day)))
        {
            var there = diamond.Select(c => (c.Chosen, c.Place.Game.Start, End: without.End(c.Place.Game))).ToList();
            foreach (var start in there.Select(t => t.Start).Distinct())
                if (there.Where(t => t.Start <= start && start < t.End).Select(t => (ILiteral)t.Chosen).ToList() is { Count: > 1 } together) model.AddAtMostOne(together);
        }
    }

    /// <summary>Two games of one team on one day: the checker says of each pair of places whether they go together.</summary>
    private void OneTeamAtATime()
    {
        List<ScheduledGame> all = [.. asked.MustMove, .. others];
        for (var i = 0; i < all.Count; i++)
            for (var k = i + 1; k < all.Count; k++)
            {
                if (!all[i].Has(all[k].Home) && !all[i].Has(all[k].Visitor)) continue;
                var second = ofGame[all[k].Key].ToLookup(c => choices[c].Place.Game.Day);
                foreach (var a in ofGame[all[i].Key])
                    foreach (var b in second[choices[a].Place.Game.Day])
                        if (asked.NewlyBroken(new(without.Surroundings, [choices[a].Place.Game, choices[b].Place.Game])).Any(v => v.About.Count > 1))
                            model.AddBoolOr([choices[a].Chosen.Not(), choices[b].Chosen.Not()]);
            }
    }

    /// <summary>Each aim weighs more than all the later ones together.</summary>
    private void Weigh()
    {
        var games = ofGame.Values.Where(v => v.Count > 0).ToList();
        long parks = games.Count, late = games.Count * (parks + 1), shorts = games.Sum(g => g.Max(c => choices[c].Place.TeamsShort)) * (late + parks + 1);
        var perDay = shorts + late + parks + 1;
        var days = games.Sum(g => (long)g.Max(c => choices[c].Place.DaysLate)) * perDay;
        perMove = days + perDay;
        perNowhere = perMove * (ofGame.Count + 1);
        var terms = new List<LinearExpr>();
        foreach (var (place, chosen) in choices)
        {
            var moved = asked.Schedule.Game(place.Game.Key) != place.Game ? perMove : 0;
            var weight = moved + place.DaysLate * perDay + place.TeamsShort * (late + parks + 1) + (place.LateForTheYoung ? parks + 1 : 0) + (place.OtherPark ? 1 : 0);
            if (weight > 0) terms.Add(LinearExpr.Term(chosen, weight));
        }
        terms.AddRange(nowhere.Values.Select(n => LinearExpr.Term(n, perNowhere)));
        model.Minimize(LinearExpr.Sum(terms));
    }

    /// <summary>The fewest moves that the solver's bound on the whole aim leaves to plans that place as many games as this one.</summary>
    private int AtLeast(CpSolver solver, List<Placement> found)
    {
        var nowhereNow = mustMove.Count - found.Count(p => mustMove.Contains(p.Game.Key));
        return (int)Math.Max(0, Math.Ceiling((solver.BestObjectiveBound - nowhereNow * (double)perNowhere - (perMove - 1)) / perMove));
    }

    /// <summary>Each game in its best place in turn, as long as the checker finds nothing wrong: a first good plan.</summary>
    private List<Placement> Greedy()
    {
        var plan = others.Select(Replanning.Stays).ToList();
        var schedule = without.With([.. plan.Select(p => p.Game)]);
        foreach (var game in asked.MustMove.OrderBy(g => ofGame[g.Key].Count).ThenBy(g => g.Key, StringComparer.Ordinal))
            foreach (var place in ofGame[game.Key].Select(c => choices[c].Place).OrderBy(p => p.DaysLate).ThenBy(p => p.TeamsShort).ThenBy(p => p.LateForTheYoung).ThenBy(p => p.OtherPark))
                if (!Checking.Of(schedule, place.Game).Any(v => v.Hard))
                {
                    plan.Add(place);
                    schedule = schedule.With(place.Game);
                    break;
                }
        return asked.NewlyBroken(schedule).Count == 0 ? plan : [.. others.Select(Replanning.Stays)];
    }

    private void Hint(List<Placement> plan)
    {
        var chosen = plan.Select(p => p.Game).ToHashSet();
        foreach (var (place, literal) in choices) model.AddHint(literal, chosen.Contains(place.Game));
    }

    /// <summary>Not all of the places again that break something together; false when none of the plan's games is in it.</summary>
    private bool Forbid(Violation wrong, List<Placement> found)
    {
        var games = wrong.About.Select(g => g.Key).ToHashSet();
        var chosen = found.Select(p => p.Game).ToHashSet();
        var together = choices.Where(c => games.Contains(c.Place.Game.Key) && chosen.Contains(c.Place.Game)).Select(c => c.Chosen.Not()).ToList();
        if (together.Count > 0) model.AddBoolOr(together);
        return together.Count > 0;
    }

    private Replan Told(List<Placement> plan, int atLeast, bool proven)
    {
        var moves = plan.Where(p => asked.Schedule.Game(p.Game.Key) != p.Game).Select(asked.As).OrderBy(m => m.To.Start).ThenBy(m => m.To.Key, StringComparer.Ordinal).ToList();
        var placed = plan.Select(p => p.Game.Key).ToHashSet();
        List<NoPlace> none = [.. asked.MustMove.Where(g => !placed.Contains(g.Key)).Select(g => against[g.Key])];
        // whatever was searched for: a game that had to move has moved
        var had = moves.Count(m => m.RainedOut);
        var wishes = Checking.Of(without.With([.. plan.Select(p => p.Game)])).Where(v => !v.Hard && moves.Any(m => v.Names(m.To.Key))).ToList();
        return new(moves, none, Math.Max(had, Math.Min(atLeast, moves.Count)), proven, others.Count, rounds, wishes, watch.Elapsed);
    }
}
