using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.People;

namespace Umpirage.Store.Files;

/// <summary>Games as an iCalendar stream (RFC 5545): one event a game under its own identity, its count of changes as the sequence.</summary>
public static class CalendarFile
{
    private const string Domain = "@games.umpirage.invalid", CrewDomain = "@crews.umpirage.invalid";

    /// <summary>How long a game stands in a calendar, in hours (common practice, no source).</summary>
    private const int Hours = 2;

    public static string Write(DistrictStore store, IReadOnlyCollection<ScheduledGame> games) => Write(store, games, (_, made) => made);

    /// <summary>
    /// One umpire's places as they were published, at the time at which each game is now; a game that was taken away again stands as cancelled.
    /// Partners are named by first name; the umpire is not named.
    /// </summary>
    public static string OfUmpire(DistrictStore store, string person)
    {
        var lines = store.Published.AsNoTracking().Where(p => store.Published.Any(o => o.Game == p.Game && o.Person == person)).ToList();
        var keys = lines.Select(l => l.Game).Distinct().ToList();
        var told = Published.Of(lines).Places.Where(p => p.Person is not null).ToLookup(p => p.Game);
        var given = store.People.AsNoTracking().Where(p => store.Officials.Any(o => o.Person == p.Key)).ToDictionary(p => p.Key, p => p.Given);
        return Write(store, store.Games.AsNoTracking().Where(g => keys.Contains(g.Key)).OrderBy(g => g.Start).ToList(), (game, made) =>
        {
            var own = told[game.Key].FirstOrDefault(p => p.Person == person);
            made.Uid = game.Key + CrewDomain;
            made.Summary = $"{own?.Place ?? "umpire"}, {made.Summary}";
            // each telling is a change of the event
            made.Sequence = game.Sequence + lines.Where(l => l.Game == game.Key).Select(l => l.At).Distinct().Count();
            made.DtStamp = Stamp(made.Sequence);
            if (own is null) made.Status = EventStatus.Cancelled;
            else if (told[game.Key].Where(p => p.Person != person).Select(p => $"{given.GetValueOrDefault(p.Person!, "somebody")} ({p.Place})").Order(StringComparer.Ordinal).ToList() is { Count: > 0 } partners) made.Description = $"With {Rules.Ground.Words.And(partners)}";
            return made;
        });
    }

    private static CalDateTime Stamp(int sequence) => new(DateTime.UnixEpoch.AddDays(20000 + sequence), "UTC");

    private static string Write(DistrictStore store, IReadOnlyCollection<ScheduledGame> games, Func<ScheduledGame, CalendarEvent, CalendarEvent> told)
    {
        var teams = store.Teams.AsNoTracking().ToDictionary(t => t.Key, t => t.Name);
        var diamonds = store.Diamonds.AsNoTracking().ToDictionary(d => d.Key);
        var parks = store.Parks.AsNoTracking().ToDictionary(p => p.Key);
        var district = store.District.AsNoTracking().FirstOrDefault();
        var zone = district?.Zone ?? "Etc/UTC";
        var calendar = new Calendar { ProductId = "-//Umpirage//games//EN" };
        // a zone is told with its offsets: a reader need not know the name
        calendar.AddTimeZone(VTimeZone.FromDateTimeZone(zone, new DateTime(games.Select(g => g.Start.Year).DefaultIfEmpty(2026).Min(), 1, 1), includeHistoricalData: false));
        foreach (var game in games)
        {
            var diamond = diamonds[game.Diamond];
            var park = parks[diamond.Park];
            calendar.Events.Add(told(game, new CalendarEvent
            {
                Uid = game.Key + Domain, Sequence = game.Sequence, Summary = $"{game.Division}: {teams[game.Visitor]} at {teams[game.Home]}",
                Start = new CalDateTime(game.Start, zone), End = new CalDateTime(game.Start.AddHours(Hours), zone), DtStamp = Stamp(game.Sequence),
                Location = diamond.Name, GeographicLocation = new GeographicLocation(park.Latitude, park.Longitude), Categories = [game.Division],
                Status = game.Status is GameStatus.RainedOut or GameStatus.CalledOff ? EventStatus.Cancelled : EventStatus.Confirmed,
            }));
        }
        return new CalendarSerializer().SerializeToString(calendar) ?? "";
    }

