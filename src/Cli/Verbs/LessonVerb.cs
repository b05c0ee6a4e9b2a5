using Umpirage.District.Clinic;
using Umpirage.District.Diamonds;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Cli.Verbs;

/// <summary>A lesson on what differs between two codes: slides, handout, key, and the instructor's own file.</summary>
internal static class LessonVerb
{
    private const string Usage = "name the code they know, the code they learn, and a folder: ./umpirage lesson baseball/12U softball/12U --out FOLDER [--for umpire] [--subject \"infield fly\"]";

    public static int Run(Request request)
    {
        var options = new Options(request, ["--for", "--out", "--subject"]);
        var (words, audience, typed) = (options.Words, options.Text("--for") ?? "umpire", options.Text("--out"));
        if (words.Count != 2 || typed is null) options.Faults.Add("which codes, and where to?");
        if (options.Faulty(Usage)) return Verb.Unusable;
        var folder = typed!;
        var book = Library.Codes(request);
        var findings = new List<Finding>(book.Findings);
        void Fault(string message) => findings.Add(new(FindingKind.UnknownWord, "lesson", 0, message));
        var (here, there) = (Casebook.Code(book, words[0], request.Today, Fault), Casebook.Code(book, words[1], request.Today, Fault));
        var phrases = PhraseReader.Read(Library.Phrases(request), book, findings);
        var planFile = Path.Combine(request.Codes, "lessons", "plan.txt");
        var plan = LessonPlan.Read(planFile, File.ReadAllText(planFile), book, findings);
        var beliefs = Library.Misbeliefs(request, book, findings);
        var own = Path.Combine(folder, "instructor.txt");
        var edits = File.Exists(own) ? InstructorFile.Read(own, File.ReadAllText(own), findings) : InstructorFile.Empty;
        var lesson = here is null || there is null || plan is null || edits is null || findings.Count > 0
            ? null : LessonMaker.Of(new(book, phrases, plan, beliefs, Library.Asked(request, book)), here, there, audience, edits, findings, subjects: options.All("--subject"));
        foreach (var finding in findings) Console.Error.WriteLine(finding);
        if (lesson is null) return Verb.Unusable;
        var pictures = Library.Pictures(request, book);
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, "deck.html"), DeckPage.Html(lesson, pictures));
        File.WriteAllText(Path.Combine(folder, "notes.html"), NotesPage.Html(lesson));
        File.WriteAllText(Path.Combine(folder, "handout.html"), HandoutPage.Html(lesson, plan!, pictures));
        File.WriteAllText(Path.Combine(folder, "key.html"), HandoutPage.Key(lesson));
        if (File.Exists(own)) File.Copy(own, own + ".before", overwrite: true);
        File.WriteAllText(own, InstructorFile.Write(lesson));
        if (request.Json) Json.Write(new { slides = lesson.Slides.Count, seconds = lesson.Seconds, differences = lesson.Differing, pairs = lesson.Slides.Count(s => s.Kind == SlideKind.Pair), numbers = lesson.Numbers.Count, only = lesson.Only.Count, stale = lesson.Stale.Select(t => new { slide = lesson.SlideOf(t.Key), words = t.Words }) });
        else
        {
            foreach (var stale in lesson.Stale) Console.WriteLine($"  {(lesson.SlideOf(stale.Key) is { } slide ? $"slide {slide}" : "no slide")}: {stale.Words}");
            Console.WriteLine($"{lesson.Slides.Count} slides, {lesson.Seconds / 60} min {lesson.Seconds % 60} s: {lesson.Differing} plays ruled otherwise, {lesson.Slides.Count(s => s.Kind == SlideKind.Pair)} pairs of plays, {lesson.Numbers.Count} numbers, {lesson.Only.Count} subjects of one game only; {lesson.Stale.Count} went stale");
            Console.WriteLine($"{folder}: deck.html, notes.html, handout.html, key.html, instructor.txt (yours to edit)");
        }
        return Verb.Fine;
    }
}
