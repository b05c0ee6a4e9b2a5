using System.Text;
using Umpirage.District.Diamonds;
using static Umpirage.District.Clinic.Markup;

namespace Umpirage.District.Clinic;

/// <summary>
/// The slides of a lesson as one page that needs nothing else: arrow keys turn, n shows the speaker's notes, and printing gives a slide with its notes on
/// each sheet.
/// </summary>
public static class DeckPage
{
    /// <summary>The page as text.</summary>
    public static string Html(Lesson lesson, IReadOnlyDictionary<string, Picture> pictures)
    {
        var (here, there) = Names(lesson.Here, lesson.There);
        var page = new StringBuilder();
        page.AppendLine($"<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width,initial-scale=1\"><title>{Safe(LessonMaker.Upper(lesson.Title))}</title><style>{Style}</style></head><body>");
        var at = 0;
        for (var i = 0; i < lesson.Slides.Count; i++)
        {
            var slide = lesson.Slides[i];
            page.AppendLine($"<section id=\"s{i + 1}\" class=\"{slide.Kind.ToString().ToLowerInvariant()}\">");
            page.AppendLine($"<header><span>{Safe(slide.Kicker)}</span><span>{i + 1} / {lesson.Slides.Count}</span></header>");
            Body(page, lesson, slide, here, there, pictures);
            page.AppendLine($"<aside class=\"notes\"><b>{OnTheClock(at)} to {OnTheClock(at + slide.Seconds)}</b>{Notes(lesson, slide, here, there)}</aside></section>");
            at += slide.Seconds;
        }
        page.AppendLine($"<script>{Script}</script></body></html>");
        return page.ToString();
    }

    private static void Body(StringBuilder page, Lesson lesson, Slide slide, string here, string there, IReadOnlyDictionary<string, Picture> pictures)
    {
        switch (slide.Kind)
        {
            case SlideKind.Opening:
                page.AppendLine($"<div class=\"middle\"><h1>{Safe(there)}</h1><p class=\"lead\">for {Safe(lesson.Audience)}s who know {Safe(here)}</p><p>{lesson.All.Count} plays are ruled otherwise, {lesson.Numbers.Count} numbers differ.<br>All of them are in your handout. We look at {lesson.Slides.Count(s => s.Kind == SlideKind.Pair)} plays together.</p></div>");
                return;
            case SlideKind.Closing:
                page.AppendLine("<div class=\"middle\"><h1>Take home</h1><ul class=\"lead\"><li>The handout has every difference, with its source.</li><li>Cover the last column and rule it yourself.</li><li>The printed rule book and local rules decide.</li></ul></div>");
                return;
            case SlideKind.Pair:
                Pair(page, slide.Contrasts[0], here, there, pictures);
                return;
        }
        page.AppendLine($"<h2>{Safe(slide.Title)}</h2><table>");
        if (slide.Kind == SlideKind.Only)
            foreach (var row in slide.Only) page.AppendLine($"<tr><th>{Safe(LessonMaker.Upper(row.Game))} only</th><td><b>{Safe(LessonMaker.Upper(row.Sheet))}.</b> {Safe(row.About)}</td></tr>");
        else if (slide.Kind == SlideKind.Numbers)
        {
            page.AppendLine($"<tr><th></th><th class=\"from\">{Safe(here)}</th><th class=\"to\">{Safe(there)}</th></tr>");
            foreach (var row in slide.Numbers) page.AppendLine($"<tr><td><b>{Safe(LessonMaker.Upper(row.Name))}</b> <span class=\"of\">{(row.Name.Contains(row.Sheet, StringComparison.OrdinalIgnoreCase) ? "" : Safe(row.Sheet))}</span></td><td class=\"from\">{Safe(row.Here)}</td><td class=\"to\">{Safe(row.There)}</td></tr>");
        }
        else
        {
            page.AppendLine($"<tr><th>The play</th><th class=\"from\">{Safe(here)}</th><th class=\"to\">{Safe(there)}</th></tr>");
            foreach (var contrast in slide.Contrasts)
                page.AppendLine($"<tr><td><b>{Safe(LessonMaker.Upper(contrast.Sheet))}.</b> {Safe(contrast.Situation)}</td><td class=\"from\">{Cell(contrast, t => t.Here)}</td><td class=\"to\">{Cell(contrast, t => t.There)}</td></tr>");
        }
        page.AppendLine("</table>");
        foreach (var caution in slide.Contrasts.Select(c => c.Caution).Concat(slide.Numbers.Select(n => n.Caution)).OfType<string>().Distinct()) page.AppendLine($"<p class=\"caution\">{Safe(caution)}</p>");
    }

