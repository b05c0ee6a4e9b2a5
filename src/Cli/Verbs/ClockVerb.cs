using Umpirage.District.Clock;
using Umpirage.Rules.Ground;

namespace Umpirage.Cli.Verbs;

/// <summary>What a game's clock says at a moment, or at its last event.</summary>
internal static class ClockVerb
{
    public static int Run(Request request)
    {
        var options = new Options(request, ["--at"]);
        if (options.Words.Count != 1) options.Faults.Add("which clock file?");
        if (options.Faulty("write: ./umpirage clock demo/thunder.clock --at 18:52")) return Verb.Unusable;
        var (file, time) = (options.Words[0], options.Text("--at"));
        if (!File.Exists(file)) { Console.Error.WriteLine($"there is no file '{file}'"); return Verb.Unusable; }
        var findings = new List<Finding>();
        var reading = Read(request, file, time, findings);
        foreach (var finding in findings) Console.Error.WriteLine(finding);
        if (reading is null) return Verb.Unusable;
        if (request.Json) Json.Write(reading);
        else Console.Write(ClockText.Of(reading));
        return Verb.Fine;
    }

    private static ClockReading? Read(Request request, string file, string? time, List<Finding> findings)
    {
        var clock = ClockFileReader.Read(file, File.ReadAllText(file), findings);
        if (clock is null) return null;
        var book = Library.Codes(request, ClockRules.Sheets, clock.Address);
        findings.AddRange(book.Findings);
        var rules = ClockRules.Of(book, file, clock.Address, request.Today, findings);
        var faults = new List<string>();
        var at = time is null ? clock.Events[^1].At : WallClock.Read(time, clock.Date, clock.Spot.Zone, faults);
        findings.AddRange(faults.Select(f => new Finding(FindingKind.UnreadableLine, "--at", 0, f)));
        return rules is null || at is null || findings.Count > 0 ? null : Timekeeper.Read(clock, rules, book, at.Value, findings);
    }
}
