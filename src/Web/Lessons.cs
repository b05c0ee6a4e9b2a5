using System.Collections.Concurrent;
using Umpirage.District.Clinic;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Web;

/// <summary>Which lesson is asked for: the code they know, the code they learn, who they are, and minutes; and, with ';' between, the subjects it is cut to, if any.</summary>
public sealed record LessonAsk(string One, string Two, string Audience, int Minutes, string Subject = "")
{
    public const int Fewest = 10, Most = 240;

    /// <summary>The same as the end of an address.</summary>
    public string Query => $"one={Uri.EscapeDataString(One)}&two={Uri.EscapeDataString(Two)}&audience={Uri.EscapeDataString(Audience)}&minutes={Minutes}{(Subject == "" ? "" : $"&subject={Uri.EscapeDataString(Subject)}")}";

    public IReadOnlyList<string> Subjects => Subject.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
}

/// <summary>
/// Lessons as the desk has them: made from the codes as they stand, with what instructors wrote in files of their own, which no change of the code
/// overwrites.
/// </summary>
public sealed class Lessons(Settings settings, Shelf shelf)
{
    private const int MostKept = 20;

    private readonly ConcurrentDictionary<(string Stamp, LessonAsk Ask, DateOnly Day, string Own), (Lesson? Lesson, IReadOnlyList<Finding> Findings)> made = [];
    private readonly Lock writing = new();
    private (string Stamp, Syllabus Syllabus)? read;

    public Syllabus Syllabus
    {
        get
        {
            if (read is { } kept && kept.Stamp == shelf.Stamp) return kept.Syllabus;
            var (book, findings) = (shelf.Book, new List<Finding>());
            var plan = LessonPlan.Read("plan.txt", File.ReadAllText(Path.Combine(settings.Codes, "lessons", "plan.txt")), book, findings) ?? throw new InvalidDataException(string.Join("; ", findings));
            var beliefs = MisbeliefReader.Read("misbeliefs.txt", File.ReadAllText(Path.Combine(settings.Codes, "lessons", "misbeliefs.txt")), book, findings);
            var asked = book.Sheets.ToDictionary(s => s.Name, s => Path.Combine(settings.Casebook, Words.Slug(s.Name)) is var folder && Directory.Exists(folder) ? Directory.GetFiles(folder, "*.play").Length : 0);
            var syllabus = new Syllabus(book, shelf.Phrases, plan, beliefs, asked);
            read = (shelf.Stamp, syllabus);
            return syllabus;
        }
    }

    /// <summary>The lesson asked for; null with the reasons.</summary>
    public Lesson? Of(LessonAsk ask, DateOnly day, List<string> faults)
    {
        var (here, there) = (Casebook.Code(shelf.Book, ask.One, day, faults.Add), Casebook.Code(shelf.Book, ask.Two, day, faults.Add));
        if (here is null || there is null) return null;
        if (made.Count > MostKept) made.Clear();
        var own = Own(ask);
        var (lesson, findings) = made.GetOrAdd((shelf.Stamp, ask, day, own), _ =>
        {
            var found = new List<Finding>();
            var edits = InstructorFile.Read("your notes", own, found);
            return (edits is null ? null : LessonMaker.Of(Syllabus, here, there, ask.Audience, edits, found, ask.Minutes, ask.Subjects), found);
        });
        faults.AddRange(findings.Select(f => f.ToString()));
        return lesson;
    }

    /// <summary>What instructors wrote for this lesson; nothing when nobody did.</summary>
    public string Own(LessonAsk ask) => File.Exists(Name(ask)) ? File.ReadAllText(Name(ask)) : "";

    /// <summary>Keeps a wish about one difference or slide, or, without one, that what went stale was looked at; false when somebody else wrote since.</summary>
    public bool Keep(LessonAsk ask, DateOnly day, Wish? wish, string before, List<string> faults)
    {
        lock (writing)
        {
            var own = Own(ask);
            if (Stamped(own) != before) { faults.Add("somebody else changed this lesson meanwhile; look at it again and write your part anew"); return false; }
            var found = new List<Finding>();
            var edits = InstructorFile.Read("your notes", own, found);
            var (here, there) = (Casebook.Code(shelf.Book, ask.One, day, faults.Add), Casebook.Code(shelf.Book, ask.Two, day, faults.Add));
            var lesson = edits is null || here is null || there is null ? null : LessonMaker.Of(Syllabus, here, there, ask.Audience, wish is null ? edits : edits.With(wish), found, ask.Minutes, ask.Subjects);
            faults.AddRange(found.Select(f => f.ToString()));
            if (lesson is null) return false;
            Directory.CreateDirectory(settings.Lessons);
            var file = Name(ask);
            File.WriteAllText(file + ".new", InstructorFile.Write(lesson, seen: wish is null));
            File.Move(file + ".new", file, overwrite: true);
            return true;
        }
    }

    /// <summary>A short name of what stands in a file, to notice that somebody else wrote.</summary>
    public static string Stamped(string own) => Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(own)))[..12];

    // letters and digits only: what was asked comes from outside; of the subjects a short name, for they may be many
    private string Name(LessonAsk ask) => Path.Combine(settings.Lessons, new string([.. $"{ask.One}--{ask.Two}--{ask.Audience}{(ask.Subject == "" ? "" : $"--{Stamped(ask.Subject)}")}".ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')]) + ".txt");
}
