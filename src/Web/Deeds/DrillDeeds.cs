using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.Clinic;
using Umpirage.District.People;
using Umpirage.Store;

namespace Umpirage.Web.Deeds;

/// <summary>Keeps an answer of a drill. The first answer to a question that was put counts: going back changes nothing.</summary>
internal static class DrillDeeds
{
    public static void Map(WebApplication app) =>
        app.MapPost("/drill", ([FromForm] string code, [FromForm] string q, [FromForm] string? asked, [FromForm] string? since, [FromForm] string? answer, IFormCollection _, Sitting sitting, Shelf shelf, Classroom classroom, DistrictStore store) =>
        {
            var faults = new List<string>();
            var now = sitting.Passing;
            var drill = new Drilling(Typed.Cut(code, 100), Drilling.Moment(since, now, TimeSpan.FromDays(1)));
            if (classroom.Bank(drill.Code, sitting.Today, faults) is not { } bank) return Doors.Faulty("code", drill.Code, string.Join("; ", faults));
            if (bank.Find(Typed.Cut(q, 20)) is not { } question) return Doors.Faulty("question", Typed.Cut(q, 20), "a question of this code; the rule code may have changed meanwhile, begin again");
            if (classroom.InTests(bank.Code.Address.ToString(), sitting.Today).Contains(question.Case)) return Doors.Faulty("question", question.Id, "one that stands in no test of this year; take the drill's next question");
            var chosen = question.Choices.FirstOrDefault(c => c.Text == answer)?.Text;
            if (chosen is null && !string.IsNullOrEmpty(answer)) return Doors.Faulty("answer", Typed.Cut(answer, 80), "one of the answers offered");
            var at = Drilling.Moment(asked, now, TimeSpan.FromSeconds(Answered.MostSeconds));
            var person = sitting.Viewer.Person!.Key;
            if (!store.Answers.Any(a => a.Person == person && a.At == at && a.Question == question.Id))
            {
                store.Actor = sitting.Actor;
                store.Answers.Add(Answered.Of(question, person, chosen, at, (int)(now - at).TotalSeconds, shelf.Stamp));
                store.SaveChanges();
                classroom.Kept(1);
            }
            return Results.Redirect(drill.Answered(question.Id, at));
        }).Needs(Deed.Drill);
}
