using Umpirage.District.Calendar;
using Umpirage.District.People;
using Umpirage.District.Pitchers;

namespace Umpirage.District.Demo;

/// <summary>The invented demonstration district: the same for the same plan and seed. What it leaves to chance and what it fixes is told in demo/oslemoor/README.md.</summary>
public static class Oslemoor
{
    public const ulong Seed = 20260516;

    /// <summary>The day on which the demonstration stands still: the Saturday of the stories.</summary>
    public static readonly DateTime Now = new(2026, 5, 16, 8, 0, 0);

    public static readonly DistrictFacts Facts = new(DistrictFacts.Only, "Oslemoor District", "America/Chicago", 41.40, -88.10);

    /// <summary>Every record, each after those it refers to.</summary>
    public static IEnumerable<object> Make(Plan plan, ulong seed = Seed)
    {
        var dice = new Dice(seed);
        var teams = Teams(plan);
        var folk = new Folk(plan, dice);
        folk.Fill(teams);
        var season = Season.Of(plan, teams, dice);
        var late = TooLate(plan, season);
        var games = season.Select(g => g == late ? g with { Start = g.Start.Date + Season.Late.ToTimeSpan() } : g).Select(g => g.Start < Now ? g with { Status = dice.In(10) ? GameStatus.RainedOut : GameStatus.Played } : g).ToList();
        List<RosterPlace> places = [.. teams.SelectMany(t => Enumerable.Range(1, plan.Divisions.First(d => d.Division.Key == t.Division).Roster).Select(n => new RosterPlace($"{t.Key}-{n:00}", t.Key, n)))];
        List<Player> players = [.. places.Select(p => new Player(p.Player, $"{dice.Of(plan.Given)} {(char)('A' + dice.Below(26))}."))];
        var concert = games.First(g => g.Key == $"W{FaultyWeek:00}-{Folk.Slug(plan.Divisions[^2].Division.Key)}-01");
        Blackout[] closed =
        [
            new(BlackoutOf.District, DistrictFacts.Only, new(2026, 7, 3), new(2026, 7, 5), "district fair"), new(BlackoutOf.Diamond, plan.Diamonds[1].Key, new(2026, 3, 28), new(2026, 4, 5), "field work"),
            new(BlackoutOf.Team, concert.Home, concert.Day, concert.Day, "school concert"),
        ];
        List<Assignment> crews = [.. Crews(plan, folk, games, dice)];
        return
        [
            Facts, .. plan.Leagues, .. plan.Divisions.Select(d => d.Division), .. plan.Parks, .. plan.Diamonds, .. teams, .. folk.People, .. folk.Roles, .. folk.Guardianships, .. folk.Officials,
            .. folk.Clearances, .. folk.Certificates, .. folk.Hours, .. games, .. closed, .. Ties.Of(plan, folk, teams, games, Now, new Dice(seed + 1)), .. crews, .. players, .. places,
            .. Counts.Of(games.Where(g => g.Status == GameStatus.Played), places.ToLookup(p => p.Team), dice),
            .. new Evaluations(plan, folk, games, crews, new Dice(seed + 2)).Make(), .. new Questions(plan, folk, Now, new Dice(seed + 3)).Make(),
        ];
    }

    /// <summary>How many steps lower than others the evaluator of that number marks in the demonstration, so that a fit has something known to find: -0.6 to +0.7.</summary>
    public static double Severity(int trainer) => -0.6 + 1.3 * (trainer * 5 % Folk.Trainers) / (Folk.Trainers - 1);

    /// <summary>The evaluator who gives every item the same step in most visits.</summary>
    public const int AllAlike = 6;

    /// <summary>The week that holds two things which a schedule must not have, so that there is something to find.</summary>
    private const int FaultyWeek = 8;

    /// <summary>A game of the youngest on a lit diamond whose late slot is free.</summary>
    private static ScheduledGame TooLate(Plan plan, List<ScheduledGame> season)
    {
        var lit = plan.Diamonds.Where(d => d.Lit).Select(d => d.Key).ToHashSet();
        var youngest = plan.Divisions.First(d => d.Division.YouthBase).Division.Key;
        return season.Where(g => g.Division == youngest && g.Key.StartsWith($"W{FaultyWeek:00}", StringComparison.Ordinal) && lit.Contains(g.Diamond) && g.Start.DayOfWeek is not (DayOfWeek.Saturday or DayOfWeek.Sunday))
            .First(g => !season.Any(o => o.Diamond == g.Diamond && o.Start == g.Start.Date + Season.Late.ToTimeSpan()));
    }

