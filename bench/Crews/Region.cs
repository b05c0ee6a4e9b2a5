using System.Diagnostics;
using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.Demo;
using Umpirage.District.People;
using Umpirage.Solve.Crews;

namespace Umpirage.CrewsBench;

/// <summary>A weekend day of a region: twenty districts like the demonstration, each from a seed of its own, 66 games each; one after the other, each with its share of the time.</summary>
internal static class Region
{
    private static readonly DateOnly Saturday = new(2026, 5, 23);

    public static void Run(string root, UmpiresCodes codes, int districts, double seconds)
    {
        var tables = Plan.Read(name => File.ReadAllText(Path.Combine(root, "demo", "oslemoor", name)));
        var clock = Stopwatch.StartNew();
        var (games, required, filled, most, alone, unsafeOnes) = (0, 0, 0, 0, 0, 0);
        for (var d = 0; d < districts; d++)
        {
            var plan = CrewPlan.Of(Of([.. Oslemoor.Make(tables, (ulong)(20260516 + d))]), codes);
            var task = new CrewTask(plan, [.. plan.Games.Where(g => g.Day == Saturday).OrderBy(g => g.Start).ThenBy(g => g.Key, StringComparer.Ordinal)], Seconds: seconds);
            var result = CrewSearch.Find(task);
            var places = task.Games.Sum(g => g.Division.Crew);
            (games, required, filled, most) = (games + task.Games.Count, required + places, filled + places - result.Required.Count(), most + Forecast.Most(plan, task.Games));
            unsafeOnes += result.Recounted.Count(b => b.Hold != Hold.Wish);
            // without any borders: whoever is free that day and of an age to, as often as the day or the offer allows
            alone += plan.Officials.Where(p => p.Hours.Any(h => h.Day == DayOfWeek.Saturday)).Sum(p => (int)Math.Min(p.Official!.GamesAWeek, 3));
        }
        Console.WriteLine($"region: {districts} districts, {games} games, {required} places required, {filled} filled in {clock.Elapsed.TotalSeconds:0} s, {unsafeOnes} against safety or rules");
        Console.WriteLine($"  no plan within districts fills more than {most}; none with umpires lent freely more than {Math.Min(required, alone)}: at most {Math.Min(required, alone) - filled} lost to borders, distance and scope");
    }

    private static CrewRecords Of(List<object> all)
    {
        IReadOnlyList<T> Every<T>() => [.. all.OfType<T>()];
        return new()
        {
            Leagues = Every<League>(), Divisions = Every<Division>(), Teams = Every<Team>(), Parks = Every<Park>(), Diamonds = Every<Diamond>(), People = Every<Person>(), Roles = Every<RoleHeld>(),
            Officials = Every<Official>(), Clearances = Every<Clearance>(), Certificates = Every<Certificate>(), Hours = Every<Availability>(), Guardianships = Every<Guardianship>(), Approvals = Every<Approval>(),
            Interests = Every<Interest>(), Pairings = Every<Pairing>(), Homes = Every<HomePlace>(), Visits = Every<Visit>(), Games = Every<ScheduledGame>(), Assignments = Every<Assignment>(),
            Coordinations = Every<Coordination>(), Endings = Every<GameOver>(), Elsewhere = Every<ElsewhereGame>(),
        };
    }
}
