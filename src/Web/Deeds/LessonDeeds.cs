using System.Globalization;
using Microsoft.AspNetCore.Mvc;
using Umpirage.District.Clinic;
using Umpirage.District.People;
using Umpirage.Rules.Ground;
using Umpirage.Store;
using Umpirage.Store.Files;

namespace Umpirage.Web.Deeds;

/// <summary>The papers of a lesson, and what an instructor changes about it.</summary>
internal static class LessonDeeds
{
    private const int LongestNote = 2000, LongestCode = 120, LongestSubject = 1000;

    public static void Map(WebApplication app)
    {
        app.MapGet("/lessons/deck.css", () => Results.Text(DeckPage.Style, "text/css")).Needs(Deed.ReadCodes);
        app.MapGet("/lessons/deck.js", () => Results.Text(DeckPage.Script, "text/javascript")).Needs(Deed.ReadCodes);
        app.MapGet("/lessons/paper.css", () => Results.Text(HandoutPage.Style, "text/css")).Needs(Deed.ReadCodes);
        foreach (var (name, paper) in (ValueTuple<string, Func<Lesson, Lessons, Shelf, string>>[])
        [
            ("deck", (lesson, _, shelf) => DeckPage.Html(lesson, shelf.Pictures, linked: true)), ("notes", (lesson, _, _) => NotesPage.Html(lesson, linked: true)),
            ("handout", (lesson, lessons, shelf) => HandoutPage.Html(lesson, lessons.Syllabus.Plan, shelf.Pictures, linked: true)), ("key", (lesson, _, _) => HandoutPage.Key(lesson, linked: true)),
        ])
            app.MapGet($"/lessons/{name}", (string? one, string? two, string? audience, string? minutes, string? subject, Sitting sitting, Lessons lessons, Shelf shelf) =>
            {
                var faults = new List<string>();
                var ask = Asked(lessons, shelf, one, two, audience, minutes, subject, faults);
                return faults.Count == 0 && lessons.Of(ask, sitting.Today, faults) is { } lesson ? Results.Text(paper(lesson, lessons, shelf), "text/html; charset=utf-8") : Told(faults);
            }).Needs(Deed.ReadCodes);
        app.MapPost("/lessons/slide", ([FromForm] string one, [FromForm] string two, [FromForm] string audience, [FromForm] string minutes, [FromForm] string? subject, [FromForm] string key, [FromForm] string before, [FromForm] string? show, [FromForm] string? seconds, [FromForm] string? note, Sitting sitting, Lessons lessons, Shelf shelf) =>
        {
            var faults = new List<string>();
            var ask = Asked(lessons, shelf, one, two, audience, minutes, subject, faults);
            int? wanted = string.IsNullOrWhiteSpace(seconds) ? null : int.TryParse(seconds, out var number) && number is >= 5 and <= 1800 ? number : -1;
            if (wanted == -1) faults.Add($"seconds: '{Typed.Cut(seconds, 40)}'; allowed is a whole number from 5 to 1800, or nothing");
            if (note?.Length > LongestNote) faults.Add($"the note has {note.Length} characters; allowed are {LongestNote}");
            var lesson = faults.Count == 0 ? lessons.Of(ask, sitting.Today, faults) : null;
            var slide = lesson?.Slides.FirstOrDefault(s => s.Key == key);
            if (lesson is not null && slide is null) faults.Add($"there is no slide '{Typed.Cut(key, 60)}' in this lesson; choose one from its list");
            if (faults.Count > 0 || slide is null) return Told(faults);
            var said = string.IsNullOrWhiteSpace(note) ? null : string.Join('\n', note.ReplaceLineEndings("\n").Split('\n').Select(l => l.Trim()).Where(l => l != ""));
            var wish = new Wish(key, slide.Title, show is "slide" or "row" or "no" ? show : null, wanted, said, slide.Kind == SlideKind.Pair ? slide.Contrasts[0].Print : null);
            return lessons.Keep(ask, sitting.Today, wish, before, faults) ? Results.Redirect($"/lessons?{ask.Query}#{Pages.LessonsPage.Anchor(key)}") : Told(faults);
        }).Needs(Deed.Teach);
        app.MapPost("/lessons/seen", ([FromForm] string one, [FromForm] string two, [FromForm] string audience, [FromForm] string minutes, [FromForm] string? subject, [FromForm] string before, Sitting sitting, Lessons lessons, Shelf shelf) =>
        {
            var faults = new List<string>();
            var ask = Asked(lessons, shelf, one, two, audience, minutes, subject, faults);
            return faults.Count == 0 && lessons.Keep(ask, sitting.Today, null, before, faults) ? Results.Redirect($"/lessons?{ask.Query}") : Told(faults);
        }).Needs(Deed.Teach);
    }

    /// <summary>The lesson that was asked for, with what is usual for what was left open; faults when something cannot be.</summary>
    internal static LessonAsk Asked(Lessons lessons, Shelf shelf, string? one, string? two, string? audience, string? minutes, string? subject, List<string> faults)
    {
        var (roster, plan) = (shelf.Book.Roster, lessons.Syllabus.Plan);
        var who = string.IsNullOrWhiteSpace(audience) ? plan.Audiences.Keys.First() : Typed.Cut(audience, 40);
        if (!plan.Audiences.ContainsKey(who)) faults.Add($"there is no audience '{who}'; {Words.Offer(who, [.. plan.Audiences.Keys])}");
        var time = plan["minutes"];
        if (!string.IsNullOrWhiteSpace(minutes) && (!int.TryParse(minutes, NumberStyles.None, CultureInfo.InvariantCulture, out time) || time is < LessonAsk.Fewest or > LessonAsk.Most))
            (time, _) = (plan["minutes"], Fault($"minutes: '{Typed.Cut(minutes, 40)}'; allowed is a whole number from {LessonAsk.Fewest} to {LessonAsk.Most}"));
        return new(Code(one, roster.Games[^1]), Code(two, roster.Games[0]), who, time, string.Join("; ", Typed.Cut(subject, LongestSubject).Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Distinct()));

        bool Fault(string message) { faults.Add(message); return false; }
        string Code(string? typed, string game) => string.IsNullOrWhiteSpace(typed) ? roster.UsualCode(game) : Typed.Cut(typed, LongestCode);
    }

    private static IResult Told(IReadOnlyList<string> faults) =>
        Doors.Faulty([.. faults.Select(f => new FieldFault("lesson", "what was asked", f))]);
}
