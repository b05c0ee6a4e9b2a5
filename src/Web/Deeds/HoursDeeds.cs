using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using Umpirage.District.People;
using Umpirage.Rules.Ground;
using Umpirage.Store;
using Umpirage.Store.Files;

namespace Umpirage.Web.Deeds;

/// <summary>When an umpire can come: weekly hours, days away, games a week. Games already given stay given.</summary>
internal static class HoursDeeds
{
    public const int MostGames = 14;

    public static void Map(WebApplication app)
    {
        app.MapPost("/crews/hours/{key}/offer", (string key, [FromForm] string? from, [FromForm] string? until, IFormCollection form, Sitting sitting, DistrictStore store) => Own(key, sitting, store, () =>
        {
            List<string> days = [.. form["day"].OfType<string>().Distinct().Take(7)];
            if (days.Count == 0) return [new("day", "none", "at least one day of the week")];
            // by the same rules as a file's rows
            return Import.Typed(store, new AvailabilityFile(), [.. days.Select(day => new Dictionary<string, string> { ["person"] = key, ["day"] = Typed.Cut(day, 20), ["from"] = Typed.Cut(from, 20), ["until"] = Typed.Cut(until, 20) })]).InFields;
        })).Needs(Deed.OfferHours);
        app.MapPost("/crews/hours/{key}/back", (string key, [FromForm] string? day, [FromForm] string? from, IFormCollection _, Sitting sitting, DistrictStore store) => Own(key, sitting, store, () =>
        {
            if (!Enum.TryParse<DayOfWeek>(day, out var of) || !TimeOnly.TryParseExact(from, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var at) || store.Availabilities.Find(key, of, at) is not { } hours)
                return [new("from", $"{Typed.Cut(day, 20)} {Typed.Cut(from, 20)}", "hours on record")];
            store.Remove(hours);
            store.SaveChanges();
            return [];
        })).Needs(Deed.OfferHours);
        app.MapPost("/crews/hours/{key}/away", (string key, [FromForm] string? from, [FromForm] string? until, IFormCollection _, Sitting sitting, DistrictStore store) => Own(key, sitting, store, () =>
        {
            var first = Typed.Cut(from, 20);
            return Import.Typed(store, new AwayFile(), new Dictionary<string, string> { ["person"] = key, ["from"] = first, ["until"] = Typed.Cut(until, 20) is { Length: > 0 } last ? last : first }).InFields;
        })).Needs(Deed.OfferHours);
        app.MapPost("/crews/hours/{key}/there", (string key, [FromForm] string? from, IFormCollection _, Sitting sitting, DistrictStore store) => Own(key, sitting, store, () =>
        {
            if (Typed.Day(from) is not { } first || store.Aways.Find(key, first) is not { } away) return [new("from", Typed.Cut(from, 20), "the first of days away on record")];
            store.Remove(away);
            store.SaveChanges();
            return [];
        })).Needs(Deed.OfferHours);
        app.MapPost("/crews/hours/{key}/games", (string key, [FromForm] string? games, IFormCollection _, Sitting sitting, DistrictStore store) => Own(key, sitting, store, () =>
        {
            if (!double.TryParse(games, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var many) || many is not (>= 0 and <= MostGames) || many * 2 % 1 != 0)
                return [new("games", Typed.Cut(games, 20), $"0 to {MostGames} in halves: 1.5 is three in two weeks")];
            store.Put(store.Officials.Find(key)! with { GamesAWeek = many });
            store.SaveChanges();
            return [];
        })).Needs(Deed.OfferHours);
    }

    /// <summary>An umpire for oneself, a guardian for a child.</summary>
    private static IResult Own(string key, Sitting sitting, DistrictStore store, Func<IReadOnlyList<FieldFault>> change)
    {
        if (!sitting.Viewer.May(Deed.OfferHours, person: key)) return Doors.Faulty("person", key, "yourself, or a child you answer for");
        if (store.Officials.Find(key) is null) return Doors.Faulty("person", key, "an umpire on record");
        store.Actor = sitting.Actor;
        var faults = change();
        return faults.Count > 0 ? Doors.Faulty(faults) : Results.Redirect(key == sitting.Viewer.Person!.Key ? "/crews/hours" : $"/crews/hours/{Uri.EscapeDataString(key)}");
    }
}