    private static string Cell(Contrast contrast, Func<Turn, string> side) =>
        string.Join("<br>", contrast.Turns.Take(TurnsInARow).Select(t => $"{Safe(t.Decision)}: <b>{Safe(side(t))}</b>"));

    // the first ruling that differs and what follows from it first; the handout has them all
    internal const int TurnsInARow = 2;

    private static void Pair(StringBuilder page, Contrast contrast, string here, string there, IReadOnlyDictionary<string, Picture> pictures)
    {
        var drawing = Drawing(pictures, contrast);
        var size = contrast.Situation.Length switch { < 150 => "big", < 260 => "mid", _ => "small" };
        page.AppendLine($"<h2>{Safe(LessonMaker.Upper(contrast.Sheet))}</h2><div class=\"play {size}\"><p>{Safe(contrast.Situation)}</p>{drawing}</div><div class=\"sides n{Math.Min(4, contrast.Turns.Count)}\">");
        Side(page, "from", here, contrast, t => t.Here, t => t.HereBy);
        Side(page, "to", there, contrast, t => t.There, t => t.ThereBy);
        page.AppendLine("</div>");
        if (contrast.Caution is { } caution) page.AppendLine($"<p class=\"caution\">{Safe(caution)}</p>");
        if (contrast.Agree is { } agree) page.AppendLine($"<p class=\"agree\"><b>Change one thing:</b> {Safe(agree)}</p>");
    }

    private static void Side(StringBuilder page, string which, string code, Contrast contrast, Func<Turn, string> ruled, Func<Turn, RuledBy> by)
    {
        page.AppendLine($"<div class=\"{which}\"><h3>{(which == "from" ? "You know: " : "Now: ")}{Safe(code)}</h3>");
        foreach (var turn in contrast.Turns) page.AppendLine($"<p class=\"turn\"><span>{Safe(turn.Ask)}</span> <b>{Safe(ruled(turn))}</b></p>");
        var first = by(contrast.Turns[0]);
        page.AppendLine($"<p class=\"why\">{Safe(LessonMaker.Upper(first.Reason ?? first.Title))}{(first.Reason is null ? "." : "")} <cite>{Safe(first.Source)}</cite></p></div>");
    }

    private static string Notes(Lesson lesson, Slide slide, string here, string there)
    {
        var notes = new StringBuilder();
        if (slide.Note is { } note) notes.Append($"<p class=\"own\">{Safe(note).Replace("\n", "<br>")}</p>");
        foreach (var contrast in slide.Contrasts)
        {
            if (lesson.Wishes.FirstOrDefault(w => w.Key == contrast.Key)?.Note is { } said && slide.Kind != SlideKind.Pair) notes.Append($"<p class=\"own\">{Safe(contrast.Sheet)}: {Safe(said).Replace("\n", "<br>")}</p>");
            notes.Append($"<p><b>{Safe(LessonMaker.Upper(contrast.Sheet))}</b>: differs {(contrast.When == "always" ? "always" : "when " + Safe(contrast.When))}.");
            foreach (var turn in contrast.Turns)
                notes.Append($" {Safe(turn.Decision)}: {Safe(here)} {Safe(turn.Here)} [{turn.HereBy.Rule}: {Safe(turn.HereBy.Title)}; {Safe(turn.HereBy.Source)}], {Safe(there)} {Safe(turn.There)} [{turn.ThereBy.Rule}: {Safe(turn.ThereBy.Title)}; {Safe(turn.ThereBy.Source)}].");
            notes.Append("</p>");
        }
        foreach (var row in slide.Numbers) notes.Append($"<p>{Safe(row.Sheet)}, {Safe(row.Name)}: {Safe(row.HereSource)}; {Safe(row.ThereSource)}.</p>");
        if (slide.Kind == SlideKind.Table) notes.Insert(0, "<p>Let the room rule the first two rows before you show the last column; the rest is reading.</p>");
        if (slide.Kind == SlideKind.Pair) notes.Insert(0, "<p>Read the play. Let the room rule it by the code they know. Then the new one, and why. Then change the one thing.</p>");
        return notes.ToString();
    }

