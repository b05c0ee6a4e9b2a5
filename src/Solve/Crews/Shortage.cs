using Umpirage.District.Crews;

namespace Umpirage.Solve.Crews;

/// <summary>Tells of places that stay open which constraints keep how many people from them.</summary>
internal static class Shortage
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
                var full = plan.With(o.Game, o.Place, person);
                var seat = full.CrewOf(o.Game).First(s => s.Place == o.Place);
                var first = Quick(full, seat);
                if (first is null) more.Add(person);
                else kept[first] = kept.GetValueOrDefault(first) + 1;
            }
            return new OpenPlace(o.Game, o.Place, [.. kept.OrderByDescending(k => k.Value).Select(k => (k.Key, k.Value))], more);
        }),
    ];

    /// <summary>Hours and scope first: that somebody is not there at all says more than the rest.</summary>
    private static string? Quick(CrewPlan plan, Seated seat)
    {
        foreach (var constraint in Order) if (constraint.Find(plan, seat).Any(b => b.Hold != Hold.Wish)) return constraint.Name;
        return null;
    }

    private static readonly CrewConstraint[] Order = [.. CrewConstraints.All.OrderBy(c => c.Name switch { "availability" => 0, "grade" => 1, "certificate" => 2, "place" => 3, _ => 4 })];
}
