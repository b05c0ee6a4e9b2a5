using Umpirage.District.Crews;

namespace Umpirage.Solve.Crews;

/// <summary>
/// Fills places one after the other, the hardest first: plates before bases before youth bases, and among them those with the fewest candidates; each
/// goes to whoever has had the smallest share of the offer. Not the answer, but a plan to begin with, and what a hurried search falls back on.
/// </summary>
internal static class Greedy
{
    /// <summary>Seats by their number in the model; the published ones that may stand are kept.</summary>
    public static bool[] Of(CrewTask task, Candidates candidates, IReadOnlyList<Candidate> seats)
    {
        var taken = new bool[seats.Count];
        var plan = candidates.Empty;
        var now = task.Games.SelectMany(task.Plan.CrewOf).Select(s => (s.Game.Key, s.Place, s.Person.Key)).ToHashSet();
        var places = Enumerable.Range(0, seats.Count).GroupBy(i => (seats[i].Game.Key, seats[i].Place)).Select(g => g.ToList()).ToList();
        foreach (var place in places) foreach (var i in place) if (now.Contains((seats[i].Game.Key, seats[i].Place, seats[i].Person.Key))) Give(i);
        foreach (var place in places.OrderBy(p => Rank(seats[p[0]].Place)).ThenBy(p => p.Count).ThenBy(p => p[0]))
        {
            if (place.Any(i => taken[i])) continue;
            foreach (var i in place.OrderBy(i => Share(plan, seats[i])).ThenBy(i => seats[i].Wishes).ThenBy(i => seats[i].Person.Key, StringComparer.Ordinal)) if (Give(i)) break;
        }
        return taken;

        bool Give(int i)
        {
            var seat = seats[i];
            if (Given(plan, seat) + 1 > seat.Person.Official!.GamesAWeek || plan.CrewOf(seat.Game).Any(s => s.Place == seat.Place || s.Person.Key == seat.Person.Key)) return false;
            foreach (var other in plan.Of(seat.Person)) if (other.Game.Day == seat.Game.Day && candidates.Clash(other.Game, seat.Game, seat.Person)) return false;
            var next = plan.With(seat.Game, seat.Place, seat.Person);
            // the whole crew and the person's whole day have to stand
            foreach (var s in next.CrewOf(seat.Game).Concat(next.Of(seat.Person).Where(s => s.Game.Day == seat.Game.Day))) if (CrewCheck.Of(next, s).Any(b => b.Hold != Hold.Wish)) return false;
            plan = next;
            return taken[i] = true;
        }
    }

    private static int Rank(string place) => place == CrewPlace.Plate ? 0 : CrewPlace.IsRequired(place) ? 1 : 2;

    private static int Given(CrewPlan plan, Candidate seat)
    {
        var monday = District.Crews.Constraints.AsOffered.Monday(seat.Game.Day);
        return plan.Of(seat.Person).Count(s => District.Crews.Constraints.AsOffered.Monday(s.Game.Day) == monday);
    }

    private static double Share(CrewPlan plan, Candidate seat) => Given(plan, seat) / Math.Max(0.5, seat.Person.Official!.GamesAWeek);
}
