using System.Text;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>
/// What an instructor changed about a lesson, in a text file of their own that making the lesson anew never overwrites: what to show, how long, and notes.
/// Each difference remembers what it said when the note was written, so that a change of the code is noticed.
/// </summary>
public sealed record InstructorFile(IReadOnlyList<Wish> Wishes)
{
    private static readonly string[] Shows = ["slide", "row", "no", "as it comes"];
    private const int LongestNote = 2000;

    public static InstructorFile Empty { get; } = new([]);

    /// <summary>Reads the file; null, with every fault, when a line cannot be read. Nothing is then made.</summary>
    public static InstructorFile? Read(string file, string text, List<Finding> findings)
    {
        var before = findings.Count;
        var wishes = new List<Wish>();
        void Fault(int line, string message) => findings.Add(new(FindingKind.UnreadableLine, file, line, message));
        foreach (var line in SourceLine.Of(text))
        {
            var colon = line.Text.IndexOf(':');
            var (key, rest) = colon < 0 ? (line.Text, "") : (line.Text[..colon].Trim(), line.Text[(colon + 1)..].Trim());
            if (key.StartsWith("difference ", StringComparison.Ordinal) || key.StartsWith("slide ", StringComparison.Ordinal))
            {
                var name = key[(key.IndexOf(' ') + 1)..].Trim();
                if (wishes.Any(w => w.Key == name)) Fault(line.Number, $"'{name}' stands here a second time");
                wishes.Add(new(name, rest, null, null, null, null));
                continue;
            }
            if (wishes.Count == 0) { Fault(line.Number, $"cannot read '{line.Short}'; a part begins with 'difference KEY: name' or 'slide KEY: name'"); continue; }
            var last = wishes[^1];
            switch (key)
            {
                case "show" when Shows.Contains(rest): wishes[^1] = last with { Show = rest == "as it comes" ? null : rest }; break;
                case "show": Fault(line.Number, $"'show' is '{rest}'; allowed is {Words.Or(Shows)}"); break;
                case "seconds" when int.TryParse(rest, out var seconds) && seconds is >= 5 and <= 1800: wishes[^1] = last with { Seconds = seconds }; break;
                case "seconds": Fault(line.Number, $"'seconds' is '{rest}'; allowed is a whole number from 5 to 1800"); break;
                case "note" when rest.Length <= LongestNote: wishes[^1] = last with { Note = last.Note is null ? rest : $"{last.Note}\n{rest}" }; break;
                case "note": Fault(line.Number, $"a note has {rest.Length} characters; allowed are {LongestNote}, begin another line with 'note:'"); break;
                case "said": wishes[^1] = last with { Print = rest }; break;
                default: Fault(line.Number, $"cannot read '{line.Short}'; write 'show: {Words.Or(Shows)}', 'seconds: 40' or 'note: …'"); break;
            }
        }
        return findings.Count > before ? null : new InstructorFile(wishes);
    }

    /// <summary>What went stale: differences that are gone, and those whose rulings, rules or sources are not what they were.</summary>
    internal IReadOnlyList<Stale> Stale(IReadOnlyList<Contrast> now)
    {
        var stale = new List<Stale>();
        foreach (var wish in Wishes.Where(w => w.Print is not null))
        {
            var contrast = now.FirstOrDefault(c => c.Key == wish.Key);
            var noted = wish.Note is null ? "" : $"; your note: {wish.Note.ReplaceLineEndings(" / ")}";
            if (contrast is null) stale.Add(new(wish.Key, $"gone: {wish.Name}{noted}"));
            else if (contrast.Print != wish.Print) stale.Add(new(wish.Key, $"changed: {wish.Name}; now {contrast.InShort}{noted}"));
        }
        if (Wishes.Any(w => w.Print is not null))
            stale.AddRange(now.Where(c => Wishes.All(w => w.Key != c.Key)).Select(c => new Stale(c.Key, $"new: {Name(c)}")));
        return stale;
    }

    private static string Name(Contrast c) => $"{c.Sheet}: {c.Turns[0].Decision}: {c.InShort}";

    /// <summary>These wishes with one more, or with another in its place.</summary>
    public InstructorFile With(Wish wish) => new([.. Wishes.Where(w => w.Key != wish.Key), Wishes.FirstOrDefault(w => w.Key == wish.Key) is { } old ? wish with { Print = wish.Print ?? old.Print } : wish]);

    /// <summary>
    /// The file to be written: what the instructor wrote, kept, and every difference with what it says now. What went stale and has not been
    /// <paramref name="seen"/> stays stale.
    /// </summary>
    public static string Write(Lesson lesson, bool seen = true)
    {
        var first = lesson.Wishes.All(w => w.Print is null);
        var text = new StringBuilder();
        text.AppendLine($"# Yours: {lesson.Title}.");
        text.AppendLine("# Under each difference you may write   show: slide | row | no      seconds: 40      note: what you want to say");
        text.AppendLine("# Make the lesson again with the same folder: what you wrote stays, and you are told what the code has changed since. Leave the lines 'said' alone.");
        var wishes = lesson.Wishes.ToDictionary(w => w.Key);
        foreach (var slide in lesson.Slides.Where(s => s.Kind != SlideKind.Pair)) Part(text, "slide", slide.Key, slide.Title, wishes.GetValueOrDefault(slide.Key), null);
        foreach (var contrast in lesson.All.Where(c => seen || first || wishes.ContainsKey(c.Key)))
        {
            var wish = wishes.GetValueOrDefault(contrast.Key);
            Part(text, "difference", contrast.Key, Name(contrast), wish, seen ? contrast.Print : wish?.Print ?? contrast.Print);
        }
        var known = lesson.Slides.Select(s => s.Key).Concat(lesson.All.Select(c => c.Key)).ToHashSet();
        foreach (var gone in lesson.Wishes.Where(w => !known.Contains(w.Key) && (!seen || w.Show is not null || w.Seconds is not null || w.Note is not null)))
            Part(text, gone.Print is null ? "slide" : "difference", gone.Key, !seen || gone.Name.StartsWith("(gone) ", StringComparison.Ordinal) ? gone.Name : $"(gone) {gone.Name}", gone, gone.Print);
        return text.ToString();
    }

    private static void Part(StringBuilder text, string kind, string key, string name, Wish? wish, string? print)
    {
        text.AppendLine().AppendLine($"{kind} {key}: {name}");
        if (wish?.Show is { } show) text.AppendLine($"  show: {show}");
        if (wish?.Seconds is { } seconds) text.AppendLine($"  seconds: {seconds}");
        if (wish?.Note is { } note) foreach (var line in note.Split('\n')) text.AppendLine($"  note: {line}");
        if (print is not null) text.AppendLine($"  said: {print}");
    }
}
