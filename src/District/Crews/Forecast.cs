using Umpirage.District.People;

namespace Umpirage.District.Crews;

/// <summary>One night's places against those who can come: what is required, the most that can be filled that night alone, and the same for the plate.</summary>
public sealed record NightForecast(DateOnly Day, int Games, int Required, int Supply, int Plates, int PlateSupply, IReadOnlyDictionary<Grade, int> ByGrade);

/// <summary>One game taken from one night to another: how many more places could be filled in the week.</summary>
public sealed record DayMove(DateOnly From, DateOnly To, int Gains);

/// <summary>What a league's games ask for, what its umpires offer, and how many volunteers of two games a week are missing.</summary>
public sealed record LeagueForecast(League League, int Required, double Offered, int TwoGameVolunteers);

/// <summary>A week's supply against its demand: by hours, grades and offers, before distances and interests are looked at.</summary>
/// <param name="Filled">The most of the required places that can be filled in the whole week, nobody beyond the offer.</param>
public sealed record Forecast(DateOnly Monday, int Required, double Offered, int Filled, IReadOnlyList<NightForecast> Nights, IReadOnlyList<DayMove> Moves, IReadOnlyList<LeagueForecast> Leagues)
{
    public int Short => Required - Filled;

    public static Forecast Of(CrewPlan plan, DateOnly monday)
    {
        var games = plan.Games.Where(g => g.Game.IsAhead && g.Day >= monday && g.Day < monday.AddDays(7)).ToList();
        var can = Can(plan, games);
        var demand = games.GroupBy(g => g.Day).ToDictionary(g => g.Key, g => (Plate: g.Count(), Base: g.Sum(x => x.Division.Crew - 1)));
        var filled = Fill(can, demand, offers: true);
        var nights = Enumerable.Range(0, 7).Select(d => monday.AddDays(d)).Select(day =>
        {
            var that = games.Where(g => g.Day == day).ToList();
            var free = can.Where(c => c.Days.Any(x => x.Day == day)).ToList();
            var (plate, bases) = demand.GetValueOrDefault(day);
            var alone = new Dictionary<DateOnly, (int, int)> { [day] = (plate, bases) };
            return new NightForecast(day, that.Count, plate + bases, Fill(can, alone, offers: false), plate, Fill(can, new Dictionary<DateOnly, (int, int)> { [day] = (plate, 0) }, offers: false),
                free.GroupBy(c => c.Person.Official!.Grade).OrderBy(g => g.Key).ToDictionary(g => g.Key, g => g.Count()));
        }).ToList();
        return new(monday, games.Sum(g => g.Division.Crew), plan.Officials.Sum(p => p.Official!.GamesAWeek), filled, nights, MovesOf(can, demand, filled), LeaguesOf(plan, games));
    }

    /// <summary>No plan fills more required places of these games than this, others' places of the week being as they are: hours, grades and offers alone.</summary>
    /// <param name="platesOnly">Only the plates are filled.</param>
    public static int Most(CrewPlan plan, IReadOnlyList<CrewGame> games, bool platesOnly = false) =>
        Fill(Can(plan, games), games.GroupBy(g => g.Day).ToDictionary(g => g.Key, g => (Plate: g.Count(), Base: platesOnly ? 0 : g.Sum(x => x.Division.Crew - 1))), offers: true);

    /// <param name="Plate">May be asked for the plate that day.</param>
    private sealed record Hours(DateOnly Day, bool Plate, int Most);
    private sealed record Able(CrewPerson Person, IReadOnlyList<Hours> Days);

