using NodaTime;
using NodaTime.Text;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clock;

/// <summary>Reads a clock file: the head first, wherever its lines stand, then the events. Every fault at once; a file with a fault gives no clock.</summary>
public static class ClockFileReader
{
    private static readonly string[] Keys = ["Clock", "place", "lit", "scheduled", "dark"];

    /// <summary>How a clock file begins; also told when it does not.</summary>
    public const string Head = "Clock: BB-12 on 2026-05-16";

    /// <summary>Null when anything is wrong; the findings say what.</summary>
    public static ClockFile? Read(string file, string text, List<Finding> findings)
    {
        var before = findings.Count;
        void Fault(int line, string message) => findings.Add(new(FindingKind.UnreadableLine, file, line, message));
        var lines = SourceLine.Of(text).ToList();
        var head = new Dictionary<string, (string Value, int Line)>();
        var rest = new List<SourceLine>();
        foreach (var line in lines)
        {
            if (char.IsAsciiDigit(line.Text[0])) { rest.Add(line); continue; }
            var colon = line.Text.IndexOf(':');
            var word = colon < 0 ? line.Text : line.Text[..colon].Trim();
            if (colon < 0 || Keys.FirstOrDefault(k => Words.Same(k, word)) is not { } key)
                Fault(line.Number, $"cannot read '{line.Short}'; the head has {Words.And(Keys)}, each with a colon, and every other line begins with a time");
            else if (!head.TryAdd(key, (line.Text[(colon + 1)..].Trim(), line.Number)))
                Fault(line.Number, $"'{key}' stands here and in line {head[key].Line}; write it once");
        }

        var (code, date) = Title(head, Fault);
        var spot = SpotOf(head, Fault);
        var lit = Lit(head, Fault);
        // without a place or a day the times are still read, so that their faults are told as well
        var (zone, day) = (spot?.Zone ?? DateTimeZone.Utc, date ?? new LocalDate(2026, 1, 1));
        var (scheduled, dark) = (TimeOf(head, "scheduled", day, zone, Fault), TimeOf(head, "dark", day, zone, Fault));
        var events = rest.Select(l => ClockLineReader.Read(l, day, zone, Fault)).OfType<ClockEvent>().OrderBy(e => e.At).ThenBy(e => e.Kind).ThenBy(Within).ThenBy(e => e.Text, StringComparer.Ordinal).ToList();
        if (rest.Count == 0) Fault(0, "the file tells no event; write one a line, as '17:32 first pitch'");
        if (findings.Count > before || code is null || date is null || spot is null) return null;
        var clock = new ClockFile(file, code, date.Value, spot, lit, scheduled, dark, events);
        ClockCheck.Check(clock, findings);
        return findings.Count > before ? null : clock;
    }

    /// <summary>Among the same kind at the same minute: halves and scores as they follow one another.</summary>
    private static int Within(ClockEvent e) => e.Half is { } half ? half.Inning * 2 + (half.Bottom ? 1 : 0) : e.Runs is { } runs ? runs.Visitors + runs.Home : 0;

    private static (string? Code, LocalDate? Date) Title(Dictionary<string, (string Value, int Line)> head, Action<int, string> fault)
    {
        if (!head.TryGetValue("Clock", out var title)) { fault(0, $"the file does not say which game's clock it is; add '{Head}'"); return (null, null); }
        var at = title.Value.LastIndexOf(" on ", StringComparison.Ordinal);
        if (at <= 0) { fault(title.Line, $"cannot read '{title.Value}'; write '{Head}'"); return (null, null); }
        var day = title.Value[(at + 4)..].Trim();
        if (LocalDatePattern.Iso.Parse(day) is { Success: true } parsed && parsed.Value.Year is >= Almanac.FirstYear and <= Almanac.LastYear) return (title.Value[..at].Trim(), parsed.Value);
        fault(title.Line, $"'{day}' is not a day from {Almanac.FirstYear} to {Almanac.LastYear}; write '{Head}'");
        return (title.Value[..at].Trim(), null);
    }

    private static Spot? SpotOf(Dictionary<string, (string Value, int Line)> head, Action<int, string> fault)
    {
        if (!head.TryGetValue("place", out var place)) { fault(0, $"the file names no place; add 'place: {Spot.Form}'"); return null; }
        var faults = new List<string>();
        var spot = Spot.Read(place.Value, faults);
        foreach (var f in faults) fault(place.Line, f);
        return spot;
    }

    /// <summary>A field nobody calls lit is taken as unlit, the stricter.</summary>
    private static bool Lit(Dictionary<string, (string Value, int Line)> head, Action<int, string> fault)
    {
        if (!head.TryGetValue("lit", out var lit)) return false;
        if (!Words.Same(lit.Value, "yes") && !Words.Same(lit.Value, "no")) fault(lit.Line, $"'lit' is '{lit.Value}'; it may be yes or no");
        return Words.Same(lit.Value, "yes");
    }

    private static Instant? TimeOf(Dictionary<string, (string Value, int Line)> head, string key, LocalDate day, DateTimeZone zone, Action<int, string> fault)
    {
        if (!head.TryGetValue(key, out var line)) return null;
        var faults = new List<string>();
        var at = WallClock.Read(line.Value, day, zone, faults);
        foreach (var f in faults) fault(line.Line, f);
        return at;
    }
}
