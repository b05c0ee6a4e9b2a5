using Umpirage.District.Crews;
using Umpirage.District.Crews.Constraints;

namespace Umpirage.CrewsBench;

/// <summary>
/// The most required places of one day that any plan fills when umpires may be lent from any district to any other: a greatest flow from people over
/// the hours at which games begin to kinds of places. Clearance, approval, age, curfew, certificate, grade and hours are asked; distance, ties,
/// coordinators and what crews mind among themselves are forgotten, so it never says too little.
/// </summary>
internal static class Lent
{
    private static readonly CrewConstraint[] Asked = [new AvailableThen(), new GradeEnough(), new Certified(), new Cleared(), new GuardianApproves(), new OlderThanThePlayers(), new HomeByThen()];

    public static int Most(IReadOnlyList<(CrewPlan Plan, List<CrewGame> Games)> districts)
    {
        var flow = new Flow();
        var (source, sink) = (flow.Node(), flow.Node());
        // games alike in division, hour and code ask the same of an umpire, wherever they are
        var kinds = districts.SelectMany(d => d.Games).SelectMany(g => CrewPlace.Of(g.Division).Where(CrewPlace.IsRequired).Select(p => (Game: g, Place: p)))
            .GroupBy(x => (x.Game.Division.Key, x.Game.Start, x.Game.End, Kind: x.Game.Code.Code.Address.ToString(), x.Place)).Select(k => (k.First().Game, k.First().Place, Node: flow.Node(), Count: k.Count())).ToList();
        foreach (var kind in kinds) flow.Edge(kind.Node, sink, kind.Count);
        foreach (var (plan, games) in districts)
            foreach (var person in plan.Officials)
            {
                var may = kinds.Where(k => !Asked.Any(c => c.Find(plan, new(k.Game, k.Place, person)).Any(b => b.Hold != Hold.Wish))).ToList();
                if (may.Count == 0) continue;
                var node = flow.Node();
                flow.Edge(source, node, Math.Min((int)person.Official!.GamesAWeek, Math.Min(Fit(may.Select(k => k.Game)), may.Max(k => k.Game.Code.GamesADay(person.Person.Band)))));
                foreach (var hour in may.GroupBy(k => k.Game.Start))
                {
                    var start = flow.Node();
                    flow.Edge(node, start, 1);
                    foreach (var kind in hour) flow.Edge(start, kind.Node, 1);
                }
            }
        return flow.Greatest(source, sink);
    }

    /// <summary>The most games that fit one after the other with the shortest break.</summary>
    private static int Fit(IEnumerable<CrewGame> games)
    {
        var (most, free) = (0, DateTime.MinValue);
        foreach (var game in games.OrderBy(g => g.End)) if (game.Start >= free) { most++; free = game.End.AddMinutes(game.Code.BreakMinutes); }
        return most;
    }
}
