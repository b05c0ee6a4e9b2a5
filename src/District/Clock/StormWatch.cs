using NodaTime;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clock;

/// <summary>The wait after thunder and lightning at one moment.</summary>
/// <param name="LastSign">The last thunder, flash or warning that counts, or the stop that was ordered for one; null when there was none.</param>
/// <param name="EarliestRestart">Nobody is back before it; null when nothing asks for a wait. It can only ever move later.</param>
/// <param name="MustBeStopped">True until that moment, whether or not play was stopped.</param>
/// <param name="Ruling">The sheet 'lightning' on this moment; null without a sign.</param>
public sealed record StormReading(int Wait, Moment? LastSign, Moment? EarliestRestart, bool MustBeStopped, SheetRuling? Ruling);

/// <summary>Keeps the wait: the full time after the last sign, each new sign starts it anew, and whoever is in charge may only add to it.</summary>
internal static class StormWatch
{
    /// <summary>The latest end of every wait that was begun, and of every "not before". More events never make it earlier.</summary>
    public static Instant? EarliestRestart(IEnumerable<ClockEvent> events, ClockRules rules)
    {
        Instant? latest = null;
        var list = events.ToList();
        foreach (var sign in Signs(list, rules)) latest = Later(latest, sign.At + Duration.FromMinutes(rules.Wait));
        foreach (var added in list.Where(e => e.Until is not null)) latest = Later(latest, added.Until!.Value);
        return latest;
    }

    /// <summary>
    /// Thunder, flashes, warnings, and stops for a storm or by order, which begin a wait of their own. A flash in the clouds that does not stop
    /// play under this code counts once any of the others came before it.
    /// </summary>
    private static IEnumerable<ClockEvent> Signs(IReadOnlyList<ClockEvent> events, ClockRules rules)
    {
        var cloudsStop = rules.Lightning.Sheet.Values.Any(v => Words.Same(v.Key.Name, "flash in the clouds") && v.Value.Value == "stops play");
        var starters = events.Where(e => (e.IsSign && (cloudsStop || e.Kind != ClockEventKind.FlashInTheClouds)) || e is { Kind: ClockEventKind.Stopped, Reason: StopReason.Storm or StopReason.Ordered }).ToList();
        return events.Where(e => starters.Contains(e) || (e.IsSign && starters.Any(s => s.At <= e.At)));
    }

    public static StormReading Read(ClockFile clock, GameSoFar game, ClockRules rules, List<Finding> findings)
    {
        var restart = EarliestRestart(game.Events, rules);
        var last = Signs(game.Events, rules).MaxBy(e => e.At);
        var must = restart > game.At;
        return new(rules.Wait, last is null ? null : clock.Told(last.At), restart is { } r ? clock.Told(r) : null, must, last is null ? null : Rule(game, rules, last, must, findings));
    }

    private static SheetRuling Rule(GameSoFar game, ClockRules rules, ClockEvent last, bool must, List<Finding> findings)
    {
        var stopped = game.OpenStop is not null || game.Ended is not null;
        // until play is stopped the sign is as good as now
        var now = last.At == game.At || (must && !stopped && last.At + Duration.FromMinutes(rules.Wait) > game.At);
        var minutes = now ? 0 : Math.Min(600, (int)Math.Floor((game.At - last.At).TotalMinutes));
        List<string> given = [$"sign now is {(now && last.Reason != StopReason.Ordered ? Word(last) : "none")}", $"play now is {(stopped ? "stopped for the storm" : "going on")}", $"minutes since the last sign is {minutes}"];
        if (game.FieldFit is { } fit) given.Add($"field is {(fit ? "fit for play" : "not fit")}");
        // whatever holds the game longer than the sheet's own wait counts as an order to stop
        if ((must && !now) || (now && last.Reason == StopReason.Ordered)) given.Add("someone in charge says is stop");
        return SheetRuling.Of(rules.Lightning, given, findings);
    }

    private static string Word(ClockEvent sign) => sign.Kind switch
    {
        ClockEventKind.FlashToTheGround => "flash seen to the ground", ClockEventKind.FlashInTheClouds => "flash seen in the clouds", ClockEventKind.DetectorWarning => "warning from a detector",
        _ => "thunder heard",
    };

    private static Instant? Later(Instant? a, Instant b) => a is { } known && known > b ? known : b;
}
