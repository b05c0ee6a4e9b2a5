using System.Diagnostics;
using Umpirage.District.Calendar;
using Umpirage.District.Demo;
using Umpirage.District.People;
using Umpirage.District.Pitchers;
using Umpirage.Solve;

namespace Umpirage.Bench;

/// <summary>The demonstration's season held against every constraint, beside two nested loops over its games for one of them; and its wet night re-planned.</summary>
internal static class ScheduleBench
{
    public static void Run()
    {
        var records = Oslemoor.Make(Plan.Read(name => File.ReadAllText(Path.Combine(Shelf.Root, "demo", "oslemoor", name)))).ToList();
        Dictionary<string, T> By<T>(Func<T, string> key) => records.OfType<T>().ToDictionary(key);
        List<ScheduledGame> games = [.. records.OfType<ScheduledGame>()];
        var book = Shelf.Read();
        Surroundings World()
        {
            var rules = new CalendarCodes(book, By<League>(l => l.Key));
            var divisions = By<Division>(d => d.Key);
            return new()
            {
                Rules = rules, Divisions = divisions, Teams = By<Team>(t => t.Key), Parks = By<Park>(p => p.Key), Diamonds = By<Diamond>(d => d.Key), Blackouts = [.. records.OfType<Blackout>()],
                Sunset = Sunsets.In(Oslemoor.Facts.Zone), Staff = new(rules, divisions, games, records.OfType<RosterPlace>(), records.OfType<Appearance>()),
            };
        }
        List<ScheduledGame> planned = [.. games.Select(g => g with { Status = GameStatus.Planned })];
        var watch = Stopwatch.StartNew();
        var broken = Checking.Of(new(World(), planned)).Count(v => v.Hard);
        Console.WriteLine($"a season of {planned.Count} games, {Checking.Constraints.Count} constraints, codes, sun and ledgers worked out anew: {watch.ElapsedMilliseconds} ms, {broken} broken");
        var world = World();
        Console.WriteLine($"the same again, with what is known: {Shelf.Median(5, () => Checking.Of(new(world, planned))):0} ms; one constraint alone by two nested loops over all games: {Shelf.Median(3, () => Overlaps(planned)):0} ms");

        var season = new Schedule(world, games);
        DateOnly thursday = new(2026, 5, 21);
        string[] waiting = [.. games.Where(g => g.Status == GameStatus.RainedOut && g.Start < Oslemoor.Now).OrderByDescending(g => g.Start).ThenBy(g => g.Key, StringComparer.Ordinal).Take(9).Select(g => g.Key)];
        watch.Restart();
        var plan = Replanner.Plan(Replanning.Of(season, [new(BlackoutOf.District, DistrictFacts.Only, thursday, thursday, "rain")], Oslemoor.Now, waiting), new());
        Console.WriteLine($"a wet night: {plan.Moves.Count} games moved, at least {plan.AtLeast} have to, {(plan.Proven ? "proven" : "not proven")}, {plan.Without.Count} without a place, {watch.Elapsed.TotalSeconds:0.0} s");
    }

    private static int Overlaps(List<ScheduledGame> games)
    {
        var found = 0;
        foreach (var a in games) foreach (var b in games) if (a.Key != b.Key && a.Diamond == b.Diamond && a.Start <= b.Start && b.Start < a.Start.AddHours(2)) found++;
        return found;
    }
}
