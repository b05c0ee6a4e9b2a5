using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.People;

namespace Umpirage.CrewsBench;

/// <summary>
/// Weekends of an amateur district of published size: 500 games, 750 officials, 65 parks (the sizes of Duarte, Ribeiro, Urrutia and Haeusler 2006;
/// everything else is made here from a seed). Hours are half days near home, grades and certificates as in a volunteer district.
/// </summary>
internal static class Amateur
{
    public static readonly DateOnly Saturday = new(2026, 5, 23);

    public static CrewRecords Make(int seed, int games = 500, int officials = 750, int parks = 65)
    {
        var dice = new Random(seed);
        T Of<T>(IReadOnlyList<T> list) => list[dice.Next(list.Count)];
        Division[] divisions = [new("10", "baseball/10U", 1, false), new("12", "baseball/12U", 2, false), new("14", "baseball/14U", 2, false), new("18", "baseball/18U", 2, false)];
        List<League> leagues = [.. Enumerable.Range(0, 40).Select(i => new League($"l{i}", $"League {i}"))];
        List<Team> teams = [.. leagues.SelectMany(l => divisions.SelectMany(d => Enumerable.Range(0, 7).Select(n => new Team($"{l.Key}-{d.Key}-{n}", $"Team {l.Key} {d.Key} {n}", l.Key, d.Key))))];
        List<Park> places = [.. Enumerable.Range(0, parks).Select(i => new Park($"p{i}", $"Park {i}", 41 + dice.NextDouble() * 0.5, -88 + dice.NextDouble() * 0.6))];
        List<Diamond> diamonds = [.. places.SelectMany(p => Enumerable.Range(0, 2).Select(n => new Diamond($"{p.Key}-{n}", p.Key, $"{p.Name}/{n}", 60, true)))];
        int[] hours = [9, 12, 15, 18];
        // every diamond has a game at every hour of both days before any has none
        var slots = Enumerable.Range(0, 2).SelectMany(day => hours.SelectMany(h => diamonds.Select(d => (Start: Saturday.AddDays(day).ToDateTime(new(h, 0)), d)))).OrderBy(_ => dice.Next()).Take(games).OrderBy(s => s.Start).ToList();
        List<ScheduledGame> schedule = [.. slots.Select((s, i) =>
        {
            var division = Of(divisions);
            var own = teams.Where(t => t.Division == division.Key).OrderBy(_ => dice.Next()).Take(2).ToList();
            return new ScheduledGame($"g{i:000}", division.Key, own[0].Key, own[1].Key, s.d.Key, s.Start, GameStatus.Planned, 0);
        })];
        var records = new CrewRecords { Leagues = leagues, Divisions = divisions, Teams = teams, Parks = places, Diamonds = diamonds, Games = schedule };
        var (people, officialsList, clearances, certificates, availability, homes) = (new List<Person>(), new List<Official>(), new List<Clearance>(), new List<Certificate>(), new List<Availability>(), new List<HomePlace>());
        for (var i = 0; i < officials; i++)
        {
            var key = $"o{i:000}";
            var league = Of(leagues);
            people.Add(Person.Of(key, "A", key, AgeBand.Adult, null, league.Key, null, null, [])!);
            var grade = dice.Next(10) switch { < 2 => Grade.Trainee, < 5 => Grade.Base, < 9 => Grade.Plate, _ => Grade.CrewChief };
            officialsList.Add(new(key, grade, 1 + dice.Next(3), 2015 + dice.Next(11)));
            foreach (var requirement in new[] { "background check", "abuse-awareness course" }) clearances.Add(new(key, requirement, new(2026, 1, 1), new(2026, 12, 31), "o"));
            certificates.Add(new(key, "baseball", divisions[dice.Next(4)].Key, grade >= Grade.Plate ? Position.Plate : Position.Base, new(2026, 1, 1), new(2026, 12, 31)));
            foreach (var day in new[] { DayOfWeek.Saturday, DayOfWeek.Sunday })
                if (dice.Next(3) > 0) availability.Add(dice.Next(2) == 0 ? new(key, day, new(8, 0), new(14, 30)) : new(key, day, new(14, 0), new(20, 30)));
            var home = Of(places);
            homes.Add(new(key, Math.Round(home.Latitude, 2), Math.Round(home.Longitude, 2)));
        }
        return records with { People = people, Officials = officialsList, Clearances = clearances, Certificates = certificates, Hours = availability, Homes = homes };
    }
}
