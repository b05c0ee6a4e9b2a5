using System.Globalization;
using Google.OrTools.Sat;
using Umpirage.District.Crews;

namespace Umpirage.CrewsBench;

/// <summary>Two rivals that share only the list of who may have which place: greedy, hardest game first; and a plain model with pairs for conflicts and one weighted sum.</summary>
internal static class Plain
{
    public sealed record Seat(CrewGame Game, string Place, CrewPerson Person);

    public static List<Seat> Seats(CrewPlan plan)
    {
        CrewConstraint[] quick = [CrewConstraints.Named("availability"), CrewConstraints.Named("grade"), CrewConstraints.Named("certificate"), CrewConstraints.Named("interest")];
        return [.. plan.Games.SelectMany(g => CrewPlace.Of(g.Division).SelectMany(p => plan.Officials.Where(o => quick.All(c => !c.Find(plan, new(g, p, o)).Any(b => b.Hold != Hold.Wish))).Select(o => new Seat(g, p, o))))];
    }

    private static bool Clash(CrewGame a, CrewGame b)
    {
        if (a.Day != b.Day) return false;
        var (first, second) = a.Start <= b.Start ? (a, b) : (b, a);
        return (second.Start - first.End).TotalMinutes < Math.Max(second.Code.BreakMinutes, Journey.Minutes(first, second));
    }

    /// <summary>The game with the fewest candidates first, its places to whoever has the fewest games.</summary>
    public static List<Seat> Greedy(List<Seat> seats)
    {
        var given = new Dictionary<string, List<Seat>>();
        var chosen = new List<Seat>();
        foreach (var game in seats.GroupBy(s => s.Game.Key).OrderBy(g => g.Count()))
            foreach (var place in game.GroupBy(s => s.Place).OrderBy(p => p.Key == CrewPlace.Plate ? 0 : 1))
                foreach (var seat in place.OrderBy(s => given.GetValueOrDefault(s.Person.Key)?.Count ?? 0).ThenBy(s => s.Person.Key, StringComparer.Ordinal))
                {
                    if (!given.TryGetValue(seat.Person.Key, out var own)) given[seat.Person.Key] = own = [];
                    if (own.Count + 1 > seat.Person.Official!.GamesAWeek || own.Any(o => o.Game.Key == seat.Game.Key || Clash(o.Game, seat.Game))
                        || own.Count(o => o.Game.Day == seat.Game.Day) >= 3 || (seat.Place == CrewPlace.Plate && own.Count(o => o.Game.Day == seat.Game.Day && o.Place == CrewPlace.Plate) >= 2)) continue;
                    own.Add(seat);
                    chosen.Add(seat);
                    break;
                }
        return chosen;
    }

    public static (List<Seat> Chosen, double Bound) Model(List<Seat> seats, double seconds, int workers)
    {
        var model = new CpModel();
        var vars = seats.Select((_, i) => model.NewBoolVar($"x{i}")).ToList();
        var index = Enumerable.Range(0, seats.Count).ToList();
        var cost = new List<LinearExpr>();
        foreach (var place in index.GroupBy(i => (seats[i].Game.Key, seats[i].Place)))
        {
            var open = model.NewBoolVar($"o{place.Key}");
            model.AddExactlyOne([open, .. place.Select(i => vars[i])]);
            cost.Add(open * (place.Key.Place == CrewPlace.Plate ? 10000 : 1000));
        }
        foreach (var person in index.GroupBy(i => seats[i].Person.Key))
        {
            var own = person.ToList();
            var official = seats[own[0]].Person.Official!;
            model.Add(LinearExpr.Sum(own.Select(i => vars[i])) <= (int)official.GamesAWeek);
            for (var a = 0; a < own.Count; a++)
                for (var b = a + 1; b < own.Count; b++)
                    if (seats[own[a]].Game.Key == seats[own[b]].Game.Key || Clash(seats[own[a]].Game, seats[own[b]].Game)) model.AddBoolOr([vars[own[a]].Not(), vars[own[b]].Not()]);
            foreach (var day in own.GroupBy(i => seats[i].Game.Day)) model.Add(LinearExpr.Sum(day.Where(i => seats[i].Place == CrewPlace.Plate).Select(i => vars[i])) <= 2);
            // fairness: the most unused offer, in the same sum
            var unused = model.NewIntVar(0, 3, $"u{person.Key}");
            model.Add(LinearExpr.Sum(own.Select(i => vars[i])) + unused >= (int)official.GamesAWeek);
            var square = model.NewIntVar(0, 9, $"q{person.Key}");
            model.AddMultiplicationEquality(square, unused, unused);
            cost.Add(square);
        }
        model.Minimize(LinearExpr.Sum(cost));
        var solver = new CpSolver { StringParameters = string.Create(CultureInfo.InvariantCulture, $"max_time_in_seconds:{seconds},num_workers:{workers},random_seed:1") };
        var status = solver.Solve(model);
        return status is CpSolverStatus.Optimal or CpSolverStatus.Feasible ? ([.. index.Where(i => solver.BooleanValue(vars[i])).Select(i => seats[i])], solver.BestObjectiveBound) : ([], solver.BestObjectiveBound);
    }
}
