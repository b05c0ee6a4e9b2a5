using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.People;
using Umpirage.Store;
using Umpirage.Store.Files;
using Umpirage.Web.Parts;

namespace Umpirage.Web.Deeds;

/// <summary>A calendar of one umpire's own published games, at an address that holds a secret: calendars cannot sign in.</summary>
internal static class OwnFeed
{
    private const int SecretBytes = 32;

    public static void Map(WebApplication app)
    {
        app.MapPost("/me/feed", ([FromForm] string person, IFormCollection _, HttpContext http, Sitting sitting, DistrictStore store) =>
        {
            if (!sitting.Viewer.IsOwn(person)) return Results.StatusCode(StatusCodes.Status403Forbidden);
            if (store.People.Find(person) is not { } whose || !store.Officials.Any(o => o.Person == person)) return Doors.Faulty("person", person, "an umpire on record");
            var secret = Convert.ToHexString(RandomNumberGenerator.GetBytes(SecretBytes)).ToLowerInvariant();
            store.Actor = sitting.Actor;
            store.Put(new FeedKey(person, Digest(secret), DateTime.UtcNow));
            store.SaveChanges();
            return Doors.Show<Told>(new { Title = $"A calendar address for {whose.ListName}", Text = "Give this address to your calendar. Whoever has it sees these games, so keep it to yourself; it is shown only now. Making a new one ends it.", Secret = $"{http.Request.Scheme}://{http.Request.Host}/feeds/own/{secret}.ics", To = "/me" });
        }).Needs(Deed.SeeOwn);
        app.MapPost("/me/feed/end", ([FromForm] string person, IFormCollection _, Sitting sitting, DistrictStore store) =>
        {
            if (!sitting.Viewer.IsOwn(person)) return Results.StatusCode(StatusCodes.Status403Forbidden);
            if (store.FeedKeys.Find(person) is not { } known) return Doors.Faulty("person", person, "somebody with an address");
            store.Actor = sitting.Actor;
            store.Remove(known);
            store.SaveChanges();
            return Results.Redirect("/me");
        }).Needs(Deed.SeeOwn);
        app.MapGet("/feeds/own/{secret}.ics", (string secret, DistrictStore store) =>
        {
            var digest = Digest(secret);
            return store.FeedKeys.AsNoTracking().FirstOrDefault(f => f.Digest == digest) is { } key
                ? Results.File(Encoding.UTF8.GetBytes(CalendarFile.OfUmpire(store, key.Person)), "text/calendar; charset=utf-8", "games.ics") : Results.NotFound();
        }).ForAnybody();
    }

    private static string Digest(string secret) => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));
}