    /// <summary>
    /// Takes times, diamonds and cancellations from a calendar for games that are on record; all of it or nothing. An event that is no game of
    /// ours is a fault.
    /// </summary>
    public static Imported Read(DistrictStore store, byte[] bytes, bool dryRun)
    {
        var faults = new List<FileFault>();
        return Import.Rows(store, FileKind.Named("games")!, Rows(store, bytes, faults), faults, dryRun, null);
    }

    /// <summary>The events as rows of a file of games.</summary>
    internal static List<FileRow> Rows(DistrictStore store, byte[] bytes, List<FileFault> faults)
    {
        var rows = new List<FileRow>();
        Calendar? calendar = null;
        try { calendar = bytes.Length > CsvText.Largest ? null : Calendar.Load(new System.Text.UTF8Encoding(false, true).GetString(bytes)); }
        catch (Exception fault) when (fault is not OutOfMemoryException) { faults.Add(new(1, "", fault.GetType().Name, "an iCalendar stream (RFC 5545)")); }
        if (calendar is null && faults.Count == 0) faults.Add(new(1, "", $"{bytes.Length} bytes", $"an iCalendar stream of at most {CsvText.Largest} bytes"));
        var zone = store.District.AsNoTracking().FirstOrDefault()?.Zone ?? "Etc/UTC";
        var diamonds = store.Diamonds.AsNoTracking().AsEnumerable().ToLookup(d => d.Name, d => d.Key, StringComparer.OrdinalIgnoreCase);
        var games = store.Games.AsNoTracking().ToDictionary(g => g.Key);
        var number = 0;
        foreach (var one in calendar?.Events ?? Enumerable.Empty<CalendarEvent>())
        {
            number++;
            var key = one.Uid is { } uid && uid.EndsWith(Domain, StringComparison.Ordinal) ? uid[..^Domain.Length] : "";
            if (!games.TryGetValue(key, out var game)) { faults.Add(new(number, "UID", one.Uid ?? "", "the identity of a game on record")); continue; }
            if (one.Start is not { HasTime: true }) { faults.Add(new(number, "DTSTART", Said(one.Start), "a day and a time")); continue; }
            if (Local(one.Start, zone) is not { } start) { faults.Add(new(number, "DTSTART", Said(one.Start), "a time in a zone of the IANA time zone database")); continue; }
            // parks may call their diamonds alike: a game stays where it is unless the place named is another
            List<string> named = [.. diamonds[one.Location ?? ""].Order(StringComparer.Ordinal)];
            if ((named.Contains(game.Diamond) ? game.Diamond : named is [var only] ? only : null) is not { } diamond)
            {
                var allowed = named.Count > 1 ? $"a name that only one diamond has; {Rules.Ground.Words.And(named)} are all called so" : "the name of a diamond on record";
                faults.Add(new(number, "LOCATION", one.Location ?? "", allowed));
                continue;
            }
            var status = one.Status == EventStatus.Cancelled ? game.Status is GameStatus.RainedOut ? GameStatus.RainedOut : GameStatus.CalledOff : start != game.Start ? GameStatus.Moved : game.Status;
            rows.Add(new(number, new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase)
            {
                ["game"] = key, ["division"] = game.Division, ["visitor"] = game.Visitor, ["home"] = game.Home, ["diamond"] = diamond,
                ["day"] = Written.Day(DateOnly.FromDateTime(start)), ["start"] = Written.Clock(TimeOnly.FromDateTime(start)), ["status"] = GameFile.StatusWord(status), ["rest of"] = game.RestOf ?? "",
            }));
        }
        return rows;
    }

    private static string Said(CalDateTime? start) =>
        start is null ? "" : Written.Day(start.Date) + (start.Time is { } time ? " " + Written.Clock(time) : "") + (start.TzId is { } zone ? " " + zone : "");

    /// <summary>A start in the district's clock, to the minute; null when its zone is none.</summary>
    private static DateTime? Local(CalDateTime start, string zone)
    {
        try
        {
            var local = start.IsFloating ? start.Value : start.ToTimeZone(zone).Value;
            return new(local.Ticks - local.Ticks % TimeSpan.TicksPerMinute);
        }
        catch (Exception fault) when (fault is ArgumentException or InvalidOperationException or KeyNotFoundException or TimeZoneNotFoundException) { return null; }
    }
}
