using System.Diagnostics;
using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.Demo;
using Umpirage.District.People;
using Umpirage.Solve.Crews;

namespace Umpirage.CrewsBench;

/// <summary>A weekend day of a region: twenty districts like the demonstration, each from a seed of its own, 66 games each; crewed two districts at a time, and once more after rain.</summary>
internal static class Region
{
    private static readonly DateOnly Saturday = new(2026, 5, 23);
    private static readonly DateOnly[] Evenings = [.. Enumerable.Range(2, 5).Select(Saturday.AddDays)];

    /// <summary>Games that a district loses to the rain, and the hour from which it rains.</summary>
    private const int Wet = 27, RainFrom = 11;

    private static readonly TimeOnly Early = new(17, 45), Late = new(20, 0);

    private sealed record District(CrewRecords Records, CrewPlan Plan, CrewResult Result);

    public static void Run(string root, UmpiresCodes codes, int districts, double seconds, double afterRain)
    {
        var tables = Plan.Read(name => File.ReadAllText(Path.Combine(root, "demo", "oslemoor", name)));
        var made = Enumerable.Range(0, districts).Select(d => Of([.. Oslemoor.Make(tables, Oslemoor.Seed + (ulong)d)])).ToArray();
        var clock = Stopwatch.StartNew();
        var crewed = TwoAtATime(made, records =>
        {
            var plan = CrewPlan.Of(records, codes);
            return new District(records, plan, CrewSearch.Find(new CrewTask(plan, GamesOf(plan, Saturday), Seconds: seconds, Workers: 1)));
        });
        var took = clock.Elapsed.TotalSeconds;
        var games = crewed.Sum(c => GamesOf(c.Plan, Saturday).Count);
        var required = crewed.Sum(c => GamesOf(c.Plan, Saturday).Sum(g => g.Division.Crew));
        var filled = required - crewed.Sum(c => c.Result.Required.Count());
        Console.WriteLine($"region: {districts} districts, {games} games, {required} places required, {filled} filled in {took:0} s, {crewed.Sum(c => c.Result.NoUmpire.Count())} games without an umpire; {Against(crewed.Select(c => (c.Result.Plan, Saturday)))}");
        var within = crewed.Sum(c => Forecast.Most(c.Plan, GamesOf(c.Plan, Saturday)));
        clock.Restart();
        var lent = Lent.Most([.. crewed.Select(c => (c.Plan, GamesOf(c.Plan, Saturday)))]);
        Console.WriteLine($"  no plan within districts fills more than {within}: {within - filled} lost by the search at most; with umpires lent from any district to any other without travel no plan fills more than {lent}: {lent - filled} lost at most to borders, travel, coordinators and the search (bound worked out in {clock.Elapsed.TotalSeconds:0} s)");

        clock.Restart();
        var after = TwoAtATime(crewed, c => Rained(c, codes, afterRain));
        took = clock.Elapsed.TotalSeconds;
        Console.WriteLine($"rain-out: {after.Sum(a => a.Moved + a.Off)} games, {after.Sum(a => a.Moved)} moved to an evening of the week after, {after.Sum(a => a.Off)} without a place there called off; {after.Sum(a => a.Games)} games crewed again in {took:0} s, {after.Sum(a => a.Required - a.Result.Required.Count())} of {after.Sum(a => a.Required)} places filled (no plan fills more than {after.Sum(a => a.Most)}), {after.Sum(a => a.Result.NoUmpire.Count())} games without an umpire; "
            + Against(after.SelectMany(a => Evenings.Prepend(Saturday).Select(day => (a.Result.Plan, day)))));
        Console.WriteLine($"  of {after.Sum(a => a.Published)} published places in games that stay on Saturday {after.Sum(a => a.Published - a.Changed)} keep their umpire");
    }

    private static TOut[] TwoAtATime<TIn, TOut>(TIn[] all, Func<TIn, TOut> each)
    {
        var done = new TOut[all.Length];
        Parallel.For(0, all.Length, new() { MaxDegreeOfParallelism = 2 }, i => done[i] = each(all[i]));
        return done;
    }

