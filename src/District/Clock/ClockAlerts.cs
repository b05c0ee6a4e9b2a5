namespace Umpirage.District.Clock;

/// <summary>Finds what was done against the wait: told aloud, so that it is not done again.</summary>
internal static class ClockAlerts
{
    public static IReadOnlyList<string> Of(ClockFile clock, GameSoFar game, ClockRules rules)
    {
        var alerts = new List<string>();
        var playing = false;
        for (var i = 0; i < game.Events.Count; i++)
        {
            var e = game.Events[i];
            // a sign in the very minute in which play begins again counts, whichever line stands first
            var wait = StormWatch.EarliestRestart(game.Events.Where(o => o.At <= e.At), rules);
            if (e.Kind is ClockEventKind.FirstPitch or ClockEventKind.Resumed && wait is { } until && until > e.At) alerts.Add(ClockWords.TooSoon(e, clock.Told(e.At), clock.Told(until)));
            if (e.Kind is ClockEventKind.FirstPitch or ClockEventKind.Resumed) playing = true;
            if (e.Kind is ClockEventKind.Stopped or ClockEventKind.StoppedForGood) playing = false;
            if (playing && e.IsSign && wait > e.At && game.Events.Skip(i).All(o => o.At > e.At || o.Kind is not (ClockEventKind.Stopped or ClockEventKind.StoppedForGood)))
                alerts.Add(ClockWords.NotStopped(e, clock.Told(e.At)));
        }
        return alerts;
    }
}
