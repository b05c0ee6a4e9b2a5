using Umpirage.Rules.Ground;

namespace Umpirage.District.Clock;

/// <summary>
/// Finds events of a clock that cannot all be true. What should not have happened but may have (play started again too soon) is no fault of the
/// file: the reading tells it.
/// </summary>
internal static class ClockCheck
{
    public static void Check(ClockFile clock, List<Finding> findings)
    {
        void Fault(ClockEvent e, string message) => findings.Add(new(FindingKind.ImpossiblePlay, clock.File, e.Line, message));
        ClockEvent? first = null, meeting = null, stopped = null, ended = null;
        (HalfInning Half, ClockEvent Event)? last = null;
        Runs runs = new(0, 0);
        foreach (var e in clock.Events)
        {
            var at = clock.Told(e.At);
            if (e.Kind == ClockEventKind.PlateMeetingOver && meeting is { } twice) Fault(e, $"the plate meeting is over here and in line {twice.Line}; it may end once");
            if (e.Kind == ClockEventKind.FirstPitch && first is { } earlier) Fault(e, $"the first pitch is at {at} here and at {clock.Told(earlier.At)} in line {earlier.Line}; it may be once");
            if (e.Kind == ClockEventKind.PlateMeetingOver && first is { } thrown) Fault(e, $"the plate meeting is over at {at}, after the first pitch in line {thrown.Line}; it may only be before");
            if (OfPlay(e) && first is null && e.Kind != ClockEventKind.StoppedForGood) Fault(e, $"'{e.Text}' at {at} stands before any first pitch; write the first pitch, or a later time here");
            if (OfPlay(e) && ended is { } end) Fault(e, $"'{e.Text}' at {at} stands after the game was stopped for good in line {end.Line}; nothing of play may follow");
            if (e.Kind == ClockEventKind.Stopped && stopped is { } still) Fault(e, $"play is stopped at {at}, but it was stopped already in line {still.Line}; write when it was resumed between them");
            if (e.Kind == ClockEventKind.Resumed && stopped is null && first is not null) Fault(e, $"play is resumed at {at}, but it was not stopped; write when it was stopped, at an earlier minute");
            if (stopped is { } pause && e.Kind is ClockEventKind.HalfOver or ClockEventKind.Score or ClockEventKind.InningBegins)
                Fault(e, $"'{e.Text}' at {at} stands while play was stopped (line {pause.Line}); it may stand before the stop or after play is resumed");
            if (e.Kind == ClockEventKind.NotBefore && e.Until <= e.At) Fault(e, $"'{e.Text}' is said at {at}; the moment must be later, since a wait is only ever made longer");
            if (e.Half is { } half && last is { } before && Behind(e, half, before.Half))
                Fault(e, $"'{e.Text}' at {at} comes after {before.Half} was over (line {before.Event.Line}); innings go forward");
            if (e.Runs is { } now && (now.Visitors < runs.Visitors || now.Home < runs.Home))
                Fault(e, $"the score {now} at {at} is less than {runs} before; visitors stand first; where a run was taken back, mend the earlier line");

            if (e.Kind == ClockEventKind.PlateMeetingOver) meeting ??= e;
            if (e.Kind == ClockEventKind.FirstPitch) first ??= e;
            if (e.Kind == ClockEventKind.StoppedForGood) ended ??= e;
            if (e.Kind == ClockEventKind.Stopped) stopped = e;
            if (e.Kind == ClockEventKind.Resumed) stopped = null;
            if (e is { Kind: ClockEventKind.HalfOver, Half: { } over }) last = (over, e);
            if (e.Runs is { } told) runs = told;
        }
    }

    /// <summary>A half over twice, or an inning that begins although it or a later one was over.</summary>
    private static bool Behind(ClockEvent e, HalfInning half, HalfInning over) => e.Kind == ClockEventKind.InningBegins ? half.Inning <= over.Inning : half.CompareTo(over) <= 0;

    private static bool OfPlay(ClockEvent e) => e.Kind is ClockEventKind.InningBegins or ClockEventKind.Score or ClockEventKind.HalfOver or ClockEventKind.Resumed or ClockEventKind.Stopped or ClockEventKind.StoppedForGood;
}
