using System.Globalization;
using NodaTime;
using Umpirage.District.Calendar;
using Umpirage.District.Clock;
using Umpirage.District.People;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Web;

/// <summary>A game's clock as it stands at the desk: its text, which a page carries with it and nobody keeps, and what it says at a moment.</summary>
public sealed record ClockSheet(string Text, ClockReading? Reading, IReadOnlyList<string> Faults)
{
    private const int Longest = 6000;

    /// <summary>The head of a game's clock.</summary>
    public static string Head(ScheduledGame game, string code, Park park, Diamond diamond, string zone)
    {
        string Degrees(double value, char positive, char negative) => $"{Math.Abs(value).ToString("0.00##", CultureInfo.InvariantCulture)} {(value < 0 ? negative : positive)}";
        return string.Join('\n', $"Clock: {code} on {CodeAddress.Day(DateOnly.FromDateTime(game.Start))}", $"place: {Degrees(park.Latitude, 'N', 'S')} {Degrees(park.Longitude, 'E', 'W')}, {zone}",
            $"lit: {(diamond.Lit ? "yes" : "no")}", $"scheduled: {game.Start:HH:mm}", "");
    }

    /// <param name="add">An event to put on the end, and its time; nothing is added where the time is missing.</param>
    public static ClockSheet Of(Codebook book, DateOnly today, string text, string? add, string? time, string? until)
    {
        var faults = new List<string>();
        text = Typed.Cut(text, Longest).ReplaceLineEndings("\n");
        if (!string.IsNullOrWhiteSpace(add))
        {
            if (string.IsNullOrWhiteSpace(time)) faults.Add("when? write the time of what happened, as 18:52");
            else text += $"\n{Typed.Cut(time, 20)} {Typed.Cut(add, 120)}";
        }
        var findings = new List<Finding>();
        var clock = ClockFileReader.Read("this clock", text, findings);
        var rules = clock is null ? null : ClockRules.Of(book, "this clock", clock.Address, today, findings);
        var wrong = new List<string>();
        Instant? at = clock is null || clock.Events.Count == 0 ? null : string.IsNullOrWhiteSpace(until) ? clock.Events[^1].At : WallClock.Read(until.Trim(), clock.Date, clock.Spot.Zone, wrong);
        faults.AddRange(wrong);
        var reading = clock is null || rules is null || at is null || findings.Count > 0 ? null : Timekeeper.Read(clock, rules, book, at.Value, findings);
        // a clock in which nothing has happened yet is no fault
        if (text.Split('\n').Any(l => l.Length > 0 && char.IsAsciiDigit(l[0]))) faults.AddRange(findings.Select(f => f.Line > 0 ? $"line {f.Line}: {f.Message}" : f.Message));
        return new(text, reading, faults);
    }
}
