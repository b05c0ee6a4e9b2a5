using NodaTime;
using Umpirage.District.Clock;

namespace Umpirage.Tests.Clock;

/// <summary>Reads clocks for the tests, under the project's own codes or with a layer put on top.</summary>
internal static class Evening
{
    public static string Thunder { get; } = File.ReadAllText(Folder.Of("demo", "thunder.clock"));

    /// <summary>The head of a made-up file, on a field without lights at 41.4 N.</summary>
    public static string Head(string code = "BB-12", string date = "2026-05-16", string more = "") => $"Clock: {code} on {date}\nplace: 41.40 N 88.10 W, America/Chicago\n{more}\n";

    public static ClockReading At(string text, string? time = null, Codebook? book = null)
    {
        var findings = new List<Finding>();
        var reading = Try(text, time, book ?? Shelf.Codes, findings);
        Assert.Empty(findings);
        return reading!;
    }

    public static ClockReading? Try(string text, string? time, Codebook book, List<Finding> findings)
    {
        if (ClockFileReader.Read("test.clock", text, findings) is not { } clock) return null;
        var rules = ClockRules.Of(book, clock.File, clock.Address, Shelf.Today, findings);
        var faults = new List<string>();
        var at = time is null ? clock.Events[^1].At : WallClock.Read(time, clock.Date, clock.Spot.Zone, faults);
        Assert.Empty(faults);
        return rules is null ? null : Timekeeper.Read(clock, rules, book, at!.Value, findings);
    }

    public static List<string> Faults(string text)
    {
        var findings = new List<Finding>();
        Assert.Null(ClockFileReader.Read("test.clock", text, findings));
        return [.. findings.Select(f => f.ToString())];
    }

    /// <summary>The project's codes with one more league on the baseball district, which sets these values.</summary>
    public static Codebook With(params (string Sheet, string Parameter, string Value)[] values)
    {
        var book = Shelf.Read(Folder.Of("codes"));
        book.Add("hamlet.layer", "Layer: Hamlet\nkind: league\non: Oslemoor-baseball\ntitle: Hamlet options\n" +
            string.Concat(values.Select(v => $"\nSheet: {v.Sheet}\nSet {v.Parameter}\n  baseball = {v.Value} | Hamlet options 2026 | our own\n")));
        Assert.Empty(book.Findings);
        return book;
    }

    public const string Hamlet = "baseball/12U+Hamlet";
}
