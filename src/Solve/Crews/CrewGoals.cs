using Google.OrTools.Sat;
using Umpirage.District.Crews;
using Umpirage.District.People;

namespace Umpirage.Solve.Crews;

/// <summary>The stated priorities, each as a number to be made small, in the order in which they count. Safety is none of them: it never bends.</summary>
internal static class CrewGoals
{
    /// <summary>Metres that a broken wish weighs as much as (our own choice).</summary>
    private const int WishMetres = 5000;

    public static IEnumerable<(string Priority, LinearExpr Cost)> Of(CrewTask task, CrewModel model)
    {
        // when short, the youth base goes first, then the second umpire; a game without any comes last
        yield return ("games without an umpire", LinearExpr.Sum(Open(task, model, p => p == CrewPlace.Plate)));
        yield return ("places without an umpire, played with one less", LinearExpr.Sum(Open(task, model, p => p != CrewPlace.Plate && CrewPlace.IsRequired(p))));
        yield return ("youth bases dropped", LinearExpr.Sum(Open(task, model, p => !CrewPlace.IsRequired(p))));
        yield return ("changes to what is published", Changes(task, model));
        yield return ("unfairness over the season", Unfairness(task, model));
        yield return ("trainees without a mentor", Alone(task, model));
        yield return ("metres to travel, and wishes", Metres(model));
    }

    private static IEnumerable<BoolVar> Open(CrewTask task, CrewModel model, Func<string, bool> place) =>
        task.Games.SelectMany(g => CrewPlace.Of(g.Division).Where(place).Select(p => model.Holes[(g.Key, p)]));

    private static LinearExpr Changes(CrewTask task, CrewModel model)
    {
        var kept = new List<ILiteral>();
        foreach (var seat in task.Games.SelectMany(task.Plan.CrewOf))
        {
            var same = model.At(seat.Game.Key, seat.Place).Where(s => s.Who.Person.Key == seat.Person.Key).Select(s => s.Var).FirstOrDefault();
            // who may not have the place any more is a change whatever is done
            kept.Add(same is null ? model.Model.TrueLiteral() : same.Not());
        }
        return LinearExpr.Sum(kept);
    }

    /// <summary>Each further game of a person costs the share of the offer it brings them to, in hundredths: the sum is least when shares are even.</summary>
    private static LinearExpr Unfairness(CrewTask task, CrewModel model)
    {
        var terms = new List<LinearExpr>();
        var season = task.Season ?? task.Plan.Without(task.Games);
        var asked = task.Games.Select(g => g.Key).ToHashSet();
        foreach (var own in model.ByPerson)
        {
            var person = own.First().Who.Person;
            var offer = Math.Max(0.5, person.Official!.GamesAWeek);
            var before = season.Of(person).Where(s => !asked.Contains(s.Game.Key)).ToList();
            var weeks = before.Select(s => s.Game.Day.DayNumber / 7).Distinct().Count() + 1;
            var steps = Enumerable.Range(1, (int)Math.Floor(offer)).Select(n => (Var: model.Model.NewBoolVar($"{person.Key} {n}"), Cost: (long)Math.Round(100 * (before.Count + n) / (offer * weeks)))).ToList();
            if (steps.Count == 0) continue;
            model.Model.Add(LinearExpr.Sum(own.Select(s => s.Var)) <= LinearExpr.Sum(steps.Select(s => s.Var)));
            terms.AddRange(steps.Select(s => s.Var * s.Cost));
        }
        return LinearExpr.Sum(terms);
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
        (s.Who.Person.Home is { } home ? (long)(1000 * Travel.Kilometres(home.Latitude, home.Longitude, s.Who.Game.Park.Latitude, s.Who.Game.Park.Longitude)) : 0L) + s.Who.Wishes * WishMetres));
}
