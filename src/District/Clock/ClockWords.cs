using Umpirage.Rules.Ground;

namespace Umpirage.District.Clock;

/// <summary>The words of a clock's answers, in one place.</summary>
public static class ClockWords
{
    /// <summary>Where everybody goes, and where nobody does (NFHS sports medicine guideline, rev. Oct 2014 | published; own words).</summary>
    public const string Shelter =
        "Everybody leaves the field, the crew too: into an enclosed building or a hard-topped vehicle with its windows shut. Dugouts, sheds, open shelters and trees are no shelter.";

    /// <summary>What is written down while it is still known, for a game that may be finished later (OBR 7.02 (2024) | published; own words).</summary>
    public static IReadOnlyList<string> SuspendedGame { get; } =
        ["inning and half, outs, and the count on the batter", "runners and their bases", "score", "batter, and both batting orders with every change and re-entry", "pitchers and their pitch counts", "conferences, courtesy runners and warnings so far", "time on the clock"];

    internal static string Assuming(Moment again) => $"if play starts again at {again}";

    internal static string TooSoon(ClockEvent e, Moment at, Moment until) => $"{at} {e.Text}: too soon; with the signs and orders up to that minute nobody may be back before {until} (line {e.Line})";

    internal static string NotStopped(ClockEvent e, Moment at) => $"{at} {e.Text}: play was not stopped in that minute; it stops at the first sign (line {e.Line})";

    internal static string Score(string outcome, Runs? now, Runs? even) => outcome switch
    {
        "suspended" => $"suspended, not complete: the score{Told(now)} stays as it is until the game is finished",
        "result stands" => $"complete: the score{Told(now)} stands",
        "tied game" => $"complete and level{Told(now)}",
        "no game" => "no game: nothing of it counts, and it is played from the start",
        "score of the last even inning stands" => $"complete: the score of the last even inning{Told(even)} stands",
        _ => outcome,
    };

    internal static string Dark(ClockFile clock, SunEvent? sun, Moment? sunset, bool site) => (clock.Lit, clock.Dark, sun?.Case) switch
    {
        (true, null, _) => "the field is lit, and the site sets no cut-off",
        (true, _, _) => "the site's own cut-off; the field is lit",
        (_, not null, SunCase.Happens) => $"the earlier of the site's cut-off {clock.Told(clock.Dark!.Value)} and sunset {sunset}: {(site ? "the site's" : "sunset")}",
        (_, null, SunCase.Happens) => $"sunset at {clock.Spot}; the site sets no cut-off of its own",
        (_, null, SunCase.StaysAbove) => "the sun does not set there that day",
        (_, null, _) => "the sun does not rise there that day: no play without lights",
        (_, _, SunCase.StaysBelow) => "the site's own cut-off; but the sun does not rise there that day: no play without lights",
        _ => "the site's own cut-off; the sun does not set there that day",
    };

    internal static IReadOnlyList<string> DoNow(ClockReading r, bool over)
    {
        var now = new List<string>();
        var storm = r.Storm;
        if (storm.MustBeStopped)
        {
            if (r.State == PlayState.Playing) now.Add("Stop play at once.");
            if (r.State == PlayState.NotStarted) now.Add("Do not start.");
            now.Add(Shelter);
            now.Add(r.State == PlayState.StoppedForGood
                ? $"Nobody goes back onto the field before {storm.EarliestRestart}, not even to clear it."
                : $"Nobody goes back before {storm.EarliestRestart}, not even to look at the field; each new thunder or flash starts the full {storm.Wait} minutes anew. A site or an official may only make it longer.");
        }
        if (r.State == PlayState.StoppedForGood) { now.Add($"The game is stopped for good: {Words.Or(r.IfStoppedNow.Score)}."); return now; }
        if (over) { now.Add("The last inning is complete: the game is over."); return now; }
        var held = storm.MustBeStopped || r.Dark.AllDay || r.Dark.Minutes <= 0 || r.Dark.MinutesAtRestart <= 0 || r.Limit.HardStop?.At <= r.At.At || r.Heat.Any(h => h.Ruling.Is("play", "stops"));
        foreach (var heat in r.Heat)
        {
            if (heat.Ruling.Is("play", "stops")) now.Add($"Stop for heat: {heat.Measure} {Degrees.Tell(heat.Fahrenheit)} F is in the {heat.Band} band.");
            else now.Add($"Heat: {heat.Measure} {Degrees.Tell(heat.Fahrenheit)} F, {heat.Band}{(heat.ToNext is { } next ? $", {next}" : "")}: {string.Join("; ", heat.Ruling.Ruling)}.{(heat.Ruling.AskNext is { } ask ? " Ask: " + ask : "")}");
        }
        if (r.Dark.AllDay) now.Add("The sun does not rise there that day, and the field is not lit: no play.");
        else if (r.Dark.Minutes <= 0) now.Add($"It is past {r.Dark.At}, the dark cut-off: no more play on this field today.");
        else if (r.Dark.MinutesAtRestart <= 0) now.Add($"Play cannot start again before the dark cut-off {r.Dark.At}: no more play on this field today.");
        if (r.Limit.HardStop is { } hard && hard.At <= r.At.At) now.Add($"The hard stop was at {hard}: play stops where it is. {Ruled(r)}");
        else if (r.Limit.LastNewInning is { } last && last.At < r.At.At) now.Add($"{(r.Limit.OneMoreInning ? $"The time was up at {last}; the inning under way then is finished and one more is played." : $"No new inning since {last}.")} {Ruled(r)}");
        else if (r.Limit.OnlyThisInningAtRestart) now.Add($"The time is up at {r.Limit.LastNewInning}; play cannot start again before {r.Storm.EarliestRestart ?? r.At}, so only the inning under way{(r.Limit.OneMoreInning ? " and one more" : "")} may be finished.");
        if (!held && r.State == PlayState.Stopped)
            now.Add($"Play may start again only when the field is fit, nobody in charge says stop, and nothing new is heard or seen{(storm.EarliestRestart is { } was ? $"; the wait was over at {was}" : "")}.");
        if (now.Count == 0) now.Add(r.State == PlayState.NotStarted ? "Nothing stands against the start." : "Play on.");
        return now;
    }

    internal static IReadOnlyList<string> ToNote(ClockReading r, IReadOnlyList<string> noted) =>
        r.State is PlayState.Stopped or PlayState.StoppedForGood || r.Storm.MustBeStopped ? [.. SuspendedGame, .. noted.Select(n => "noted: " + n)] : [.. noted.Select(n => "noted: " + n)];

    private static string Ruled(ClockReading r) => r.Limit.Ruling is { } ruling ? $"{string.Join("; ", ruling.Ruling)}. {string.Join(" ", ruling.DoNow)}".Trim() : "";

    private static string Told(Runs? runs) => runs is null ? "" : $" {runs}";
}
