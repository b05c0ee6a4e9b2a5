using Microsoft.AspNetCore.Mvc;
using Umpirage.District.People;
using Umpirage.Rules.Ground;
using Umpirage.Store;

namespace Umpirage.Web.Deeds;

/// <summary>Changes a person. Only the fields of the form are taken; the rest stays as it is on record.</summary>
internal static class PersonDeeds
{
    public static void Map(WebApplication app)
    {
        app.MapPost("/people/{key}", (string key, [FromForm] string given, [FromForm] string? family, [FromForm] string band, [FromForm] string? adultOn, [FromForm] string? phone, [FromForm] string? mail, Sitting sitting, DistrictStore store) =>
        {
            if (store.People.Find(key) is not { } before) return Results.NotFound();
            var faults = new List<FieldFault>();
            if (AgeBands.Read(band) is not { } age) { faults.Add(new("age band", band, Words.Or([.. Enum.GetValues<AgeBand>().Select(b => b.Words())]))); age = before.Band; }
            DateOnly? day = null;
            if (!string.IsNullOrWhiteSpace(adultOn)) { if (CodeAddress.TryDate(adultOn.Trim(), out var read)) day = read; else faults.Add(new("comes of age on", adultOn, "a day written 2027-03-01")); }
            var after = Person.Of(key, Text(given), Text(family), age, day, before.League, Optional(phone), Optional(mail), faults);
            if (age.IsMinor() && store.Roles.Any(r => r.Person == key) && !store.Guardianships.Any(g => g.Child == key)) faults.Add(new("age band", band, "an adult's, until a guardian is on record"));
            if (age.IsMinor() && store.Guardianships.Any(g => g.Guardian == key)) faults.Add(new("age band", band, "an adult's, since this person is a guardian"));
            if (after is null || faults.Count > 0) return Doors.Faulty([.. faults]);
            store.Actor = sitting.Actor;
            store.Put(after);
            store.SaveChanges();
            return Results.Redirect($"/people/{Uri.EscapeDataString(key)}");
        }).Needs(Deed.ChangePeople);
    }

    private static string Text(string? text) => Typed.Cut(text, 80);
    private static string? Optional(string? text) => Typed.Cut(text, 120) is { Length: > 0 } some ? some : null;
}
