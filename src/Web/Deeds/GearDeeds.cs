using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.Gear;
using Umpirage.District.People;
using Umpirage.Store;

namespace Umpirage.Web.Deeds;

/// <summary>The log of gear that was taken out: written, and given back.</summary>
internal static class GearDeeds
{
    public static void Map(WebApplication app)
    {
        app.MapPost("/gear/log", ([FromForm] string code, [FromForm] string on, [FromForm(Name = "for")] string? title, [FromForm] string? game, [FromForm] string t, IFormCollection _, DistrictStore store, Shelf shelf, Sitting sitting) =>
        {
            var asked = new GearAsked(Typed.Cut(code, 100), Typed.Day(on) ?? sitting.Today, Typed.Cut(title, 120), Typed.Cut(game, 60), Typed.Cut(t, GearList.Longest).ReplaceLineEndings("\n"));
            // looked over again here: what is logged is what the code says, not what the page says it said
            var list = GearList.Of(shelf.Book, asked, "", sitting.Today);
            List<FieldFault> faults = [.. list.Faults.Select(f => new FieldFault("gear", f, "a list that can be read"))];
            if (asked.Game != "" && !store.Games.Any(g => g.Key == asked.Game)) faults.Add(new("game", asked.Game, "the key of a game on record, or nothing"));
            if (faults.Count > 0) return Doors.Faulty(faults);
            store.Actor = sitting.Actor;
            var known = store.Removals.AsNoTracking().Where(r => r.For == asked.For && r.GivenBack == null).ToList();
            foreach (var removal in list.Looked.Select(l => l.Removal).OfType<Removal>())
                // a button that is pressed twice writes once
                if (!known.Any(k => k.Piece == removal.Item && k.Why == removal.Why && DateOnly.FromDateTime(sitting.Here(k.At)) == sitting.Today))
                    store.Removals.Add(new($"r-{Guid.CreateVersion7():N}", sitting.UtcNow, asked.Game == "" ? null : asked.Game, asked.For, $"{removal.Code}@{removal.Day}", removal.Item, removal.Why, removal.Rules, null));
            store.SaveChanges();
            return Results.Redirect("/gear/log");
        }).Needs(Deed.LookOver);
        app.MapPost("/gear/log/{key}/back", (string key, IFormCollection _, DistrictStore store, Sitting sitting) =>
        {
            if (store.Removals.Find(key) is not { } removal) return Results.NotFound();
            store.Actor = sitting.Actor;
            store.Put(removal with { GivenBack = removal.GivenBack ?? sitting.Today });
            store.SaveChanges();
            return Results.Redirect("/gear/log");
        }).Needs(Deed.LookOver);
    }
}
