using Umpirage.District.Crews;

namespace Umpirage.Solve.Crews;

/// <summary>Tells of places that stay open which constraints keep how many people from them.</summary>
public static class Shortage
{
    /// <summary>Counted for the place alone in the plan as it is: the first constraint, in their order, that keeps somebody.</summary>
    public static IReadOnlyList<OpenPlace> Of(CrewPlan given, IReadOnlyList<CrewGame> games) => In(given.Settled(), games);

    private static IReadOnlyList<OpenPlace> In(CrewPlan plan, IReadOnlyList<CrewGame> games) =>
    [
        .. games.SelectMany(g => plan.Open(g).Select(p => (Game: g, Place: p))).AsParallel().AsOrdered().Select(o =>
        {
            var kept = new Dictionary<string, int>();
            var more = new List<CrewPerson>();
            foreach (var person in plan.Officials)
            {
                if (plan.CrewOf(o.Game).Any(s => s.Person.Key == person.Key)) continue;
                var first = First(plan, o.Game, o.Place, person);
                if (first is null) more.Add(person);
                else kept[first] = kept.GetValueOrDefault(first) + 1;
            }
            return new OpenPlace(o.Game, o.Place, [.. kept.OrderByDescending(k => k.Value).Select(k => (k.Key, k.Value))], more);
        }),
    ];

    /// <summary>Hours and scope first: that somebody is not there at all says more than the rest.</summary>
    private static string? First(CrewPlan plan, CrewGame game, string place, CrewPerson person)
    {
        var full = plan.With(game, place, person);
        // what does not fit may be told at another place of the day or the crew
        var near = full.Of(person).Where(s => s.Game.Day == game.Day).Concat(full.CrewOf(game).Where(s => s.Person.Key != person.Key)).ToList();
        foreach (var constraint in Order) if (near.Any(s => constraint.Find(full, s).Any(b => b.Hold != Hold.Wish))) return constraint.Name;
        return null;
    }

    private static readonly CrewConstraint[] Order = [.. CrewConstraints.All.OrderBy(c => c.Name switch { "availability" => 0, "grade" => 1, "certificate" => 2, "place" => 3, _ => 4 })];
}
