using System.Globalization;
using Umpirage.District.Pitchers;
using Umpirage.Rules.Ground;
using Umpirage.Store;

namespace Umpirage.Cli.Verbs;

/// <summary>Who may pitch on a day, team by team: how much is left, what it will cost, and what bars.</summary>
internal static class PitchersVerb
{
    private const string Form = "write: ./umpirage pitchers --on 2026-05-16 [--team TEAM] [--game GAME [--at-bat]] [--opponent]";

    public static int Run(Request request)
    {
        if (request.Words.FirstOrDefault() == "plan") return PitchingPlanVerb.Run(request with { Words = [.. request.Words.Skip(1)] });
        var options = new Options(request, ["--on", "--team", "--game"], ["--opponent", "--at-bat"]);
        var (on, team, game, opponent, underWay) = (options.Day("--on"), options.Text("--team"), options.Text("--game"), options.Has("--opponent"), options.Has("--at-bat"));
        if (options.Words.Count > 0 || (on is null && options.Faults.Count == 0)) options.Faults.Add("who pitches on which day?");
        if (options.Faulty(Form)) return Verb.Unusable;
        var faults = new List<string>();
        using var store = DistrictOf.Open(request, make: false);
        if (store is null) return Verb.Unusable;
        if (team is not null && store.Teams.Find(team) is null) faults.Add($"there is no team '{team}'; {Words.Offer(team, [.. store.Teams.Select(t => t.Key)])}");
        if (game is not null && store.Games.Find(game) is null) faults.Add($"there is no game '{game}'; {Words.Offer(game, [.. store.Games.Select(g => g.Key).Take(2000)])}");
        foreach (var fault in faults) Console.Error.WriteLine(fault);
        if (faults.Count > 0) return Verb.Unusable;
        IReadOnlyCollection<string>? teams = team is not null ? [team] : game is not null && store.Games.Find(game) is { } played ? [played.Visitor, played.Home] : null;
        var sheets = PitchingBook.Of(store, new(Library.Codes(request)), on!.Value, teams, game);
        // the batter of the last line on record is still at bat: asked anew for whoever has a line in this game
        if (underWay) sheets = [.. sheets.Select(s => s with { Arms = [.. s.Arms.Select(a => a.Ledger.Outings.LastOrDefault() is { } last && last.Game.Key == game && last.Day == on ? a with { Answer = a.Now(last.Most, true).Answer } : a)] })];
        if (request.Json) Json.Write(sheets.Select(s => new { team = s.Team.Key, game = s.Game?.Key, code = s.Code, arms = s.Arms.Select(a => Told(a, opponent)) }));
        else foreach (var sheet in sheets) Print(sheet, on.Value, opponent);
        return Verb.Fine;
    }

    private static object Told(Arm arm, bool opponent) => new
    {
        player = arm.Place.Player, name = arm.Name, jersey = arm.Place.Jersey, may = PitchingWords.Answer(arm.Answer), left = arm.Answer.Rooms.Where(r => r.Left is not null).Select(r => PitchingWords.Left(r)),
        next = arm.Answer.NextDay, bars = opponent ? [] : arm.Answer.Bars.Select(b => b.InWords), costs = opponent ? [] : arm.Costs.Select(PitchingWords.Cost), counts = opponent ? [] : arm.Answer.Disputed.Select(PitchingWords.Counts),
        advice = opponent ? [] : arm.Advice.Says.Select(b => b.InWords),
    };

    private static void Print(TeamArms sheet, DateOnly day, bool opponent)
    {
        Console.WriteLine($"{sheet.Team.Name} ({sheet.Team.Key}), {day.ToString("ddd d MMM yyyy", CultureInfo.InvariantCulture)}{(sheet.Game is { } g ? $", {g.Start:H:mm}, game {g.Key}" : ", no game")}; code {sheet.Code}");
        foreach (var arm in sheet.Arms)
        {
            Console.WriteLine($"  #{arm.Place.Jersey,-3}{arm.Name,-14} {PitchingWords.Line(arm.Answer)}");
            if (opponent) continue;
            foreach (var bar in arm.Answer.Bars) Console.WriteLine($"        {bar.InWords}");
            foreach (var outing in arm.Answer.Disputed) Console.WriteLine($"        {PitchingWords.Counts(outing)}{(arm.Answer.Depends ? "; the answer hangs on it" : "")}");
            if (arm.Answer.Rooms.Any(r => r.Used > 0)) foreach (var cost in arm.Costs) Console.WriteLine($"        {PitchingWords.Cost(cost)}");
            foreach (var advice in arm.Advice.Says) Console.WriteLine($"        advice: {advice.InWords}");
        }
        if (sheet.Arms.FirstOrDefault(a => a.Answer.Rooms.All(r => r.Used == 0) && a.Costs.Count > 0) is { } fresh)
            Console.WriteLine($"  a fresh arm, {string.Join("; ", fresh.Costs.Select(PitchingWords.Cost))}");
        Console.WriteLine($"  {Advice.Always}\n");
    }
}
