using Umpirage.District.Pitchers;
using Umpirage.Rules.Ground;
using Umpirage.Solve;
using Umpirage.Store;

namespace Umpirage.Cli.Verbs;

/// <summary>Who pitches how much in a team's coming games.</summary>
internal static class PitchingPlanVerb
{
    private const string Form = "write: ./umpirage pitchers plan --team TEAM --from 2026-05-18 --to 2026-05-24 [--likely GAME]... [--inning PITCHES]";

    public static int Run(Request request)
    {
        var options = new Options(request, ["--team", "--from", "--to", "--likely", "--inning"]);
        var (teamKey, first, last, likely) = (options.Text("--team"), options.Day("--from"), options.Day("--to"), options.All("--likely").ToHashSet());
        var inning = options.Count("--inning", 5, 40, "the pitches of an inning,") ?? PitchingPlanner.PitchesAnInning;
        if (options.Words.Count > 0) options.Faults.Add($"found '{options.Words[0]}'; allowed are options only");
        foreach (var missing in new[] { "--team", "--from", "--to" }.Where(o => options.Text(o) is null)) options.Faults.Add($"{missing} is missing");
        if (last < first) options.Faults.Add($"--to: found '{options.Text("--to")}'; it may not be before --from");
        if (options.Faulty(Form)) return Verb.Unusable;
        var (from, to) = (first!.Value, last!.Value);
        using var store = DistrictOf.Open(request, make: false);
        if (store is null) return Verb.Unusable;
        if (store.Teams.Find(teamKey) is not { } team) { Console.Error.WriteLine($"there is no team '{teamKey}'; {Words.Offer(teamKey!, [.. store.Teams.Select(t => t.Key)])}"); return Verb.Unusable; }

        var codes = new PitchingCodes(Library.Codes(request));
        var found = new List<Finding>();
        var games = PitchingBook.Coming(store, codes, teamKey!, from, to, key => !likely.Contains(key), found);
        List<string> coming = [.. games.Select(g => g.Game.Key)];
        foreach (var finding in found) Console.Error.WriteLine(finding);
        if (found.Count > 0) return Verb.Unusable;
        foreach (var unknown in likely.Where(l => !coming.Contains(l))) Console.Error.WriteLine($"--likely: '{unknown}' is no game of {teamKey} in these days; {Words.Offer(unknown, coming)}");
        if (games.Count == 0) { Console.Error.WriteLine($"{teamKey} has no game ahead from {CodeAddress.Day(from)} to {CodeAddress.Day(to)}"); return Verb.Unusable; }
        var arms = PitchingBook.Planned(store, codes, teamKey!, from);
        var plan = PitchingPlanner.Plan(teamKey!, [.. arms.Select(a => new Starter(a.Ledger, a.Own))], games, new(), inning);
        var names = arms.ToDictionary(a => a.Place.Player, a => $"#{a.Place.Jersey} {a.Name}");
        if (request.Json)
            Json.Write(new
            {
                team = teamKey, unit = plan.Unit.ToString().ToLowerInvariant(), step = plan.Step, proven = plan.Proven,
                games = plan.Games.Select(g => new { game = g.Game.Game.Key, day = CodeAddress.Day(g.Game.Day), certain = g.Game.Certain, demand = g.Demand, missing = g.Missing, loads = g.Loads.Select(l => new { l.Player, l.Amount, l.Edge }), notPitching = g.Out.Select(o => new { o.Player, o.Why }) }),
            });
        else Print(plan, names, team.Name, inning);
        return plan.Games.Any(g => g.Missing > 0) ? Verb.No : Verb.Fine;
    }

    private static void Print(PitchingPlan plan, Dictionary<string, string> names, string team, int inning)
    {
        Console.WriteLine($"{team}: an inning is taken to cost {inning} pitches; loads in steps of {plan.Step} {PitchingWords.Unit(plan.Unit, plan.Step)}; {(plan.Proven ? "proven the best of these" : "the best found in time")}");
        foreach (var game in plan.Games)
        {
            Console.WriteLine($"\n{PitchingWords.Day(game.Game.Day)} {game.Game.Game.Start / 60:00}:{game.Game.Game.Start % 60:00} {game.Game.Game.Key}{(game.Game.Certain ? "" : ", likely")}: {game.Demand} {PitchingWords.Unit(plan.Unit, game.Demand)} to cover");
            foreach (var load in game.Loads) Console.WriteLine($"  {names[load.Player],-20} {load.Amount,4}{(load.Edge is null ? "" : $"   near an edge: {load.Edge}")}");
            if (game.Missing == 0) continue;
            Console.WriteLine($"  {game.Missing} {PitchingWords.Unit(plan.Unit, game.Missing)} CANNOT BE COVERED");
            foreach (var (player, why) in game.Out) Console.WriteLine($"  {names[player],-20} {why}");
        }
        Console.WriteLine("\nLegal is not safe: whoever is tired or in pain does not pitch. What players pitch for other teams in these days is not in this plan.");
    }
}
