using Umpirage.District.Calendar;
using Umpirage.District.Demo;
using Umpirage.District.People;
using Umpirage.Rules.Ground;
using Umpirage.Solve;
using Umpirage.Store;

namespace Umpirage.Cli.Verbs;

/// <summary>New places for games that cannot be played where they are.</summary>
internal static class RepairVerb
{
    private const string Form = "write: ./umpirage schedule repair --closed all:2026-05-21, or PARK:DATE, or PARK/DIAMOND:DATE, as often as needed; [--waiting GAMES] [--told 2026-05-21T15:00] [--seconds 8] [--save]";

    public static int Run(Request request)
    {
        var options = new Options(request, ["--closed", "--waiting", "--told", "--seconds"], ["--save"]);
        var (closedAs, save, told) = (options.All("--closed"), options.Has("--save"), options.Moment("--told"));
        var (waiting, seconds) = (options.Count("--waiting", 0, 9999, "how many games rained out before are to be placed too,"), options.Number("--seconds", 0.1, 600, "seconds") ?? 8);
        if (options.Words.Count > 0 || (closedAs.Count == 0 && options.Text("--waiting") is null)) options.Faults.Add("what is closed, and on which day?");
        if (options.Faulty(Form)) return Verb.Unusable;
        using var store = DistrictOf.Open(request, make: false);
        if (store is null) return Verb.Unusable;

        var schedule = Timetable.Of(store, Library.Codes(request));
        var faults = new List<string>();
        var closures = closedAs.Select(c => Closed(schedule.Surroundings, c, faults)).OfType<Blackout>().Distinct().ToList();
        var now = told ?? DistrictOf.Now(request, store);
        foreach (var fault in faults) Console.Error.WriteLine(fault);
        if (faults.Count > 0) return Verb.Unusable;

        string[] wait = [.. schedule.All.Where(g => g.Status == GameStatus.RainedOut && g.Start < now).OrderByDescending(g => g.Start).ThenBy(g => g.Key, StringComparer.Ordinal).Take(waiting ?? 0).Select(g => g.Key)];
        var asked = Replanning.Of(schedule, closures, now, wait);
        using var stop = new CancellationTokenSource();
        // the last good plan stands when somebody stops the search
        Console.CancelKeyPress += (_, key) => { key.Cancel = true; stop.Cancel(); };
        var plan = Replanner.Plan(asked, new(seconds), stop.Token);
        var after = CallingOff.Of(asked.Schedule, plan, [.. store.Assignments], store.People.ToDictionary(p => p.Key), store.Roles, store.Guardianships, store.Availabilities, now);
        var (key, refused) = save ? Moving.Keep(store, plan, closures) : ("", []);
        foreach (var fault in refused) Console.Error.WriteLine(fault);
        if (request.Json) Json.Write(RepairText.Json(plan, after, key));
        else Console.Write(RepairText.Of(asked, plan, after, store.People.ToDictionary(p => p.Key, p => p.ListName), key));
        return plan.Without.Count > 0 || refused.Count > 0 ? Verb.No : Verb.Fine;
    }

    /// <summary>What is closed on a day: "all:2026-05-21", a park, or a park and its diamond.</summary>
    private static Blackout? Closed(Surroundings district, string text, List<string> faults)
    {
        var colon = text.LastIndexOf(':');
        if (colon <= 0 || !CodeAddress.TryDate(text[(colon + 1)..], out var day)) { faults.Add($"--closed is '{text}'; write all:DATE, PARK:DATE or PARK/DIAMOND:DATE, with a date as 2026-05-21"); return null; }
        var parts = text[..colon].Split('/');
        if (Words.Same(parts[0], "all") && parts.Length == 1) return new(BlackoutOf.District, DistrictFacts.Only, day, day, "rain");
        if (!district.Parks.ContainsKey(parts[0])) { faults.Add($"--closed: there is no park '{parts[0]}'; {Words.Offer(parts[0], [.. district.Parks.Keys])}"); return null; }
        if (parts.Length == 1) return new(BlackoutOf.Park, parts[0], day, day, "rain");
        List<string> own = [.. district.Diamonds.Values.Where(d => d.Park == parts[0]).Select(d => d.Key)];
        if (parts.Length > 2 || !own.Contains(parts[1])) { faults.Add($"--closed: '{parts[0]}' has no diamond '{parts[^1]}'; {Words.Offer(parts[^1], own)}"); return null; }
        return new(BlackoutOf.Diamond, parts[1], day, day, "rain");
    }
}
