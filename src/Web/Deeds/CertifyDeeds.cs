using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.Clinic;
using Umpirage.District.People;
using Umpirage.Rules.Ground;
using Umpirage.Store;

namespace Umpirage.Web.Deeds;

/// <summary>Prints a test and its key, keeps a test that was sat, a talk about a close one, and gives a certificate.</summary>
internal static class CertifyDeeds
{
    public static void Map(WebApplication app)
    {
        foreach (var (name, paper) in (ValueTuple<string, Func<Exam, Shelf, string>>[])
        [
            ("paper", (exam, shelf) => TestPage.Html(exam.Kind, exam.Form, exam.Person.ListName, shelf.Pictures, linked: true)), ("key", (exam, _) => TestPage.Key(exam.Kind, exam.Form, exam.Person.ListName, linked: true)),
        ])
            app.MapGet($"/certify/{name}", (string? kind, string? person, Sitting sitting, Shelf shelf, Classroom classroom, DistrictStore store) =>
            {
                var faults = new List<FieldFault>();
                return Exam.Of(store, classroom, sitting, Typed.Cut(kind, 64), Typed.Cut(person, 64), faults) is { } exam ? Results.Text(paper(exam, shelf), "text/html; charset=utf-8") : Doors.Faulty([.. faults]);
            }).Needs(Deed.Teach);
        app.MapPost("/certify/test", ([FromForm] string kind, [FromForm] string person, [FromForm] string form, [FromForm] string? stamp, IFormCollection sent, Sitting sitting, Shelf shelf, Classroom classroom, DistrictStore store) =>
        {
            var faults = new List<FieldFault>();
            if (Exam.Of(store, classroom, sitting, Typed.Cut(kind, 64), Typed.Cut(person, 64), faults) is not { } exam) return Doors.Faulty([.. faults]);
            if (exam.Form.Id != form) faults.Add(new("form", Typed.Cut(form, 80), $"{exam.Form.Id}, the form that is next for {exam.Person.ListName}; the other may have been sat already"));
            else if (stamp != exam.Form.Print) faults.Add(new("the form's letters", Typed.Cut(stamp, 20), $"{exam.Form.Print}: the questions have changed since this form was opened or printed; print it anew"));
            var chosen = exam.Form.Questions.Select((q, i) => (Question: q, Text: sent[$"a{i + 1}"].ToString())).ToList();
            foreach (var (strange, i) in chosen.Select((c, i) => (c, i)).Where(x => x.c.Text != "" && !x.c.Question.Choices.Any(o => o.Text == x.c.Text))) faults.Add(new($"question {i + 1}", Typed.Cut(strange.Text, 60), "one of the answers offered, or none"));
            if (faults.Count > 0) return Doors.Faulty([.. faults]);
            var now = sitting.Passing;
            List<Answered> answers = [.. chosen.Select(c => Answered.Of(c.Question, exam.Person.Key, c.Text == "" ? null : c.Text, now, 0, shelf.Stamp, exam.Form.Id))];
            store.Actor = sitting.Actor;
            store.Answers.AddRange(answers);
            store.Sittings.Add(new Sat(exam.Person.Key, exam.Kind.Id, exam.Form.Id, sitting.Today, answers.Count(a => a.Right), answers.Count, exam.Kind.Cut, Math.Round(exam.Cut.Error, 3), exam.Kind.Code, exam.Kind.Position, sitting.Viewer.Person!.Key, null));
            try { store.SaveChanges(); }
            catch (DbUpdateException) { return Doors.Faulty("form", exam.Form.Id, "a form that was not handed in already"); }
            classroom.Kept(answers.Count);
            return Results.Redirect($"/training/{Uri.EscapeDataString(exam.Person.Key)}#{Words.Slug(exam.Kind.Id)}");
        }).Needs(Deed.Teach);
        app.MapPost("/certify/talk", ([FromForm] string person, [FromForm] string kind, [FromForm] string form, IFormCollection _, Sitting sitting, DistrictStore store) =>
        {
            if (store.Sittings.Find(person, kind, form) is not { } sat) return Results.NotFound();
            if (sat.Verdict != Verdict.Close || sat.Score < sat.Cut) return Doors.Faulty("test", sat.InWords, "one at or above the cut, within its standard error; below the cut only another form helps");
            if (person == sitting.Viewer.Person!.Key) return Doors.Faulty("talked by", sitting.Viewer.Person.ListName, "somebody else than who sat the test");
            store.Actor = sitting.Actor;
            store.Put(sat with { TalkedBy = sitting.Viewer.Person.Key });
            store.SaveChanges();
            return Results.Redirect($"/training/{Uri.EscapeDataString(person)}#{Words.Slug(kind)}");
        }).Needs(Deed.Certify);
        app.MapPost("/certify/issue", ([FromForm] string person, [FromForm] string kind, IFormCollection _, Sitting sitting, Classroom classroom, DistrictStore store) =>
        {
            if (classroom.Certificates.Find(kind) is not { } wanted || store.People.Find(person) is null) return Results.NotFound();
            if (person == sitting.Viewer.Person!.Key) return Doors.Faulty("person", sitting.Viewer.Person.ListName, "somebody else than who gives the certificate");
            List<Attendance> attended = [.. store.Attendances.AsNoTracking().Where(a => a.Person == person)];
            List<Sat> sat = [.. store.Sittings.AsNoTracking().Where(s => s.Person == person)];
            List<Division> divisions = [.. store.Divisions.AsNoTracking()];
            if (District.Clinic.Needs.Award(wanted, person, attended, sat, divisions, sitting.Today) is not { } certificate)
            {
                var needs = District.Clinic.Needs.Of(wanted, person, attended, sat, [], sitting.Today);
                return Doors.Faulty(needs.Count > 0 ? [.. needs.Select(n => new FieldFault(n.What, n.Why, "there before a certificate is given"))] : [new("division", wanted.Code, "a code that a division of this district is played under")]);
            }
            store.Actor = sitting.Actor;
            store.Put(certificate);
            store.SaveChanges();
            return Results.Redirect($"/training/{Uri.EscapeDataString(person)}#{Words.Slug(kind)}");
        }).Needs(Deed.Certify);
    }
}
