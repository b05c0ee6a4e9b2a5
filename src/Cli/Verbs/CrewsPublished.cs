using System.Globalization;
using Umpirage.District.Crews;
using Umpirage.Store;

namespace Umpirage.Cli.Verbs;

/// <summary>Crews as people were told of them: what differs, publishing it, and crews that no search touches.</summary>
internal static class CrewsPublished
{
    public static int Diff(Request request, DistrictStore store, CrewRecords records, DateOnly monday)
    {
        var pending = Publishing.Pending(records, monday, DistrictOf.Now(request, store), DateTime.UtcNow);
        var concern = pending.Where(c => c.Concerns).ToList();
        if (request.Json) Json.Write(concern.Select(c => new { game = c.Game, place = c.Place, from = c.From, to = c.To, moved = c.Moves }));
        else
        {
            var people = records.People.ToDictionary(p => p.Key, p => p.ListName);
            string Name(string? key) => key is null ? "nobody" : people[key];
            foreach (var game in concern.GroupBy(c => c.Game))
            {
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{game.Key}, {game.First().Now.Start:ddd d MMM HH:mm}:"));
                foreach (var c in game) Console.WriteLine($"  {c.Place}: {(c.Moves ? $"{Name(c.To)}, moved from {c.Was!.Start.ToString("ddd d MMM HH:mm", CultureInfo.InvariantCulture)} on {c.Was.Diamond}" : $"{Name(c.From)} -> {Name(c.To)}")}");
            }
            Console.WriteLine($"{concern.Count} places differ from what was published; {pending.Where(c => c.Was is null).Select(c => c.Game).Distinct().Count()} games were never published");
        }
        return concern.Count > 0 ? Verb.No : Verb.Fine;
    }

    public static int Publish(Request request, DistrictStore store, DateOnly monday)
    {
        var (at, faults) = Publishing.Publish(store, monday, DistrictOf.Now(request, store));
        if (faults.Count > 0) return Refused(faults);
        var records = CrewReader.Read(store);
        var notices = CrewNotice.Of(records, [.. records.Published.Where(p => p.At == at)]);
        var people = records.People.ToDictionary(p => p.Key, p => p.ListName);
        if (request.Json) Json.Write(new { published = at, tell = notices.Select(n => new { person = n.Person, lines = n.Lines }) });
        else
        {
            foreach (var notice in notices)
            {
                Console.WriteLine($"{people[notice.Person]}:");
                foreach (var line in notice.Lines) Console.WriteLine($"  {line}");
            }
            Console.WriteLine($"published; {notices.Count} people to be told, nothing was sent");
        }
        return Verb.Fine;
    }

    public static int Freeze(Request request, DistrictStore store, string game, bool freeze)
    {
        var faults = Publishing.Freeze(store, [game], freeze);
        if (faults.Count > 0) return Refused(faults);
        if (request.Json) Json.Write(new { game, frozen = freeze });
        else Console.WriteLine(freeze ? $"{game} is frozen: no search touches its crew" : $"{game} is no longer frozen");
        return Verb.Fine;
    }

    private static int Refused(IReadOnlyList<string> faults)
    {
        foreach (var fault in faults) Console.Error.WriteLine(fault);
        return Verb.No;
    }
}
