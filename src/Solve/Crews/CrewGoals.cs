using Google.OrTools.Sat;
using Umpirage.District.Crews;
using Umpirage.District.Crews.Constraints;
using Umpirage.District.People;

namespace Umpirage.Solve.Crews;

/// <summary>Something to be made small.</summary>
internal sealed record Part(string Priority, LinearExpr Cost);

/// <summary>The stated priorities, each as a number to be made small, in the order in which they count. Safety is none of them: it never bends.</summary>
internal static class CrewGoals
{
    /// <summary>Metres that a broken wish weighs as much as (our own choice).</summary>
    private const int WishMetres = 5000;

    public static IEnumerable<Part> Of(CrewTask task, Relaxation relaxed, CrewModel model)
    {
        // when short, the youth base goes first, then the second umpire; a game without any comes last.
        // greatest flows over hours, grades and offers bound what any plan can fill: told to the search, it need not prove that again
        var (plate, bases, youth) = (Open(task, model, p => p == CrewPlace.Plate), Open(task, model, p => p != CrewPlace.Plate && CrewPlace.IsRequired(p)), Open(task, model, p => !CrewPlace.IsRequired(p)));
        yield return new("games without an umpire", LinearExpr.Sum(plate));
        model.Model.Add(LinearExpr.Sum(plate.Concat(bases)) >= relaxed.Required);
        model.Model.Add(LinearExpr.Sum(plate.Concat(bases).Concat(youth)) >= relaxed.All);
        yield return new("places without an umpire, played with one less", LinearExpr.Sum(bases));
        yield return new("youth bases dropped", LinearExpr.Sum(youth));
        yield return new("changes to what is published", Changes(task, model));
        yield return new("unfairness over the season", Unfairness(task, model));
        yield return new("trainees without a mentor", Alone(task, model));
        yield return new("metres to travel, and wishes", Metres(model));
    }

    private static List<BoolVar> Open(CrewTask task, CrewModel model, Func<string, bool> place) =>
        [.. task.Games.SelectMany(g => CrewPlace.Of(g.Division).Where(place).Select(p => model.Holes[(g.Key, p)]))];

    private static LinearExpr Changes(CrewTask task, CrewModel model)
    {
        var kept = new List<ILiteral>();
        foreach (var seat in task.Games.SelectMany(task.Standing.CrewOf))
        {
            var same = model.At(seat.Game.Key, seat.Place).Where(s => s.Who.Person.Key == seat.Person.Key).Select(s => s.Var).FirstOrDefault();
            // who may not have the place any more is a change whatever is done
            kept.Add(same is null ? model.Model.TrueLiteral() : same.Not());
        }
        return LinearExpr.Sum(kept);
    }

    /// <summary>
    /// Squares of how far each one's share of the offer, over the season so far and these games, lies from the share that all would have, in
    /// thousandths. Each further game changes the square by a known amount, and these amounts rise: the least sum takes them in their order.
    /// </summary>
    private static LinearExpr Unfairness(CrewTask task, CrewModel model)
    {
        var asked = task.Games.Select(g => g.Key).ToHashSet();
        var people = model.ByPerson.Select(own =>
        {
            var person = own.First().Who.Person;
            var before = task.Plan.Of(person).Where(s => !asked.Contains(s.Game.Key)).ToList();
            var weeks = before.Select(s => AsOffered.Monday(s.Game.Day)).Concat(task.Games.Select(g => AsOffered.Monday(g.Day))).Distinct().Count();
            return (Own: own.Select(s => s.Var).ToList(), Before: before.Count, Offer: Math.Max(0.5, person.Official!.GamesAWeek) * weeks, Most: (int)Math.Floor(person.Official!.GamesAWeek) * task.Games.Select(g => AsOffered.Monday(g.Day)).Distinct().Count());
        }).ToList();
        var (given, places) = (people.Sum(p => p.Before), Math.Min(task.Games.Sum(g => g.Division.Crew), people.Sum(p => p.Most)));
        var even = Math.Min(1, (given + places) / Math.Max(1, people.Sum(p => p.Offer)));
        var (vars, costs, fixedCost) = (new List<BoolVar>(), new List<long>(), 0L);
        foreach (var (own, before, offer, most) in people)
        {
            long Square(int games) => (long)Math.Round(1000 * Math.Pow((before + games) / offer - even, 2));
            var steps = Enumerable.Range(1, most).Select(n => (Var: model.Model.NewBoolVar($"game {n}"), Cost: Square(n) - Square(n - 1))).ToList();
            model.Model.Add(LinearExpr.Sum(own) == LinearExpr.Sum(steps.Select(s => s.Var)));
            vars.AddRange(steps.Select(s => s.Var));
            costs.AddRange(steps.Select(s => s.Cost));
            fixedCost += Square(0);
        }
        return LinearExpr.WeightedSum(vars, costs) + fixedCost;
    }

    /// <summary>A trainee on the bases learns beside a trainer or a crew chief at the plate.</summary>
    private static LinearExpr Alone(CrewTask task, CrewModel model)
    {
        var alone = new List<BoolVar>();
        foreach (var game in task.Games.Where(g => g.Division.Crew > 1))
        {
            var trainees = model.At(game.Key, CrewPlace.Base).Where(s => s.Who.Person.Official!.Grade == Grade.Trainee).Select(s => s.Var).ToList();
            if (trainees.Count == 0) continue;
            var mentors = model.At(game.Key, CrewPlace.Plate).Where(s => s.Who.Person.Official!.Grade == Grade.CrewChief || s.Who.Person.Roles.Any(r => r.Role == Role.Trainer)).Select(s => s.Var).ToList();
            var one = model.Model.NewBoolVar($"alone {game.Key}");
            model.Model.Add(LinearExpr.Sum(trainees) <= LinearExpr.Sum([one, .. mentors]));
            alone.Add(one);
        }
        return LinearExpr.Sum(alone);
    }

    private static LinearExpr Metres(CrewModel model) => LinearExpr.WeightedSum(model.Seats.Select(s => s.Var), model.Seats.Select(s =>
        (s.Who.Person.Home is { } home ? (long)(1000 * District.People.Earth.Kilometres(home.Latitude, home.Longitude, s.Who.Game.Park.Latitude, s.Who.Game.Park.Longitude)) : 0L) + s.Who.Wishes * WishMetres));
}
