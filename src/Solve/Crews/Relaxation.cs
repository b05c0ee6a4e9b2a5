using Umpirage.District.Crews;
using Umpirage.District.Crews.Constraints;

namespace Umpirage.Solve.Crews;

/// <summary>
/// How many places no plan can fill: a greatest flow from people over their week, their days and the hours at which games begin to the places they may
/// have. It forgets what clashes from one hour to the next beyond the most games that fit in a day, and what crews mind among themselves: so it
/// never says too much.
/// </summary>
/// <param name="Plates">Plates that stay open in every plan.</param>
/// <param name="Required">Required places that stay open in every plan.</param>
/// <param name="All">Places that stay open in every plan, wanted ones too.</param>
/// <param name="Seats">Candidates, by their number, whom the flow gave the required places: nearly a plan.</param>
internal sealed record Relaxation(int Plates, int Required, int All, IReadOnlyList<int> Seats)
{
    public static Relaxation Of(CrewTask task, Candidates candidates)
    {
        var (required, seats) = Open(task, candidates, CrewPlace.IsRequired);
        return new(Open(task, candidates, p => p == CrewPlace.Plate).Open, required, Open(task, candidates, _ => true).Open, seats);
    }

    private static (int Open, IReadOnlyList<int> Seats) Open(CrewTask task, Candidates candidates, Func<string, bool> kind)
    {
        var flow = new Flow();
        var (source, sink) = (flow.Node(), flow.Node());
        var places = new Dictionary<(string, string), int>();
        foreach (var game in task.Games)
            foreach (var place in CrewPlace.Of(game.Division).Where(kind)) flow.Edge(places[(game.Key, place)] = flow.Node(), sink, 1);
        var edges = new List<(int Edge, int Seat)>();
        foreach (var own in candidates.All.Select((c, i) => (Who: c, Seat: i)).Where(c => kind(c.Who.Place)).GroupBy(c => c.Who.Person.Key))
        {
            var person = own.First().Who.Person;
            foreach (var week in own.GroupBy(c => AsOffered.Monday(c.Who.Game.Day)))
            {
                var has = candidates.Empty.Of(person).Count(s => AsOffered.Monday(s.Game.Day) == week.Key);
                var offer = flow.Node();
                flow.Edge(source, offer, Math.Max(0, (int)Math.Floor(person.Official!.GamesAWeek) - has));
                foreach (var day in week.GroupBy(c => c.Who.Game.Day))
                {
                    var node = flow.Node();
                    flow.Edge(offer, node, Math.Max(0, Math.Min(Fit([.. day.Select(c => c.Who.Game).DistinctBy(g => g.Key)]), day.Max(c => c.Who.Game.Code.GamesADay(person.Person.Band)) - candidates.Empty.DayOf(person, day.Key).Count)));
                    foreach (var hour in day.GroupBy(c => c.Who.Game.Start))
                    {
                        var start = flow.Node();
                        flow.Edge(node, start, 1);
                        foreach (var (who, seat) in hour) edges.Add((flow.Edge(start, places[(who.Game.Key, who.Place)], 1), seat));
                    }
                }
            }
        }
        var open = places.Count - flow.Greatest(source, sink);
        return (open, [.. edges.Where(e => flow.Through(e.Edge) > 0).Select(e => e.Seat)]);
    }

    /// <summary>The most games of a day that fit one after the other with the shortest break.</summary>
    private static int Fit(List<CrewGame> games)
    {
        var (most, free, least) = (0, DateTime.MinValue, games.Min(g => g.Code.BreakMinutes));
        foreach (var game in games.OrderBy(g => g.End)) if (game.Start >= free) { most++; free = game.End.AddMinutes(least); }
        return most;
    }
}
