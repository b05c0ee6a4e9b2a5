using System.Diagnostics;
using Umpirage.District.Calendar;
using Umpirage.Rules.Ground;
using Umpirage.Store;
using Umpirage.Store.Files;

namespace Umpirage.Cli.Verbs;

/// <summary>Schedules: checked, repaired after rain, and taken back.</summary>
internal static class ScheduleVerb
{
    private static readonly Dictionary<string, Func<Request, int>> Parts = new() { ["check"] = Check, ["repair"] = RepairVerb.Run, ["undo"] = Undo };

    public static int Run(Request request)
    {
        var part = request.Words.FirstOrDefault() ?? "";
        if (Parts.TryGetValue(part, out var run)) return run(request with { Words = [.. request.Words.Skip(1)] });
        Console.Error.WriteLine($"write: ./umpirage schedule check [FILE], repair --closed all:DATE, or undo PLAN; {Words.Offer(part, [.. Parts.Keys])}");
        return Verb.Unusable;
    }

    private static int Check(Request request)
    {
        if (request.Words.Count > 1) { Console.Error.WriteLine("write: ./umpirage schedule check [FILE]; FILE holds games, as CSV or as a calendar (.ics)"); return Verb.Unusable; }
        if (request.Words.Count == 1 && !File.Exists(request.Words[0])) { Console.Error.WriteLine($"there is no file '{request.Words[0]}'"); return Verb.Unusable; }
        using var store = DistrictOf.Open(request, make: false);
        if (store is null) return Verb.Unusable;
        var schedule = Timetable.Of(store, Library.Codes(request));
        var own = schedule.All.Select(g => g.Key).ToHashSet();
        if (request.Words.Count == 1)
        {
            var faults = new List<FileFault>();
            var games = ScheduleFile.Read(store, File.ReadAllBytes(request.Words[0]), request.Words[0].EndsWith(".ics", StringComparison.OrdinalIgnoreCase), faults);
            foreach (var fault in faults) Console.Error.WriteLine($"{request.Words[0]}, {fault}");
            if (faults.Count > 0) return Verb.Unusable;
            schedule = schedule.With([.. games]);
            own = [.. games.Select(g => g.Key)];
        }
        var watch = Stopwatch.StartNew();
        var found = Checking.Of(schedule).Where(v => v.About.Any(g => own.Contains(g.Key))).ToList();
        var time = watch.Elapsed;
        var mending = new Mending(schedule, store.Today.AddDays(1).ToDateTime(default));
        found = [.. found.Select(v => v.Hard ? mending.Of(v) : v)];
        if (request.Json) Json.Write(ScheduleText.Json(found));
        else Console.Write(ScheduleText.Of(schedule, found, own.Count, time));
        return found.Any(v => v.Hard) ? Verb.No : Verb.Fine;
    }

    private static int Undo(Request request)
    {
        if (request.Words.Count != 1) { Console.Error.WriteLine("write: ./umpirage schedule undo PLAN"); return Verb.Unusable; }
        using var store = DistrictOf.Open(request, make: false);
        if (store is null) return Verb.Unusable;
        var (plan, faults) = Moving.TakeBack(store, request.Words[0]);
        foreach (var fault in faults) Console.Error.WriteLine(fault);
        if (faults.Count > 0) return Verb.No;
        var moves = store.Moves.Count(m => m.Plan == plan);
        if (request.Json) Json.Write(new { plan, takesBack = request.Words[0], games = moves });
        else Console.WriteLine($"{moves} games are where they were before plan {request.Words[0]}; this is plan {plan}");
        return Verb.Fine;
    }
}
