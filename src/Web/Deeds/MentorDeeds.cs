using Microsoft.AspNetCore.Mvc;
using Umpirage.District.People;
using Umpirage.Store;

namespace Umpirage.Web.Deeds;

/// <summary>After a bad day the next games of a minor are beside a mentor.</summary>
internal static class MentorDeeds
{
    private const int MostDays = 366;

    public static void Map(WebApplication app) =>
        app.MapPost("/crews/mentor", ([FromForm] string game, [FromForm] string person, [FromForm] string mentor, [FromForm] string? until, IFormCollection _, Sitting sitting, DistrictStore store) =>
        {
            var faults = new List<FieldFault>();
            var known = store.Games.Find(game);
            if (known is null) faults.Add(new("game", Typed.Cut(game, 64), "a game on record"));
            if (store.People.Find(person) is not { IsMinor: true } || !store.Officials.Any(o => o.Person == person)) faults.Add(new("person", Typed.Cut(person, 64), "a youth umpire on record"));
            if (store.People.Find(mentor) is not { IsMinor: false } || !store.Officials.Any(o => o.Person == mentor)) faults.Add(new("mentor", Typed.Cut(mentor, 64), "a grown umpire on record"));
            // the game at which it happened stays as it is; what comes after is beside the mentor
            var from = (known?.Day ?? sitting.Today).AddDays(1);
            if (Typed.Day(until) is not { } end || end < from || end > from.AddDays(MostDays)) faults.Add(new("until", Typed.Cut(until, 20), $"a day from {Rules.Ground.CodeAddress.Day(from)} on, within a year"));
            else if (faults.Count == 0)
            {
                store.Actor = sitting.Actor;
                store.Put(new Pairing(person, mentor, PairingKind.Mentor, from, end));
                store.SaveChanges();
                return Results.Redirect($"/games/{Uri.EscapeDataString(game)}#youth");
            }
            return Doors.Faulty(faults);
        }).Needs(Deed.SetCrews);
}
