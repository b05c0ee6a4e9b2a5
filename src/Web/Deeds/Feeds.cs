using System.Text;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.People;
using Umpirage.Store;
using Umpirage.Store.Files;

namespace Umpirage.Web.Deeds;

/// <summary>Calendar feeds of the public schedule: time, place, division and teams, no people.</summary>
internal static class Feeds
{
    public static void Map(WebApplication app)
    {
        app.MapGet("/feeds/league/{key}.ics", (string key, DistrictStore store) => Feed(store, key, store.Games.Where(g => store.Teams.Any(t => t.League == key && (t.Key == g.Home || t.Key == g.Visitor))))).Needs(Deed.SeeVenues);
        app.MapGet("/feeds/team/{key}.ics", (string key, DistrictStore store) => Feed(store, key, store.Games.Where(g => g.Home == key || g.Visitor == key))).Needs(Deed.SeeVenues);
        app.MapGet("/feeds/diamond/{key}.ics", (string key, DistrictStore store) => Feed(store, key, store.Games.Where(g => g.Diamond == key))).Needs(Deed.SeeVenues);
    }

    private static IResult Feed(DistrictStore store, string key, IQueryable<District.Calendar.ScheduledGame> games)
    {
        var text = CalendarFile.Write(store, games.AsNoTracking().OrderBy(g => g.Start).ToList());
        return Results.File(Encoding.UTF8.GetBytes(text), "text/calendar; charset=utf-8", $"{key}.ics");
    }
}
