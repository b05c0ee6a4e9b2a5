using System.Globalization;
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
        var words = request.Words.ToList();
        var save = words.Remove("--save");
        request = request with { Words = words };
        var closedAs = new List<string>();
        for (; request.Option("--closed") is (var others, { } closed); request = others) closedAs.Add(closed);
        (request, var waitingAs) = request.Option("--waiting");
        (request, var toldAs) = request.Option("--told");
        (request, var secondsAs) = request.Option("--seconds");
        if (request.Words.Count > 0 || (closedAs.Count == 0 && waitingAs is null)) { Console.Error.WriteLine(Form); return Verb.Unusable; }
        using var store = DistrictOf.Open(request, make: false);
        if (store is null) return Verb.Unusable;

        var schedule = Timetable.Of(store, Library.Codes(request));
        var faults = new List<string>();
        var closures = closedAs.Select(c => Closed(schedule.Surroundings, c, faults)).OfType<Blackout>().Distinct().ToList();
        var now = toldAs is null ? store.Today.ToDateTime(request.Data is null && request.Postgres is null ? TimeOnly.FromDateTime(Oslemoor.Now) : TimeOnly.FromDateTime(DateTime.Now)) : default;
        if (toldAs is not null && !DateTime.TryParseExact(toldAs, "yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out now)) faults.Add($"--told is '{toldAs}'; write the moment at which everybody is told as 2026-05-21T15:00");
        if (!int.TryParse(waitingAs ?? "0", NumberStyles.None, CultureInfo.InvariantCulture, out var waiting)) faults.Add($"--waiting is '{waitingAs}'; write how many games rained out before are to be placed too");
        if (!double.TryParse(secondsAs ?? "8", NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var seconds) || seconds is <= 0 or > 600) faults.Add($"--seconds is '{secondsAs}'; it may be up to 600");
        foreach (var fault in faults) Console.Error.WriteLine(fault);
        if (faults.Count > 0) return Verb.Unusable;

        string[] wait = [.. schedule.All.Where(g => g.Status == GameStatus.RainedOut && g.Start < now).OrderByDescending(g => g.Start).ThenBy(g => g.Key, StringComparer.Ordinal).Take(waiting).Select(g => g.Key)];
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