    private static List<Team> Teams(Plan plan)
    {
        var teams = new List<Team>();
        foreach (var planned in plan.Divisions)
        {
            var leagues = plan.Leagues.Where(l => plan.Plays.Contains((l.Key, planned.Game))).ToList();
            for (var i = 0; i < planned.Teams; i++)
            {
                var league = leagues[i % leagues.Count];
                var number = i / leagues.Count + 1;
                var town = league.Name.Split(' ')[0];
                teams.Add(new($"{town[..3].ToUpperInvariant()}-{Folk.Slug(planned.Division.Key)}-{number}", $"{town} {plan.TeamNames[(i * 7 + plan.Divisions.ToList().IndexOf(planned) * 3 + number) % plan.TeamNames.Count]}", league.Key, planned.Division.Key));
            }
        }
        return teams;
    }

    /// <summary>Places of every game up to the coming week's; those of games up to today are filled as far as people go, at most two games a day each, with a pause.</summary>
    private static IEnumerable<Assignment> Crews(Plan plan, Folk folk, IReadOnlyList<ScheduledGame> games, Dice dice)
    {
        var minors = folk.People.Where(p => p.IsMinor).Select(p => p.Key).ToHashSet();
        var hours = folk.Hours.ToLookup(h => h.Person);
        var busy = new List<(string Person, DateTime Start)>();
        var certified = folk.Certificates.ToLookup(c => c.Person);
        var rank = plan.Divisions.Select((d, i) => (d.Division.Key, i)).ToDictionary(x => x.Key, x => x.i);
        // nobody is put on a game with a clearance long gone; those that ran out in the last days are still on theirs, as it happens
        var lapsed = folk.Clearances.Where(c => c.Until < DateOnly.FromDateTime(Now).AddDays(-4)).Select(c => c.Person).ToHashSet();
        var lastDay = DateOnly.FromDateTime(Now).AddDays(8);
        // who evaluates works no more than offered: the other evenings go to visits
        var trainers = folk.Roles.Where(r => r.Role == Role.Trainer).Select(r => r.Person).ToHashSet();
        var offers = folk.Officials.ToDictionary(o => o.Person, o => o.GamesAWeek);
        bool Offered(string person, DateTime start) => !trainers.Contains(person) || busy.Count(b => b.Person == person && Week(b.Start) == Week(start)) < offers[person];
        foreach (var game in games.Where(g => DateOnly.FromDateTime(g.Start) <= lastDay).OrderBy(g => g.Start))
        {
            var planned = plan.Divisions.First(d => d.Division.Key == game.Division);
            string[] places = planned.Division.YouthBase ? ["plate", "youth base"] : planned.Division.Crew > 1 ? ["plate", "base"] : ["plate"];
            foreach (var place in places)
            {
                var day = DateOnly.FromDateTime(game.Start);
                var who = day > DateOnly.FromDateTime(Now) ? null : dice.Shuffled(folk.Officials).FirstOrDefault(o =>
                    (place == "plate" ? o.Grade >= Grade.Plate : o.Grade >= Grade.Trainee) && minors.Contains(o.Person) == (place == "youth base") && Rested(busy.Where(b => b.Person == o.Person && b.Start.Date == game.Start.Date), game.Start) && Offered(o.Person, game.Start) && !lapsed.Contains(o.Person)
                    && certified[o.Person].Any(c => c.Game == planned.Game && rank[c.Division] >= rank[game.Division] && (place != "plate" || c.Position == Position.Plate))
                    && hours[o.Person].Any(h => h.Day == game.Start.DayOfWeek && h.From <= TimeOnly.FromDateTime(game.Start) && TimeOnly.FromDateTime(game.Start).AddHours(2) <= h.Until));
                if (who is not null) busy.Add((who.Person, game.Start));
                yield return new(game.Key, place, who?.Person);
            }
        }
    }

    private static int Week(DateTime start) => (DateOnly.FromDateTime(start).DayNumber - Season.First.DayNumber) / 7;

    private static bool Rested(IEnumerable<(string Person, DateTime Start)> worked, DateTime start)
    {
        var all = worked.ToList();
        return all.Count < 2 && all.All(w => Math.Abs((start - w.Start).TotalHours) > HoursBetweenStarts);
    }

    private const double HoursBetweenStarts = 2.6;
}
