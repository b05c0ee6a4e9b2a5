using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.People;

namespace Umpirage.Tests.Crews;

/// <summary>The check and a plain recount written apart find the same in random plans, good and bad.</summary>
public class RandomPlanTests(ITestOutputHelper output)
{
    [Fact]
    public void The_check_finds_what_a_plain_recount_finds()
    {
        var seen = new Dictionary<string, int>();
        for (var seed = 0; seed < Folder.Count(600, 10_000); seed++)
        {
            var records = Random(new(seed));
            var check = CrewCheck.All(CrewPlan.Of(records, Town.Codes)).Select(b => (b.Constraint, b.Game, b.Place, b.Person)).Distinct().Order().ToList();
            var plain = new Recount(records).All().Order().ToList();
            Assert.True(check.SequenceEqual(plain), $"seed {seed}: the check alone {string.Join("; ", check.Except(plain))}; the recount alone {string.Join("; ", plain.Except(check))}");
            foreach (var b in check) seen[b.Constraint] = seen.GetValueOrDefault(b.Constraint) + 1;
        }
        foreach (var (name, count) in seen.OrderBy(s => s.Value)) output.WriteLine($"{name}: {count}");
        // every constraint was broken somewhere, or the test tries nothing
        Assert.Equal(CrewConstraints.All.Select(c => c.Name).Order(), seen.Keys.Order());
    }

    internal static CrewRecords Random(Random dice)
    {
        T Of<T>(IReadOnlyList<T> list) => list[dice.Next(list.Count)];
        bool In(int n) => dice.Next(n) == 0;
        string[] leagues = ["north", "south", "east"];
        List<Person> people = [Town.Adult("gil"), Town.Adult("eve")];
        string[] umpires = ["ann", "ben", "cora", "dan"];
        people.Add(Town.Adult("ann", Of(leagues)));
        people.Add(Town.Adult("ben", Of(leagues)));
        people.Add(Town.Minor("cora", AgeBand.From16To17));
        people.Add(Town.Minor("dan", In(5) ? AgeBand.Under13 : AgeBand.From13To15));
        var games = Enumerable.Range(0, dice.Next(1, 6)).Select(i =>
        {
            var division = Of(Town.Divisions);
            var home = Of(leagues);
            var visitor = In(2) ? home : Of(leagues);
            return new ScheduledGame($"g{i}", division.Key, $"{visitor}-{division.Key}", $"{home}-{division.Key}", Of(Town.Empty.Diamonds).Key,
                new DateTime(2026, 5, In(4) ? 17 : 16, 8 + dice.Next(13), 15 * dice.Next(4), 0), In(9) ? GameStatus.RainedOut : GameStatus.Planned, 0);
        }).ToList();
        DateOnly Around(int day) => new DateOnly(2026, 5, 16).AddDays(day);
        var assignments = new List<Assignment>();
        foreach (var game in games)
        {
            foreach (var place in CrewPlace.All.Where(_ => In(2)))
                assignments.Add(new(game.Key, place, In(8) ? null : Of([.. umpires, In(10) ? "eve" : "ann"])));
        }
        // the same person twice in one crew is told apart by nothing but the place: left to a test of its own
        assignments = [.. assignments.GroupBy(a => (a.Game, a.Person)).Select(g => g.First())];
        return Town.Empty with
        {
            People = people, Games = games, Assignments = assignments,
            Officials = [.. umpires.Where(_ => !In(12)).Select(u => new Official(u, (Grade)dice.Next(4), Of<double>([1, 1.5, 2, 3]), 2020))],
            Clearances = [.. umpires.SelectMany(u => new[] { "background check", "abuse-awareness course", "concussion course" }.Where(_ => !In(8)).Select(r => new Clearance(u, r, Around(In(9) ? 1 : -100), Around(In(9) ? -1 : 100), "o")))],
            Certificates = [.. umpires.SelectMany(u => new[] { "softball", "baseball" }.Where(_ => !In(8)).Select(g => new Certificate(u, g, g == "softball" ? Of(["SB 10U", "SB 12U"]) : Of(["BB 9-10", "BB 11-12", "BB 13-14"]), In(3) ? Position.Base : Position.Plate, Around(In(9) ? 1 : -100), Around(In(9) ? -1 : 100))))],
            Hours = [.. umpires.SelectMany(u => new[] { DayOfWeek.Saturday, DayOfWeek.Sunday }.Where(_ => !In(8)).Select(d => new Availability(u, d, new(8 + dice.Next(3), 0), new(20 + dice.Next(4), 59)))), .. In(3) ? [new Availability(Of(umpires), DayOfWeek.Saturday, new(7, 30), new(9 + dice.Next(5), 15))] : (Availability[])[]],
            Aways = In(3) ? [new(Of(umpires), Around(-dice.Next(3)), Around(dice.Next(2)))] : [],
            Guardianships = In(9) ? [] : [new("cora", "gil"), new("dan", "gil")],
            Approvals = [.. new[] { "cora", "dan" }.Where(_ => !In(6)).Select(c => new Approval(c, In(9) ? "eve" : "gil", Around(-100), Around(In(9) ? 0 : 100)))],
            Interests = In(3) ? [new(Of(umpires), InterestOf.League, Of(leagues), "post")] : In(3) ? [new(Of(umpires), InterestOf.Team, Of(Town.Empty.Teams).Key, "child plays there")] : [],
            Pairings = [.. In(2) ? [new Pairing(Of(umpires), "ben", PairingKind.Apart, Around(-5), Around(In(3) ? -1 : 5))] : (Pairing[])[], .. In(3) ? [new Pairing(Of(["cora", "dan"]), "ann", PairingKind.Mentor, Around(-5), Around(In(3) ? -1 : 5))] : (Pairing[])[]],
            Roles = In(3) ? [new(Of(["ann", "eve"]), Role.Manager, "", Of(Town.Empty.Teams).Key)] : [],
            Coordinations = [.. games.Where(_ => !In(3)).Select(g => new Coordination(g.Key, Of(["eve", "eve", "gil", "ann", "cora"])))],
            Endings = [.. games.Where(_ => In(4)).Select(g => new GameOver(g.Key, g.Start.AddMinutes(dice.Next(80, 150))))],
            Elsewhere = In(3) ? [new(Of(umpires), Around(0).ToDateTime(new(8 + dice.Next(12), 7)), Around(0).ToDateTime(new(21, 3)), Of(["plate", "base"]))] : [],
            Heat = In(3) ? new Dictionary<DateOnly, double> { [Around(0)] = Of([102.9, 103, 108.5]) } : new Dictionary<DateOnly, double>(),
        };
    }
}
