using Umpirage.District.Crews;
using Umpirage.District.Crews.Constraints;

namespace Umpirage.Solve.Crews;

/// <summary>
/// How many places no plan can fill: a greatest flow from people over their week, their days and the hours at which games begin to the places they may
/// have. It forgets what clashes from one hour to the next beyond the most games that fit in a day, and what crews mind among themselves: so it
/// never says too much.
/// </summary>
internal static class Relaxation
{
    /// <summary>Places of these kinds that stay open in every plan.</summary>
    public static int Open(CrewTask task, Candidates candidates, Func<string, bool> kind)
    {
        var flow = new Flow();
        var (source, sink) = (flow.Node(), flow.Node());
        var places = new Dictionary<(string, string), int>();
        foreach (var game in task.Games)
            foreach (var place in CrewPlace.Of(game.Division).Where(kind)) flow.Edge(places[(game.Key, place)] = flow.Node(), sink, 1);
        foreach (var own in candidates.All.Where(c => kind(c.Place)).GroupBy(c => c.Person.Key))
        {
            var person = own.First().Person;
            foreach (var week in own.GroupBy(c => AsOffered.Monday(c.Game.Day)))
            {
                var has = candidates.Empty.Of(person).Count(s => AsOffered.Monday(s.Game.Day) == week.Key);
                var offer = flow.Node();
                flow.Edge(source, offer, Math.Max(0, (int)Math.Floor(person.Official!.GamesAWeek) - has));
                foreach (var day in week.GroupBy(c => c.Game.Day))
                {
                    var node = flow.Node();
                    flow.Edge(offer, node, Math.Max(0, Math.Min(Fit([.. day.Select(c => c.Game).DistinctBy(g => g.Key)]), day.Max(c => c.Game.Code.GamesADay(person.Person.Band)) - candidates.Empty.DayOf(person, day.Key).Count)));
                    foreach (var hour in day.GroupBy(c => c.Game.Start))
                    {
                        var start = flow.Node();
                        flow.Edge(node, start, 1);
                        foreach (var seat in hour) flow.Edge(start, places[(seat.Game.Key, seat.Place)], 1);
                    }
                }
            }
        }
        return places.Count - flow.Greatest(source, sink);
    }

    /// <summary>The most games of a day that fit one after the other with the shortest break.</summary>
    private static int Fit(List<CrewGame> games)
    {
        var (most, free, least) = (0, DateTime.MinValue, games.Min(g => g.Code.BreakMinutes));
        foreach (var game in games.OrderBy(g => g.End)) if (game.Start >= free) { most++; free = game.End.AddMinutes(least); }
        return most;
    }
}
