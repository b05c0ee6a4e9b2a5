using System.Text;
using static Umpirage.District.Clinic.Markup;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>What the speaker has in hand: for every slide the time on the clock, what to do, and what stands behind it. For printing on paper.</summary>
public static class NotesPage
{
    public static string Html(Lesson lesson, bool linked = false)
    {
        var page = HandoutPage.Begin($"{Words.Upper(lesson.Title)}: notes", linked);
        page.AppendLine($"<h1>{Safe(Words.Upper(lesson.Title))}: speaker's notes</h1><p>{lesson.Slides.Count} slides, {lesson.Seconds / 60} min {lesson.Seconds % 60} s. In the browser the arrow keys turn the slides and n shows these notes.</p><table class=\"clock\"><thead><tr><th>Clock</th><th>Slide</th><th>What to say and do</th></tr></thead>");
        var at = 0;
        for (var i = 0; i < lesson.Slides.Count; i++)
        {
            var slide = lesson.Slides[i];
            page.AppendLine($"<tr><td>{OnTheClock(at)}</td><td>{i + 1}</td><td><b>{Safe(slide.Title)}</b>{Of(lesson, slide)}</td></tr>");
            at += slide.Seconds;
        }
        return HandoutPage.End(page.AppendLine("</table>"));
    }

    /// <summary>The notes of one slide.</summary>
    internal static string Of(Lesson lesson, Slide slide)
    {
        var (here, there) = Names(lesson.Here, lesson.There);
        var notes = new StringBuilder($"<p>{(slide.Kind == SlideKind.Pair && slide.Contrasts[0].Alone ? OneCode : Do(slide.Kind))}</p>");
        if (slide.Note is { } note) notes.Append($"<p class=\"own\">{Safe(note).Replace("\n", "<br>")}</p>");
        foreach (var b in slide.Beliefs) notes.Append($"<p>{Safe(Words.Upper(b.Belief.Sheet))}: {Safe(b.By.Why)} [{Safe(b.By.Rule)}] That it is believed: {Safe(b.Belief.Source)}.</p>");
        foreach (var contrast in slide.Contrasts)
        {
            if (lesson.Wishes.FirstOrDefault(w => w.Key == contrast.Key)?.Note is { } said && slide.Kind != SlideKind.Pair) notes.Append($"<p class=\"own\">{Safe(contrast.Sheet)}: {Safe(said).Replace("\n", "<br>")}</p>");
            notes.Append($"<p><b>{Safe(Words.Upper(contrast.Sheet))}</b>{(contrast.Alone ? "" : contrast.When == "always" ? ": differs always" : ": differs when " + Safe(contrast.When))}.");
            foreach (var turn in contrast.Turns)
                notes.Append($" {Safe(Words.Upper(turn.Decision))}: {(contrast.Alone ? "" : Ruled(here, turn.Here, turn.HereBy) + ", ")}{Ruled(there, turn.There, turn.ThereBy)}.");
            notes.Append("</p>");
        }
        if (slide.Numbers.Count > 0) notes.Append($"<p>{string.Join(" ", slide.Numbers.Select(row => $"{Safe(Words.Upper(row.Name))}: {Safe(row.HereSource)} / {Safe(row.ThereSource)}."))}</p>");
        return notes.ToString();
    }

    private const string OneCode = "Read the first play and let the room rule it. Then the second: one fact is otherwise. What is the ruling now, and why?";

    private static string Ruled(string code, string ruled, RuledBy by) => $"{Safe(code)} <b>{Safe(ruled)}</b> [{by.Rule}: {Safe(by.Title)}; {Safe(by.Source)}]";

    private static string Do(SlideKind kind) => kind switch
    {
        SlideKind.Opening => "Hand out the paper. Say how long it takes, and when questions are taken.",
        SlideKind.Beliefs => "Read out what is believed. Hands up who agrees. Then the ruling.",
        SlideKind.Pair => "Read both plays. Let the room rule the first by the code they know. Then the new one, and why. Then the second play: one fact is otherwise.",
        SlideKind.Table => "Let the room rule the first row before they read the last column; the rest is reading.",
        SlideKind.Numbers => "Do not read the numbers out. Ask which of them surprises.",
        SlideKind.Only => "Name the subjects. They need a lesson of their own.",
        SlideKind.Closing => "Collect questions that stayed open.",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}
