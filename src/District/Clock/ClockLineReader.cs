using System.Globalization;
using System.Text.RegularExpressions;
using NodaTime;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clock;

/// <summary>Reads one line of a clock file: a time, and what happened then.</summary>
internal static partial class ClockLineReader
{
    private static readonly (string Words, ClockEventKind Kind)[] Bare =
    [
        ("plate meeting over", ClockEventKind.PlateMeetingOver), ("first pitch", ClockEventKind.FirstPitch), ("thunder", ClockEventKind.Thunder), ("flash", ClockEventKind.FlashToTheGround),
        ("flash to the ground", ClockEventKind.FlashToTheGround), ("flash in the clouds", ClockEventKind.FlashInTheClouds), ("detector warning", ClockEventKind.DetectorWarning),
        ("play resumed", ClockEventKind.Resumed), ("field fit", ClockEventKind.FieldFit), ("field not fit", ClockEventKind.FieldNotFit), ("stopped for good", ClockEventKind.StoppedForGood),
    ];

    private static readonly (string Words, StopReason Reason)[] Reasons =
    [
        ("storm", StopReason.Storm), ("rain", StopReason.Rain), ("heat", StopReason.Heat), ("ordered", StopReason.Ordered), ("dark", StopReason.Dark), ("injury", StopReason.Injury), ("other", StopReason.Other),
    ];

    /// <summary>The other forms, as told when a line cannot be read.</summary>
    private static readonly string[] Forms =
    [
        .. Bare.Select(b => b.Words), "inning 1 begins", "inning 1 top over", "inning 1 top over, 2-0", "score 2-0", "play stopped: storm", "not before 19:40", "heat 94 F 50 %", "globe 78 F 110 F 94 F", "note words",
    ];

    [GeneratedRegex(@"^(?<time>(?:\d{4}-\d\d-\d\d )?\d[\d:]*(?:[+-]\d\d:\d\d)?)(?: (?<what>.+))?$")]
    private static partial Regex Timed();

    [GeneratedRegex(@"^inning (?<inning>\d{1,2}) (?<half>top|bottom) over(?:,? (?:score )?(?<visitors>\d{1,3})-(?<home>\d{1,3}))?$", RegexOptions.IgnoreCase)]
    private static partial Regex HalfOver();

    [GeneratedRegex(@"^inning (?<inning>\d{1,2}) begins$", RegexOptions.IgnoreCase)]
    private static partial Regex Begins();

    [GeneratedRegex(@"^score (?<visitors>\d{1,3})-(?<home>\d{1,3})$", RegexOptions.IgnoreCase)]
    private static partial Regex Score();

    [GeneratedRegex(@"^heat (?<t>-?[\d.]+ ?[CF]?) (?<r>[\d.]+ ?%?)$", RegexOptions.IgnoreCase)]
    private static partial Regex Heat();

    [GeneratedRegex(@"^globe (?<w>-?[\d.]+ ?[CF]?) (?<g>-?[\d.]+ ?[CF]?) (?<a>-?[\d.]+ ?[CF]?)$", RegexOptions.IgnoreCase)]
    private static partial Regex Globe();

    /// <summary>The event; null after its faults were told.</summary>
    public static ClockEvent? Read(SourceLine line, LocalDate day, DateTimeZone zone, Action<int, string> fault)
    {
        var match = Timed().Match(line.Text);
        if (!match.Success || !match.Groups["what"].Success) { fault(line.Number, $"cannot read '{line.Short}'; write a time and what happened, as '17:32 first pitch'"); return null; }
        var faults = new List<string>();
        var at = WallClock.Read(match.Groups["time"].Value, day, zone, faults);
        var read = What(match.Groups["what"].Value, line, day, zone, faults);
        foreach (var f in faults) fault(line.Number, f);
        return at is { } moment && read is { } found && faults.Count == 0 ? found with { At = moment } : null;
    }

    private static ClockEvent? What(string what, SourceLine line, LocalDate day, DateTimeZone zone, List<string> faults)
    {
        ClockEvent Event(ClockEventKind kind) => new(default, kind, line.Number, what);
        foreach (var (words, kind) in Bare) if (Words.Same(what, words)) return Event(kind);
        if (Cut(what, "note") is { } note) return Event(ClockEventKind.Note) with { Text = note };
        if (Cut(what, "stopped for good") is not null) return Event(ClockEventKind.StoppedForGood);
        if (Words.Same(what, "play stopped")) return Event(ClockEventKind.Stopped) with { Reason = StopReason.Storm }; // unsaid, the strictest
        if (Cut(what, "play stopped") is { } reason)
        {
            var known = Array.FindIndex(Reasons, r => Words.Same(r.Words, reason));
            if (known >= 0) return Event(ClockEventKind.Stopped) with { Reason = Reasons[known].Reason };
            faults.Add($"play is stopped for '{reason}'; {Words.Offer(reason, [.. Reasons.Select(r => r.Words)])}");
            return null;
        }
        if (what.StartsWith("not before ", StringComparison.OrdinalIgnoreCase))
            return WallClock.Read(what["not before ".Length..].Split(" by ", 2)[0], day, zone, faults) is { } until ? Event(ClockEventKind.NotBefore) with { Until = until } : null;
        if (HalfOver().Match(what) is { Success: true } half)
            return Inning(half, faults) is { } inning
                ? Event(ClockEventKind.HalfOver) with { Half = new(inning, Words.Same(half.Groups["half"].Value, "bottom")), Runs = half.Groups["home"].Success ? RunsOf(half) : null } : null;
        if (Begins().Match(what) is { Success: true } begins) return Inning(begins, faults) is { } begun ? Event(ClockEventKind.InningBegins) with { Half = new(begun, false) } : null;
        if (Score().Match(what) is { Success: true } score) return Event(ClockEventKind.Score) with { Runs = RunsOf(score) };
        if (Heat().Match(what) is { Success: true } heat)
            return HeatIndex.Read(heat.Groups["t"].Value, heat.Groups["r"].Value, faults) is { } index ? Event(ClockEventKind.Heat) with { Heat = index } : null;
        if (Globe().Match(what) is { Success: true } globe)
            return GlobeTemperature.Read(globe.Groups["w"].Value, globe.Groups["g"].Value, globe.Groups["a"].Value, faults) is { } read ? Event(ClockEventKind.Globe) with { Globe = read } : null;
        var near = Words.Near(what, Forms);
        faults.Add($"cannot read '{line.Short}'; {(near.Count > 0 ? Words.Meant(near) : "after the time may stand: " + string.Join("; ", Forms))}");
        return null;
    }

    /// <summary>"note: words" or "note words": what stands behind the first word; null when the line is another.</summary>
    private static string? Cut(string what, string first) =>
        what.StartsWith(first, StringComparison.OrdinalIgnoreCase) && what.Length > first.Length && what[first.Length] is ':' or ' ' ? what[(first.Length + 1)..].Trim() is { Length: > 0 } rest ? rest : null : null;

    private static int? Inning(Match match, List<string> faults)
    {
        var inning = int.Parse(match.Groups["inning"].Value, CultureInfo.InvariantCulture);
        if (inning is >= 1 and <= 40) return inning;
        faults.Add($"there is no inning {inning}; it may be 1 to 40");
        return null;
    }

    private static Runs RunsOf(Match match) => new(int.Parse(match.Groups["visitors"].Value, CultureInfo.InvariantCulture), int.Parse(match.Groups["home"].Value, CultureInfo.InvariantCulture));
}
