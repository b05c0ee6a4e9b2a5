using System.Globalization;
using NodaTime;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Clock;

/// <summary>What starts the clock of a game.</summary>
public enum ClockStart { FirstPitch, ScheduledTime, PlateMeeting }

/// <summary>The clock of a game as its code has it. A limit is null when the code sets none; with <paramref name="OneMoreInning"/> the inning under way and one more are played when it is reached. All numbers come from the sheets, with their sources.</summary>
public sealed record ClockRules(
    Code Code, ClockStart StartsAt, bool InningBeginsAtTheLastOut, bool OneMoreInning, bool WeatherStopsTheClock, int? NoNewInningAfter, int? HardStopAfter, int Wait, IReadOnlyList<string> Sources)
{
    internal Table Lightning { get; private init; } = null!;
    internal Table Regulation { get; private init; } = null!;
    internal Table TimeLimit { get; private init; } = null!;

    /// <summary>The sheets that a clock asks.</summary>
    public static IReadOnlyList<string> Sheets { get; } = ["time limit", "lightning", "regulation game", "heat", "heat by globe"];

    /// <summary>Takes the clock from a code by its address or the name it is played under; null, with every reason, when the code or a sheet cannot be taken.</summary>
    public static ClockRules? Of(Codebook book, string file, string address, DateOnly today, List<Finding> findings)
    {
        var before = findings.Count;
        void Fault(string message) => findings.Add(new(FindingKind.UnknownWord, file, 0, message));
        if (Casebook.Code(book, address, today, Fault) is not { } code) return null;
        var sources = new List<string>();
        Table? TableOf(string sheet) => Casebook.Table(book, code.Address.ToString(), sheet, today, file, findings);
        Provenance? Value(string sheet, string name)
        {
            if (book.Sheet(sheet)?.Parameters.FirstOrDefault(p => Words.Same(p.Name, name)) is { } parameter && code.Value(parameter) is { } value)
            {
                sources.Add($"{name}: {value.Value} ({value.Layer}; {value.Citation})");
                return value;
            }
            Fault($"the sheet '{sheet}' sets no '{name}' for {code.Address}");
            return null;
        }
        var (limit, start, begins, weather, hard, wait) =
            (Value("time limit", "no new inning after"), Value("time limit", "clock starts at"), Value("time limit", "new inning begins"), Value("time limit", "weather delay stops the clock"),
             Value("time limit", "hard stop after"), Value("lightning", "lightning wait"));
        var kind = Value("time limit", "kind of limit used");
        var shortest = Value("lightning", "shortest lightning wait allowed");
        if (wait?.Quantity is { IsNone: true }) Fault("'lightning wait' is none; a wait has a length");
        var (lightning, regulation, timeLimit) = (TableOf("lightning"), TableOf("regulation game"), TableOf("time limit"));
        if (findings.Count > before || lightning is null || regulation is null || timeLimit is null) return null;
        var startsAt = start!.Value switch { "scheduled time" => ClockStart.ScheduledTime, "end of the plate meeting" => ClockStart.PlateMeeting, _ => ClockStart.FirstPitch };
        return new(code, startsAt, begins!.Value != "at its first pitch", kind!.Value == "finish plus one", weather!.Value == "yes", Minutes(limit!), Minutes(hard!), LongerOf(wait!, shortest!), sources) { Lightning = lightning, Regulation = regulation, TimeLimit = timeLimit };
    }

    /// <summary>A local wait that is shorter than allowed is a fault of the layer, and the clock does not follow it.</summary>
    private static int LongerOf(Provenance wait, Provenance shortest) => Math.Max(Minutes(wait)!.Value, Minutes(shortest) ?? 0);

    /// <summary>Whole minutes; a wait is rounded up, and so is a limit that a league wrote with a fraction.</summary>
    private static int? Minutes(Provenance value) => value.Quantity is { IsNone: false } quantity ? (int)Math.Ceiling(quantity.Value) : null;
}
