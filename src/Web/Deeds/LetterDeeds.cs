using Microsoft.AspNetCore.Mvc;
using Umpirage.District.People;
using Umpirage.Store;
using Umpirage.Web.Parts;

namespace Umpirage.Web.Deeds;

/// <summary>Makes a letter ready to send from the writer's own mail. Nothing is sent from here.</summary>
internal static class LetterDeeds
{
    public static void Map(WebApplication app)
    {
        app.MapPost("/letters", (IFormCollection form, [FromForm] string? second, [FromForm] string? subject, [FromForm] string? text, Sitting sitting, DistrictStore store) =>
        {
            var keys = form["to"].OfType<string>().Take(50).ToList();
            List<Person> people = [.. store.People.Where(p => keys.Contains(p.Key))];
            var faults = new List<FieldFault>();
            var letter = Letter.For(people, sitting.Viewer.Person!, second is null ? null : store.People.Find(second), child => [.. store.People.Where(p => store.Guardianships.Any(g => g.Child == child.Key && g.Guardian == p.Key))], faults);
            if (letter is null) return Doors.Faulty(faults);
            store.Actor = sitting.Actor;
            store.Trail.Add(new() { At = DateTime.UtcNow, By = store.Actor, What = "Letter", Key = string.Join(", ", letter.To.Concat(letter.Copy).Select(p => p.Key)), Deed = "made", After = letter.About.Count > 0 ? $"about {string.Join(", ", letter.About.Select(p => p.Key))}" : null });
            store.SaveChanges();
            return Doors.Show<LetterShown>(new { Letter = letter, Subject = Typed.Cut(subject, 120), Text = Typed.Cut(text, 4000) });
        }).Needs(Deed.WriteLetters);
    }
}