    private static List<CrewGame> GamesOf(CrewPlan plan, DateOnly day) => [.. plan.Games.Where(g => g.Day == day && g.Division.Crew > 0).OrderBy(g => g.Start).ThenBy(g => g.Key, StringComparer.Ordinal)];

    private static string Against(IEnumerable<(CrewPlan Plan, DateOnly Day)> plans)
    {
        var breaches = plans.SelectMany(p => CrewCheck.All(p.Plan).Where(b => p.Plan.Game(b.Game)!.Day == p.Day)).ToList();
        return $"the check finds {breaches.Count(b => b.Hold == Hold.Safety)} against safety, {breaches.Count(b => b.Hold == Hold.Rule)} against rules";
    }

    private sealed record Rain(int Moved, int Off, int Games, int Required, int Most, int Published, int Changed, CrewResult Result);

    /// <summary>
    /// The first games after the rain begins go to the evenings of the week after, in turn: a free diamond of their size, lit for the late hour, both teams
    /// free that day, the youngest not late. What finds no place is called off. Then what stays of Saturday and what was moved are crewed again.
    /// </summary>
    private static Rain Rained(District district, UmpiresCodes codes, double seconds)
    {
        var wet = GamesOf(district.Plan, Saturday).Where(g => g.Start.Hour >= RainFrom).Take(Wet).ToList();
        var taken = district.Plan.Games.Where(g => Evenings.Contains(g.Day)).Select(g => g.Game).ToList();
        var changed = new Dictionary<string, ScheduledGame>();
        foreach (var (game, turn) in wet.Select((g, i) => (g, i)))
        {
            bool Free(ScheduledGame to) => !taken.Any(o => o.Start.Date == to.Start.Date && ((o.Diamond == to.Diamond && Math.Abs((o.Start - to.Start).TotalMinutes) < 120) || new[] { o.Home, o.Visitor }.Intersect([to.Home, to.Visitor]).Any()));
            var places = from evening in Enumerable.Range(0, Evenings.Length).Select(i => Evenings[(turn + i) % Evenings.Length])
                         from hour in game.Division.YouthBase ? [Early] : new[] { Early, Late }
                         from diamond in district.Records.Diamonds.Where(d => d.BasePath == game.Diamond.BasePath && (d.Lit || hour == Early)).OrderBy(d => d.Key == game.Diamond.Key ? 0 : 1)
                         select game.Game with { Diamond = diamond.Key, Start = evening.ToDateTime(hour), Status = GameStatus.Moved, Sequence = game.Game.Sequence + 1 };
            var to = places.FirstOrDefault(Free);
            changed[game.Key] = to ?? game.Game with { Status = GameStatus.RainedOut };
            if (to is not null) taken.Add(to);
        }
        var published = district.Result.Plan.Assignments(GamesOf(district.Plan, Saturday)).ToDictionary(a => (a.Game, a.Place));
        var records = district.Records with
        {
            Games = [.. district.Records.Games.Select(g => changed.GetValueOrDefault(g.Key, g))],
            Assignments = [.. district.Records.Assignments.Select(a => published.GetValueOrDefault((a.Game, a.Place), a))],
        };
        var plan = CrewPlan.Of(records, codes);
        var stays = GamesOf(plan, Saturday);
        List<CrewGame> games = [.. stays, .. changed.Values.Where(g => g.Status == GameStatus.Moved).Select(g => plan.Game(g.Key)!)];
        var result = CrewSearch.Find(new CrewTask(plan, games, Seconds: seconds, Workers: 1));
        var kept = stays.Select(g => g.Key).ToHashSet();
        return new(changed.Values.Count(g => g.Status == GameStatus.Moved), changed.Values.Count(g => g.Status == GameStatus.RainedOut), games.Count, games.Sum(g => g.Division.Crew), Forecast.Most(plan, games),
            stays.Sum(g => plan.CrewOf(g).Count), result.Changes.Count(c => c.From is not null && kept.Contains(c.Game.Key)), result);
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