    private const string Style = """
        *{box-sizing:border-box}html{font-family:"Liberation Sans",Arial,Helvetica,sans-serif;color:#111;background:#fff}body{margin:0}
        section{width:100vw;height:56.25vw;padding:2vw 3.4vw;display:none;position:relative;overflow:hidden;background:#fff;page-break-after:always;break-after:page}
        section.on{display:block}header{display:flex;justify-content:space-between;font-size:1.7vw;font-weight:bold;color:#333;border-bottom:.25vw solid #111;padding-bottom:.5vw}
        h1{font-size:6vw;margin:0 0 1vw}h2{font-size:3.5vw;margin:.9vw 0 .7vw;line-height:1.1}h3{font-size:2vw;margin:0 0 .6vw}
        .middle{height:80%;display:flex;flex-direction:column;justify-content:center;font-size:2.7vw;line-height:1.4}.lead{font-size:3.4vw;margin:.4vw 0}.lead li{margin-bottom:1vw}
        .play{display:flex;gap:2vw;align-items:flex-start;justify-content:space-between}.play p{margin:0;line-height:1.3}.big p{font-size:3vw}.mid p{font-size:2.5vw}.small p{font-size:2.1vw}
        figure{margin:0;flex:0 0 14vw;text-align:center}svg{width:12.5vw;height:12.5vw;border:.15vw solid #555}figcaption{font-size:1.4vw}
        .sides{display:grid;grid-template-columns:1fr 1fr;gap:2vw;margin-top:.8vw}.sides>div{border:.3vw solid #111;border-radius:.8vw;padding:1vw 1.4vw}.from{background:#f1f1f1}.to{background:#fff3c4}
        .turn{margin:.4vw 0;line-height:1.15}.turn span{display:block;font-size:1.75vw}.turn b{font-size:3vw}.n1 .turn b{font-size:3.6vw}.n2 .turn b{font-size:2.5vw}.n3 .turn b{font-size:2.1vw}.n3 .turn span{font-size:1.6vw}.n3 .turn{margin:.2vw 0}
        .why{font-size:1.7vw;margin:.7vw 0 0;line-height:1.25}cite{font-style:normal;color:#333;display:block;font-size:1.5vw}.caution{font-size:2vw;font-weight:bold;border:.25vw solid #111;padding:.5vw 1vw;margin:1vw 0 0}.agree{font-size:2.1vw;margin:.6vw 0 0;line-height:1.2}
        table{border-collapse:collapse;width:100%;font-size:1.85vw;line-height:1.22}th,td{border-bottom:.15vw solid #555;padding:.6vw .9vw;text-align:left;vertical-align:top}td.from,td.to,th.from,th.to{width:24%}
        .numbers table{font-size:2.1vw}.numbers td,.numbers th{padding:.4vw .9vw}.numbers .of{color:#444;font-size:1.8vw}.only table{font-size:2.2vw}.only th{white-space:nowrap}
        .notes{display:none}.shownotes section.on{height:auto;min-height:56.25vw}.shownotes .notes,.print .notes{display:block;font-size:1.5vw;line-height:1.35;border-top:.2vw solid #111;margin-top:1.5vw}.own{background:#e3f0ff;padding:.4vw .8vw}
        polygon,polyline{fill:none;stroke:#333;stroke-width:.8}.grass{fill:#e6efe0;stroke:none}.dirt{fill:#f2e5d3;stroke:none}.base{fill:#fff;stroke:#111}.coloured{fill:#ffb066;stroke:#111}.figure{fill:#111}svg text{fill:#fff;font-size:8px;font-weight:bold;text-anchor:middle}
        @media print{@page{size:landscape;margin:10mm}section{display:block!important;height:auto!important;min-height:0;overflow:visible}.notes{display:block!important;font-size:8.5pt;line-height:1.25;border-top:1px solid #111;margin-top:3mm}.notes p{margin:1mm 0}}
        """;

    private const string Script = """
        const all=[...document.querySelectorAll('section')];let at=Math.max(0,Math.min(all.length-1,(parseInt(location.hash.slice(1))||1)-1));
        function show(){all.forEach((s,i)=>s.classList.toggle('on',i===at));history.replaceState(null,'','#'+(at+1))}
        addEventListener('keydown',e=>{if(['ArrowRight','PageDown',' ','Enter'].includes(e.key))at=Math.min(all.length-1,at+1);else if(['ArrowLeft','PageUp'].includes(e.key))at=Math.max(0,at-1);else if(e.key==='Home')at=0;else if(e.key==='End')at=all.length-1;else if(e.key==='n')document.body.classList.toggle('shownotes');else return;e.preventDefault();show()});
        addEventListener('click',e=>{at=Math.max(0,Math.min(all.length-1,at+(e.clientX<innerWidth/4?-1:1)));show()});addEventListener('hashchange',()=>{at=Math.max(0,Math.min(all.length-1,(parseInt(location.hash.slice(1))||1)-1));show()});show();
        """;
}
