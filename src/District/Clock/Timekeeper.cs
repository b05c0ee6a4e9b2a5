using NodaTime;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clock;

/// <summary>Reads a game's clock at a moment: the verb of this room.</summary>
public static class Timekeeper
{
    /// <summary>The reading; null, with findings, when the file lacks what the code's clock starts from. Only events up to <paramref name="at"/> count.</summary>
    public static ClockReading? Read(ClockFile clock, ClockRules rules, Codebook book, Instant at, List<Finding> findings)
    {
        var before = findings.Count;
        var game = GameSoFar.Upto(clock, at);
        var watch = new Stopwatch(StartOf(clock, game, rules, findings), game, rules.WeatherStopsTheClock);
        var state = game.Ended is not null ? PlayState.StoppedForGood : game.FirstPitch is null ? PlayState.NotStarted : game.OpenStop is not null ? PlayState.Stopped : PlayState.Playing;
        var storm = StormWatch.Read(clock, game, rules, findings);
        var again = storm.EarliestRestart is { } restart ? Instant.Max(restart.At, at) : at;
        var outcome = Innings.IfStopped(game, rules, findings);
        var limit = LimitOf(clock, game, rules, watch, again, outcome, findings);
        var dark = DarkOf(clock, at, state, again);
        var heat = HeatOf(clock, game, book, findings);
        if (findings.Count > before) return null;
        var reading = new ClockReading(rules.Code.Address.ToString(), clock.Told(at), state, game.Half.ToString(), game.Now?.ToString(), limit, storm, dark, outcome, heat, ClockAlerts.Of(clock, game, rules), [], [], rules.Sources,
            [.. new[] { Cautions.Storm, clock.Lit ? null : Cautions.Dark, heat.Count > 0 ? Cautions.Heat : null, Cautions.Advice }.OfType<string>()]);
        return reading with { DoNow = ClockWords.DoNow(reading, Innings.IsOver(game, rules, findings)), ToNote = ClockWords.ToNote(reading, [.. game.Events.Where(e => e.Kind == ClockEventKind.Note).Select(e => $"{clock.Told(e.At)} {e.Text}")]) };
    }

    private static Instant? StartOf(ClockFile clock, GameSoFar game, ClockRules rules, List<Finding> findings)
    {
        void Missing(string what) => findings.Add(new(FindingKind.BlankCell, clock.File, 0, $"under {rules.Code.Address} the clock starts at {what}, and the file does not tell it; add '{(rules.StartsAt == ClockStart.ScheduledTime ? "scheduled: 17:30" : "17:28 plate meeting over")}'"));
        switch (rules.StartsAt)
        {
            case ClockStart.ScheduledTime:
                if (clock.Scheduled is null) Missing("the scheduled time");
                return clock.Scheduled;
            case ClockStart.PlateMeeting:
                if (game.PlateMeeting is null && game.FirstPitch is not null) Missing("the end of the plate meeting");
                return game.PlateMeeting?.At;
            default: return game.FirstPitch?.At;
        }
    }

    private static LimitReading LimitOf(ClockFile clock, GameSoFar game, ClockRules rules, Stopwatch watch, Instant again, StopOutcome outcome, List<Finding> findings)
    {
        Moment? Told(Instant? moment) => moment is { } at ? clock.Told(at) : null;
        var (last, hard) = (rules.NoNewInningAfter is { } l ? watch.Reaches(l, again) : null, rules.HardStopAfter is { } h ? watch.Reaches(h, again) : null);
        var onClock = Minutes(watch.OnClock);
        var assuming = watch.IsHeld && (last > game.At || hard > game.At) ? ClockWords.Assuming(clock.Told(again)) : null;
        return new(Told(watch.Start), Minutes(watch.Played), onClock, rules.NoNewInningAfter, rules.OneMoreInning, rules.NoNewInningAfter - onClock, Told(last), Told(hard), assuming,
            game.OpenStop is not null && last < again, game.FirstPitch is null ? null : Innings.TimeLimit(game, rules, last, hard, outcome, findings));
    }

    private static DarkReading DarkOf(ClockFile clock, Instant at, PlayState state, Instant again)
    {
        var sun = clock.Lit ? null : Almanac.Day(clock.Spot, clock.Date).Set;
        // a minute that has begun to be dark is dark: seconds are dropped, which is earlier
        var sunset = sun?.At is { } set ? Instant.FromUnixTimeSeconds(set.ToUnixTimeSeconds() / 60 * 60) : (Instant?)null;
        var dark = clock.Dark is { } own && sunset is { } down ? Instant.Min(own, down) : clock.Dark ?? sunset;
        var because = ClockWords.Dark(clock, sun, sunset is { } s ? clock.Told(s) : null, dark == clock.Dark && clock.Dark is not null);
        var allDay = sun?.Case == SunCase.StaysBelow;
        if (dark is not { } when) return new(null, because, allDay, null, null);
        return new(clock.Told(when), because, allDay, Minutes(when - at), state is PlayState.Stopped or PlayState.NotStarted || again > at ? Minutes(when - again) : null);
    }

    private static List<HeatAnswer> HeatOf(ClockFile clock, GameSoFar game, Codebook book, List<Finding> findings)
    {
        var today = new DateOnly(clock.Date.Year, clock.Date.Month, clock.Date.Day);
        List<HeatAnswer?> answers = [];
        if (game.LastHeat is { } heat) answers.Add(HeatWatch.Rule(book, clock.Address, heat.Heat!, today, findings));
        if (game.LastGlobe is { } globe)
        {
            var hours = game.FirstPitch is { } first ? [$"hours played is {Math.Min(600, Minutes(game.At - first.At))}"] : Array.Empty<string>();
            answers.Add(HeatWatch.Rule(book, clock.Address, globe.Globe!, today, findings, hours));
        }
        return [.. answers.OfType<HeatAnswer>()];
    }

    /// <summary>Whole minutes, dropped downwards: less time left is the stricter reading.</summary>
    private static int Minutes(Duration duration) => (int)Math.Floor(duration.TotalMinutes);
}
