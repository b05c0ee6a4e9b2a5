using Microsoft.AspNetCore.Mvc;
using Umpirage.District.Cases;
using Umpirage.District.People;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;
using Umpirage.Store;

namespace Umpirage.Web.Deeds;

/// <summary>Keeps a ruled question in the log, and marks one as looked at.</summary>
internal static class QuestionDeeds
{
    public static void Map(WebApplication app)
    {
        app.MapPost("/questions", ([FromForm] string sheet, [FromForm] string code, [FromForm] string? words, IFormCollection form, [FromForm] bool? open, Sitting sitting, Shelf shelf, DistrictStore store) =>
        {
            var asking = new Asking(Typed.Cut(words, 600), Typed.Cut(code, 100), Typed.Cut(sheet, 80), [.. form["f"].OfType<string>().Take(Asking.MostFacts).Select(x => Typed.Cut(x, 200))], []);
            var findings = new List<Finding>();
            if (shelf.Table(asking.Code, asking.Sheet, sitting.Today, findings) is not { } table) return Results.BadRequest(string.Join("\n", findings));
            var situation = Situation.Read(table.Sheet, "said", asking.Said.Select(s => new Rules.Codes.Phrase(s, 0)), findings);
            if (findings.Count > 0) return Results.BadRequest(string.Join("\n", findings));
            // ruled again here: what is kept is what the code says, not what the page says it said
            var answer = Answer.Of(Usual.Rule(table, situation, []), [], []);
            store.Actor = sitting.Actor;
            var key = $"q-{Guid.CreateVersion7():N}";
            store.Questions.Add(new AskedQuestion(key, sitting.UtcNow, sitting.Viewer.Person!.Key, asking.Words, asking.Sheet, answer.Code, string.Join("; ", asking.Said), string.Join("; ", answer.Ruling), answer.Log, open == true || !answer.Ruled));
            store.SaveChanges();
            return sitting.Viewer.May(Deed.SeeQuestions) ? Results.Redirect($"/questions#{key}") : Doors.Show<Parts.Told>(new { Title = "Kept", Text = "Your question is in the log." });
        }).Needs(Deed.KeepQuestion);
        app.MapPost("/questions/{key}/done", (string key, IFormCollection _, Sitting sitting, DistrictStore store) =>
        {
            if (store.Questions.Find(key) is not { } question) return Results.NotFound();
            store.Actor = sitting.Actor;
            store.Put(question with { Open = false });
            store.SaveChanges();
            return Results.Redirect("/questions");
        }).Needs(Deed.SeeQuestions);
    }
}
