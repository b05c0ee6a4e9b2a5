using Umpirage.District.Calendar;
using Umpirage.District.Options;
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
        (request, var teamKey) = request.Option("--team");
        (request, var fromAs) = request.Option("--from");
        (request, var toAs) = request.Option("--to");
        (request, var inningAs) = request.Option("--inning");
        var likely = new HashSet<string>();
        for (; request.Option("--likely") is (var others, { } game); request = others) likely.Add(game);
        var faults = new List<string>();
        if (teamKey is null || request.Words.Count > 0) faults.Add(Form);
        if (!CodeAddress.TryDate(fromAs ?? "", out var from)) faults.Add($"--from is '{fromAs}'; write a day as 2026-05-18");
        if (!CodeAddress.TryDate(toAs ?? "", out var to)) faults.Add($"--to is '{toAs}'; write a day as 2026-05-24");
        if (to < from && faults.Count == 0) faults.Add($"--to is '{toAs}'; it may not be before --from");
        var inning = PitchingPlanner.PitchesAnInning;
        if (inningAs is not null && (!int.TryParse(inningAs, out inning) || inning is < 5 or > 40)) faults.Add($"--inning is '{inningAs}'; an inning may cost 5 to 40 pitches");
        foreach (var fault in faults) Console.Error.WriteLine(fault);
        if (faults.Count > 0) return Verb.Unusable;
        using var store = DistrictOf.Open(request, make: false);
        if (store is null) return Verb.Unusable;
        if (store.Teams.Find(teamKey) is not { } team) { Console.Error.WriteLine($"there is no team '{teamKey}'; {Words.Offer(teamKey!, [.. store.Teams.Select(t => t.Key)])}"); return Verb.Unusable; }

        var codes = new PitchingCodes(Library.Codes(request));
        var teams = store.Teams.ToDictionary(t => t.Key);
        var leagues = store.Leagues.ToDictionary(l => l.Key);
        var division = store.Divisions.Find(team.Division)!;
        var (start, end) = (from.ToDateTime(default), to.AddDays(1).ToDateTime(default));
        var coming = store.Games.Where(g => (g.Home == teamKey || g.Visitor == teamKey) && g.Start >= start && g.Start < end).AsEnumerable().Where(g => g.IsAhead).OrderBy(g => g.Start).ThenBy(g => g.Key, StringComparer.Ordinal).ToList();
        foreach (var unknown in likely.Where(l => coming.All(g => g.Key != l))) Console.Error.WriteLine($"--likely: '{unknown}' is no game of {teamKey} in these days; {Words.Offer(unknown, [.. coming.Select(g => g.Key)])}");
        if (coming.Count == 0) { Console.Error.WriteLine($"{teamKey} has no game ahead from {fromAs} to {toAs}"); return Verb.Unusable; }
        var found = new List<Finding>();
        var games = new List<ComingGame>();
        foreach (var game in coming)
            if (codes.Of(Governing.Code(codes.Book, division, leagues[teams[game.Home].League], leagues[teams[game.Visitor].League]), game.Day, found) is { } code)
                games.Add(new(new(game.Key, code.Code.Game, code.Code.Division, (int)game.Start.TimeOfDay.TotalMinutes), game.Day, code, !likely.Contains(game.Key)));
        foreach (var finding in found) Console.Error.WriteLine(finding);
        if (found.Count > 0) return Verb.Unusable;

        var arms = PitchingBook.Of(store, codes, from, [teamKey!], costs: false).SelectMany(s => s.Arms).ToList();
        // whoever has pitched on record; where nobody has, the whole roster
        if (arms.Any(a => a.Ledger.Outings.Count > 0)) arms = [.. arms.Where(a => a.Ledger.Outings.Any(o => o.Most.Pitches + o.Most.Innings + o.Most.Outs > 0))];
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
