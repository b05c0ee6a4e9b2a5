using System.Text;
using Umpirage.District.Diamonds;
using static Umpirage.District.Clinic.Markup;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>
/// The slides of a lesson as one page that needs nothing else: arrow keys turn, n shows the speaker's notes; printed, a slide a sheet. On a phone the slides
/// stand one below the other.
/// </summary>
public static class DeckPage
{
    /// <summary>The page as text; <paramref name="linked"/>: its looks and its script are taken from deck.css and deck.js beside it.</summary>
    public static string Html(Lesson lesson, IReadOnlyDictionary<string, Picture> pictures, bool linked = false) => new StringBuilder()
        .AppendLine($"<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width,initial-scale=1\"><title>{Safe(Words.Upper(lesson.Title))}</title>{(linked ? "<link rel=\"stylesheet\" href=\"deck.css\">" : $"<style>{Style}</style>")}</head><body>")
        .Append(Slides(lesson, pictures)).AppendLine(linked ? "<script src=\"deck.js\"></script></body></html>" : $"<script>{Script}</script></body></html>").ToString();

    /// <summary>The slides alone, for a page that brings its own head.</summary>
    public static string Slides(Lesson lesson, IReadOnlyDictionary<string, Picture> pictures)
    {
        var (here, there) = Names(lesson.Here, lesson.There);
        var page = new StringBuilder("<main>");
        var at = 0;
        for (var i = 0; i < lesson.Slides.Count; i++)
        {
            var slide = lesson.Slides[i];
            page.AppendLine($"<section id=\"s{i + 1}\" class=\"{slide.Kind.ToString().ToLowerInvariant()}\">");
            page.AppendLine($"<header><span>{Safe(slide.Kicker)}</span><span>{i + 1} / {lesson.Slides.Count}</span></header>");
            Body(page, lesson, slide, here, there, pictures);
            page.AppendLine($"<aside class=\"notes\"><b>{OnTheClock(at)} to {OnTheClock(at + slide.Seconds)}</b>{NotesPage.Of(lesson, slide)}</aside></section>");
            at += slide.Seconds;
        }
        return page.AppendLine("</main>").ToString();
    }

    private static void Body(StringBuilder page, Lesson lesson, Slide slide, string here, string there, IReadOnlyDictionary<string, Picture> pictures)
    {
        switch (slide.Kind)
        {
            case SlideKind.Opening:
                page.AppendLine($"<div class=\"middle\"><h1>{Safe(there)}</h1><p class=\"lead\">{Safe(Whom(lesson, here, there))}</p><p>{(here == there ? "" : $"{lesson.Differing} plays are ruled otherwise, {lesson.Numbers.Count} numbers differ.<br>")}All of it is in your handout. We look at {lesson.Slides.Count(s => s.Kind == SlideKind.Pair)} pairs of plays together.</p></div>");
                break;
            case SlideKind.Closing:
                page.AppendLine("<div class=\"middle\"><h1>Take home</h1><ul class=\"lead\"><li>The handout has all of it, with its source.</li><li>Cover the last column and rule it yourself.</li><li>The printed rule book and local rules decide.</li></ul></div>");
                break;
            case SlideKind.Pair:
                Pair(page, slide.Contrasts[0], here, there, pictures);
                break;
            case SlideKind.Beliefs:
                page.AppendLine($"<h2>{Safe(slide.Title)}</h2><table><tr><th>Many believe</th><th>The play</th><th class=\"to\">{Safe(there)}</th></tr>");
                foreach (var b in slide.Beliefs) page.AppendLine($"<tr><td>“{Safe(b.Belief.Said)}”</td><td>{Safe(b.Situation)}</td><td class=\"to\" data-code=\"{Safe(there)}\">{Safe(b.Belief.Decision)}: <b>{Safe(b.Ruled)}</b><cite>{Safe(b.By.Source)}</cite></td></tr>");
                page.AppendLine("</table>");
                break;
            case SlideKind.Only:
                page.AppendLine($"<h2>{Safe(slide.Title)}</h2><table>");
                foreach (var row in slide.Only) page.AppendLine($"<tr><th>{Safe(Words.Upper(row.Game))} only</th><td><b>{Safe(Words.Upper(row.Sheet))}.</b> {Safe(row.About)}</td></tr>");
                page.AppendLine("</table>");
                break;
            case SlideKind.Numbers:
                page.AppendLine($"<h2>{Safe(slide.Title)}</h2><table><tr><th>What is counted</th><th class=\"from\">{Safe(here)}</th><th class=\"to\">{Safe(there)}</th></tr>");
                foreach (var row in slide.Numbers) page.AppendLine($"<tr><td><b>{Safe(Words.Upper(row.Name))}</b> <span class=\"of\">{(row.Name.Contains(row.Sheet, StringComparison.OrdinalIgnoreCase) ? "" : Safe(row.Sheet))}</span></td><td class=\"from\" data-code=\"{Safe(here)}\">{Safe(row.Here)}</td><td class=\"to\" data-code=\"{Safe(there)}\">{Safe(row.There)}</td></tr>");
                page.AppendLine("</table>");
                break;
            case SlideKind.Table:
                page.AppendLine($"<h2>{Safe(slide.Title)}</h2><table><tr><th>The play</th><th class=\"from\">{Safe(here)}</th><th class=\"to\">{Safe(there)}</th></tr>");
                foreach (var plays in PlayRows.Of(slide.Contrasts)) Rows(page, plays, here, there);
                page.AppendLine("</table>");
                break;
        }
        foreach (var caution in slide.Contrasts.Select(c => c.Caution).Concat(slide.Numbers.Select(n => n.Caution)).OfType<string>().Distinct()) page.AppendLine($"<p class=\"caution\">{Safe(caution)}</p>");
    }

    private static string Whom(Lesson lesson, string here, string there) =>
        $"{(lesson.Subjects.Count == 0 ? "" : Words.Upper(string.Join(", ", lesson.Subjects)) + ", ")}for {lesson.Audience}s{(here == there ? "" : $" who know {here}")}";

    private static void Rows(StringBuilder page, PlayRows plays, string here, string there)
    {
        var named = $"<b>{Safe(Words.Upper(plays.Sheet))}.</b>";
        if (plays.Rows.Count > 1) page.AppendLine($"<tr class=\"all\"><td colspan=\"3\">{named} {Safe(string.Join(' ', plays.Common))}</td></tr>");
        foreach (var (contrast, told) in plays.Rows)
            page.AppendLine($"<tr><td{(plays.Rows.Count > 1 ? " class=\"part\"" : "")}>{(plays.Rows.Count > 1 ? "" : named + " ")}{Safe(told)}</td>{(contrast.Alone ? "" : $"<td class=\"from\" data-code=\"{Safe(here)}\">{Cell(contrast, t => t.Here)}</td>")}<td class=\"to\"{(contrast.Alone ? " colspan=\"2\"" : "")} data-code=\"{Safe(there)}\">{Cell(contrast, t => t.There)}</td></tr>");
    }

    private static string Cell(Contrast contrast, Func<Turn, string> side) =>
        string.Join("<br>", contrast.Turns.Take(PlayRows.TurnsInARow).Select(t => $"{Safe(t.Decision)}: <b>{Safe(side(t))}</b>"));

    private static void Pair(StringBuilder page, Contrast contrast, string here, string there, IReadOnlyDictionary<string, Picture> pictures)
    {
        page.AppendLine($"<h2>{Safe(Words.Upper(contrast.Sheet))}</h2>");
        if (contrast.Twin is not { } twin)
        {
            page.AppendLine($"<p class=\"both\">{Safe(contrast.Situation)}</p><div class=\"plays one\"><div class=\"play\">{Picture(pictures, contrast.Sheet, contrast.Given)}<div class=\"codes\">");
            Ruled(page, contrast, contrast.Turns, here, there);
            page.AppendLine("</div></div></div>");
            return;
        }
        var common = string.Join(' ', contrast.Told.Where(t => t != twin.First));
        var (first, second) = (Picture(pictures, contrast.Sheet, contrast.Given), Picture(pictures, contrast.Sheet, twin.Given));
        // two drawings that look alike would say that nothing is otherwise
        if (first == second) first = second = "";
        page.AppendLine($"<p class=\"both{(common.Length > 170 ? " long" : "")}\">{(common.Length == 0 ? "" : $"<span>In both plays:</span> {Safe(common)}")}</p><div class=\"plays n{Math.Min(PlayRows.TurnsInARow, contrast.Turns.Count)}{(twin.Alike && common.Length <= 170 ? "" : " tight")}\">");
        page.AppendLine($"<div class=\"play\"><h3>{Safe(twin.First)}</h3>{first}<div class=\"codes\">");
        Ruled(page, contrast, contrast.Turns, here, there);
        page.AppendLine($"</div></div><div class=\"play\"><h3>{Safe(twin.Second)}</h3>{second}<div class=\"codes\">");
        if (twin.Alike && !contrast.Alone) Code(page, "alike", "Both codes", twin.Turns, t => t.There, t => t.ThereBy);
        else Ruled(page, contrast, twin.Turns, here, there);
        page.AppendLine("</div></div></div>");
    }

    private static void Ruled(StringBuilder page, Contrast contrast, IReadOnlyList<Turn> turns, string here, string there)
    {
        if (!contrast.Alone) Code(page, "from", here, turns, t => t.Here, t => t.HereBy);
        Code(page, "to", there, turns, t => t.There, t => t.ThereBy);
    }

    private static void Code(StringBuilder page, string which, string code, IReadOnlyList<Turn> turns, Func<Turn, string> ruled, Func<Turn, RuledBy> by)
    {
        page.AppendLine($"<div class=\"code {which}\"><h4>{Safe(code)}</h4>");
        foreach (var turn in turns.Take(PlayRows.TurnsInARow)) page.AppendLine($"<p class=\"turn\"><span>{Safe(turn.Ask)}</span> <b>{Safe(ruled(turn))}</b></p>");
        page.AppendLine($"<p class=\"why\">{Safe(by(turns[0]).Why)} <cite>{Safe(by(turns[0]).Source)}</cite></p></div>");
    }

    private static string Picture(IReadOnlyDictionary<string, Picture> pictures, string sheet, IReadOnlyList<string> given) =>
        pictures.TryGetValue(sheet, out var picture) && Drawing.Of(picture, given) is { } drawing
            ? $"<figure>{drawing.Svg}<figcaption>{string.Join(", ", drawing.Legend.Select(l => $"<b>{l.Letter}</b> {l.Name}"))}</figcaption></figure>" : "";

    /// <summary>How slides look; a rem is a hundredth of the screen's width.</summary>
    public const string Style = """
        *{box-sizing:border-box}html{font-family:"Liberation Sans",Arial,Helvetica,sans-serif;font-size:1vw;color:#111;background:#fff}body{margin:0}
        section{width:100vw;height:56.25vw;padding:1.8rem 3.2rem;display:none;position:relative;overflow:hidden;background:#fff;break-after:page}
        section.on{display:block}header{display:flex;justify-content:space-between;font-size:1.7rem;font-weight:bold;color:#222;border-bottom:.25rem solid #111;padding-bottom:.4rem}
        h1{font-size:6rem;margin:0 0 1rem}h2{font-size:3.3rem;margin:.8rem 0 .6rem;line-height:1.1}h3{font-size:2.4rem;margin:0;line-height:1.2;flex:1 0 100%}h4{font-size:1.75rem;margin:0 0 .3rem}
        .middle{height:80%;display:flex;flex-direction:column;justify-content:center;font-size:2.7rem;line-height:1.4}.lead{font-size:3.4rem;margin:.4rem 0}.lead li{margin-bottom:1rem}
        .both{font-size:2.2rem;line-height:1.25;margin:0 0 .8rem;min-height:1rem}.both span{font-weight:bold}.both.long{font-size:1.95rem}
        .plays{display:grid;grid-template-columns:1fr 1fr;gap:1.6rem;align-items:start}.plays.one{grid-template-columns:1fr}.play{border:.3rem solid #111;border-radius:.8rem;padding:.8rem 1.1rem;display:flex;flex-wrap:wrap;gap:.7rem;align-items:flex-start}.codes{flex:1;display:grid;gap:.6rem}
        figure{margin:0;flex:0 0 15rem;text-align:center}figure svg{width:15rem;height:15rem;border:.15rem solid #555;display:block;margin:0 auto}figcaption{font-size:1.3rem}
        .code{border-radius:.5rem;padding:.5rem .9rem}.from{background:#f1f1f1}.to{background:#fff3c4}.alike{background:#e9f3e6}.code.from{border-left:.6rem solid #777}.code.to{border-left:.6rem solid #111}.code.alike{border-left:.6rem double #111}
        .turn{margin:.2rem 0;line-height:1.12}.turn span{font-size:1.6rem}.turn b{font-size:2.2rem;margin-left:.3rem}.n1 .turn span{display:block}.n1 .turn b{font-size:2.8rem;margin:0}.tight h3{font-size:2.1rem}.tight .turn b,.n1.tight .turn b{font-size:1.9rem}.tight .turn{margin:.1rem 0}.tight .code{padding:.3rem .8rem}.why{font-size:1.5rem;margin:.3rem 0 0;line-height:1.2}cite{font-style:normal;color:#222;display:block;font-size:1.3rem}
        .caution{font-size:2rem;font-weight:bold;border:.25rem solid #111;padding:.5rem 1rem;margin:1rem 0 0}
        table{border-collapse:collapse;width:100%;font-size:1.85rem;line-height:1.22}th,td{border-bottom:.15rem solid #555;padding:.5rem .9rem;text-align:left;vertical-align:top}td.from,td.to,th.from,th.to{width:24%}.all td{border-bottom:0}.part{padding-left:2.6rem}
        .numbers table{font-size:2.1rem}.numbers td,.numbers th{padding:.4rem .9rem}.numbers .of{color:#333;font-size:1.8rem}.only table{font-size:2.1rem}.only th{white-space:nowrap}.beliefs table{font-size:1.95rem}.beliefs td:first-child{width:33%;font-weight:bold}.beliefs td.to,.beliefs th.to{width:27%}
        .notes{display:none}.shownotes section.on{height:auto;min-height:56.25vw}.shownotes .notes{display:block;font-size:1.5rem;line-height:1.35;border-top:.2rem solid #111;margin-top:1.5rem}.own{background:#e3f0ff;padding:.4rem .8rem}
        @media screen and (max-width:800px){html{font-size:10px}section{display:block;width:auto;height:auto;padding:2rem 1.6rem;border-bottom:.6rem solid #111}header,figcaption,cite,.why,.turn span,h4{font-size:1.8rem}h1{font-size:3.6rem}h2{font-size:3rem}h3,.lead,.middle{font-size:2.4rem}.both,.both.long{font-size:2rem}.turn b,.n1 .turn b{font-size:2.8rem}
        .plays{grid-template-columns:1fr}figure{flex:1 0 100%}figure svg{width:22rem;height:22rem}table,tbody{font-size:1.9rem!important}tr{display:block;border-bottom:.2rem solid #111;padding:.6rem 0}td,th{display:block;width:auto!important;border:0;padding:.4rem .6rem}.caution{font-size:1.9rem}.numbers .of{font-size:1.8rem}.only th{white-space:normal}th.from,th.to{display:none}td[data-code]::before{content:attr(data-code) ": ";display:block;font-weight:bold}}
        @media print{@page{size:297mm 167mm;margin:0}html{font-size:2.97mm}section{display:block!important;width:297mm;height:167mm}.notes{display:none!important}}
        """;

    /// <summary>How slides are turned.</summary>
    public const string Script = """
        const all=[...document.querySelectorAll('section')];const asked=()=>Math.max(0,Math.min(all.length-1,(parseInt(location.hash.slice(1))||1)-1));let at=asked();
        function show(){all.forEach((s,i)=>s.classList.toggle('on',i===at));history.replaceState(null,'','#'+(at+1))}
        addEventListener('keydown',e=>{if(['ArrowRight','PageDown',' ','Enter'].includes(e.key))at=Math.min(all.length-1,at+1);else if(['ArrowLeft','PageUp'].includes(e.key))at=Math.max(0,at-1);else if(e.key==='Home')at=0;else if(e.key==='End')at=all.length-1;else if(e.key==='n')document.body.classList.toggle('shownotes');else return;e.preventDefault();show()});
        addEventListener('click',e=>{if(e.target.closest('a')||innerWidth<=800)return;at=Math.max(0,Math.min(all.length-1,at+(e.clientX<innerWidth/4?-1:1)));show()});addEventListener('hashchange',()=>{at=asked();show()});show();
        """;
}
