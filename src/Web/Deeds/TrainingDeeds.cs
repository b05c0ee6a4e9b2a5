using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.Clinic;
using Umpirage.District.People;
using Umpirage.Rules.Ground;
using Umpirage.Store;
using Umpirage.Store.Files;

namespace Umpirage.Web.Deeds;

/// <summary>Plans a clinic, and keeps who came to one.</summary>
internal static class TrainingDeeds
{
    public static void Map(WebApplication app)
    {
        app.MapPost("/training/clinics", ([FromForm] string unit, [FromForm] string day, [FromForm] string from, [FromForm] string? place, [FromForm] string taught, IFormCollection _, Sitting sitting, Classroom classroom, DistrictStore store) =>
        {
            if (!classroom.Certificates.Units.Any(u => u.Id == unit)) return Doors.Faulty("unit", Typed.Cut(unit, 64), Words.Or([.. classroom.Certificates.Units.Select(u => u.Id)]));
            store.Actor = sitting.Actor;
            // the same door as a file's, with the same faults
            var cells = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase) { ["unit"] = unit, ["day"] = Typed.Cut(day, 20), ["from"] = Typed.Cut(from, 20), ["place"] = Typed.Cut(place, 80), ["taught by"] = Typed.Cut(taught, 64) };
            var kept = Import.Typed(store, new ClinicFile(), cells);
            return kept.Fine ? Results.Redirect("/training#clinics") : Doors.Faulty(kept.InFields);
        }).Needs(Deed.Teach);
        app.MapPost("/training/sign-in", ([FromForm] string unit, [FromForm] string day, [FromForm] string? place, IFormCollection form, Sitting sitting, DistrictStore store) =>
        {
            if (Typed.Day(day) is not { } on || store.Offers.AsNoTracking().FirstOrDefault(o => o.Unit == unit && o.Day == on && o.Place == place) is not { } offer) return Results.NotFound();
            if (offer.Day > sitting.Today) return Doors.Faulty("day", CodeAddress.Day(offer.Day), "a clinic that has begun");
            List<string> shown = [.. form["shown"].OfType<string>().Distinct().Take(400)];
            var came = form["came"].OfType<string>().ToHashSet();
            var known = store.People.AsNoTracking().Where(p => shown.Contains(p.Key) && p.Key != offer.TaughtBy).Select(p => p.Key).ToList();
            var before = store.Attendances.Where(a => a.Unit == offer.Unit && a.Day == offer.Day && a.TaughtBy == offer.TaughtBy).ToDictionary(a => a.Person);
            store.Actor = sitting.Actor;
            foreach (var person in known)
                if (came.Contains(person)) { if (!before.ContainsKey(person)) store.Put(new Attendance(person, offer.Unit, offer.Day, offer.TaughtBy)); }
                else if (before.TryGetValue(person, out var mistaken)) store.Remove(mistaken);
            store.SaveChanges();
            return Results.Redirect($"/training/clinic?unit={Uri.EscapeDataString(offer.Unit)}&day={CodeAddress.Day(offer.Day)}&place={Uri.EscapeDataString(offer.Place)}");
        }).Needs(Deed.Teach);
    }
}
