using NodaTime;

namespace Umpirage.District.Clock;

/// <summary>A stop of play; <paramref name="To"/> is null while it lasts.</summary>
internal sealed record Stop(ClockEvent Event, Instant From, Instant? To);

/// <summary>The events of a clock up to a moment, folded: halves, score, stops.</summary>
internal sealed class GameSoFar
{
    private bool told;

    private GameSoFar() { }

    public required Instant At { get; init; }
    public required IReadOnlyList<ClockEvent> Events { get; init; }
    public ClockEvent? FirstPitch { get; private set; }
    public ClockEvent? PlateMeeting { get; private set; }
    public ClockEvent? Ended { get; private set; }
    public ClockEvent? LastHalf { get; private set; }
    public List<Stop> Stops { get; } = [];
    /// <summary>The score as last told; 0-0 before any half is over; null when nobody told it.</summary>
    public Runs? Now { get; private set; } = new(0, 0);
    /// <summary>The score when both sides had last had the same number of turns; null when nobody told it.</summary>
    public Runs? AtLastEven { get; private set; } = new(0, 0);
    public ClockEvent? LastHeat { get; private set; }
    public ClockEvent? LastGlobe { get; private set; }
    public bool? FieldFit { get; private set; }

    public Stop? OpenStop => Ended is null && Stops is [.., { To: null } open] ? open : null;

    public HalfInning Half => LastHalf?.Half!.Next ?? HalfInning.First;

    /// <summary>Innings that both sides have completed.</summary>
    public int Completed => LastHalf?.Half is { } half ? half.Bottom ? half.Inning : half.Inning - 1 : 0;

    /// <summary>Whether anything of play is told after the last half-inning was over.</summary>
    public bool PlayedSince { get; private set; }

    public static GameSoFar Upto(ClockFile clock, Instant at)
    {
        var game = new GameSoFar { At = at, Events = [.. clock.Events.Where(e => e.At <= at)] };
        foreach (var e in game.Events) game.Take(e);
        return game;
    }

    /// <summary>The half-inning that was under way at a moment, and whether its inning had begun by then.</summary>
    public (HalfInning Half, bool Begun) HalfAt(Instant moment, bool beginsAtTheLastOut)
    {
        var over = Events.LastOrDefault(e => e.Kind == ClockEventKind.HalfOver && e.At <= moment)?.Half;
        var half = over?.Next ?? HalfInning.First;
        var begun = half.Bottom || over is null || beginsAtTheLastOut || Events.Any(e => e.Kind == ClockEventKind.InningBegins && e.At <= moment && e.Half!.Inning >= half.Inning);
        return (half, begun);
    }

    private void Take(ClockEvent e)
    {
        switch (e.Kind)
        {
            case ClockEventKind.FirstPitch: FirstPitch ??= e; break;
            case ClockEventKind.PlateMeetingOver: PlateMeeting ??= e; break;
            case ClockEventKind.StoppedForGood: Ended ??= e; break;
            case ClockEventKind.Stopped: Stops.Add(new(e, e.At, null)); break;
            case ClockEventKind.Resumed when Stops is [.., { To: null } open]: Stops[^1] = open with { To = e.At }; break;
            case ClockEventKind.FieldFit: FieldFit = true; break;
            case ClockEventKind.FieldNotFit: FieldFit = false; break;
            // two readings at one minute: the hotter counts
            case ClockEventKind.Heat: if (LastHeat is null || LastHeat.At < e.At || LastHeat.Heat!.Exact < e.Heat!.Exact) LastHeat = e; break;
            case ClockEventKind.Globe: if (LastGlobe is null || LastGlobe.At < e.At || LastGlobe.Globe!.Exact < e.Globe!.Exact) LastGlobe = e; break;
            case ClockEventKind.InningBegins: PlayedSince = true; break;
            case ClockEventKind.Score: Score(e.Runs!); PlayedSince = true; break;
            case ClockEventKind.HalfOver: HalfOver(e); break;
        }
    }

    private void Score(Runs runs) => (Now, told) = (runs, true);

    private void HalfOver(ClockEvent e)
    {
        if (e.Runs is { } runs) Score(runs);
        if (!told) Now = null; // a half was played and nobody told its runs
        var skipped = e.Half!.CompareTo(Half) != 0;
        LastHalf = e;
        PlayedSince = false;
        if (e.Half.Bottom) AtLastEven = Now;
        else if (skipped) AtLastEven = e.Half.Inning == 1 ? new(0, 0) : null;
    }
}