    /// <summary>Who could take some game of a day on safety, certificate, grade and hours alone: asked of the constraints on a plan where nobody sits anywhere.</summary>
    private static List<Able> Can(CrewPlan plan, IReadOnlyList<CrewGame> games)
    {
        var empty = plan.Without(games).Settled();
        return [.. plan.Officials.Select(p => new Able(p, [.. games.GroupBy(g => g.Day).OrderBy(g => g.Key).Select(day =>
        {
            bool May(CrewGame g, string place)
            {
                if (g.Division.Crew <= (place == CrewPlace.Plate ? 0 : 1)) return false;
                var full = empty.With(g, place, p);
                return !CrewCheck.Of(full, full.CrewOf(g)[0]).Any(b => b.Hold != Hold.Wish && b.Constraint != Beside);
            }

            var (plates, bases) = (day.Where(g => May(g, CrewPlace.Plate)).ToList(), day.Where(g => May(g, CrewPlace.Base)).ToList());
            var starts = plates.Concat(bases).DistinctBy(g => g.Key).OrderBy(g => g.End).ToList();
            // the most games that fit one after the other
            var (most, free) = (0, DateTime.MinValue);
            foreach (var g in starts) if (g.Start >= free) { most++; free = g.End.AddMinutes(starts.Min(x => x.Code.BreakMinutes)); }
            return new Hours(day.Key, plates.Count > 0, starts.Count == 0 ? 0 : Math.Min(most, starts.Max(x => x.Code.GamesADay(p.Person.Band))));
        }).Where(h => h.Most > 0)])).Where(a => a.Days.Count > 0)];
    }

    /// <summary>Hangs on the crew, not on the person: it takes nothing from what is possible at most.</summary>
    private static readonly string Beside = new Constraints.BesideTheMentor().Name;

    private static IReadOnlyList<DayMove> MovesOf(List<Able> can, Dictionary<DateOnly, (int Plate, int Base)> demand, int filled)
    {
        var moves = new List<DayMove>();
        foreach (var from in demand.Keys.Where(d => demand[d].Base > 0).Order())
            foreach (var to in demand.Keys.Where(d => d != from).Order())
            {
                var moved = new Dictionary<DateOnly, (int Plate, int Base)>(demand) { [from] = (demand[from].Plate - 1, demand[from].Base - 1), [to] = (demand[to].Plate + 1, demand[to].Base + 1) };
                if (Fill(can, moved, offers: true) - filled is > 0 and var gains) moves.Add(new(from, to, gains));
            }
        return [.. moves.OrderByDescending(m => m.Gains).ThenBy(m => m.From).ThenBy(m => m.To)];
    }

    private static IReadOnlyList<LeagueForecast> LeaguesOf(CrewPlan plan, List<CrewGame> games) =>
    [
        .. plan.Records.Leagues.Select(l =>
        {
            var required = games.Where(g => g.Home.League == l.Key).Sum(g => g.Division.Crew);
            var offered = plan.Officials.Where(p => p.Person.League == l.Key).Sum(p => p.Official!.GamesAWeek);
            return new LeagueForecast(l, required, offered, (int)Math.Ceiling(Math.Max(0, required - offered) / 2));
        }).OrderByDescending(l => l.TwoGameVolunteers).ThenBy(l => l.League.Key, StringComparer.Ordinal),
    ];

    /// <summary>The most places filled: a greatest flow from people over their days to plates and bases.</summary>
    private static int Fill(List<Able> can, IReadOnlyDictionary<DateOnly, (int Plate, int Base)> demand, bool offers)
    {
        var flow = new Flow();
        var (source, sink) = (flow.Node(), flow.Node());
        var nodes = demand.Where(d => d.Value.Plate + d.Value.Base > 0).ToDictionary(d => d.Key, d => (Plate: flow.Node(), Base: flow.Node()));
        foreach (var (day, (plate, bases)) in nodes) { flow.Edge(plate, sink, demand[day].Plate); flow.Edge(bases, sink, demand[day].Base); }
        foreach (var able in can)
        {
            var person = flow.Node();
            flow.Edge(source, person, offers ? (int)able.Person.Official!.GamesAWeek : 99);
            foreach (var hours in able.Days)
            {
                if (!nodes.TryGetValue(hours.Day, out var night)) continue;
                var day = flow.Node();
                flow.Edge(person, day, hours.Most);
                if (hours.Plate) flow.Edge(day, night.Plate, hours.Most);
                flow.Edge(day, night.Base, hours.Most);
            }
        }
        return flow.Greatest(source, sink);
    }
}
