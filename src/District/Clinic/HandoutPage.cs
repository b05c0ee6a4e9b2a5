using System.Text;
using Umpirage.District.Diamonds;
using static Umpirage.District.Clinic.Markup;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>What is handed out: plays to rule, what many believe, every difference with its source; and the key. For printing on paper.</summary>
public static class HandoutPage
{
    /// <summary>The handout: plays to rule first, then everything that differs; <paramref name="linked"/>: its looks are taken from the desk.</summary>
    public static string Html(Lesson lesson, LessonPlan plan, IReadOnlyDictionary<string, Picture> pictures, bool linked = false)
    {
        var (here, there) = Names(lesson.Here, lesson.There);
        var page = Begin($"{Words.Upper(lesson.Title)}: handout", linked);
        page.AppendLine($"<h1>{Safe(Words.Upper(lesson.Title))}</h1><p>Handout for {Safe(lesson.Audience)}s. {(here == there ? "Code:" : $"Codes: {Safe(lesson.Here.Address.ToString())} and")} {Safe(lesson.There.Address.ToString())}. Advice from a stated edition; the printed rule book and local authority rule.</p>");
        page.AppendLine($"<h2>Rule these plays{(lesson.Quiz.Any(c => c.Alone) ? "" : " under both codes")}</h2><ol class=\"quiz\">");
        foreach (var contrast in lesson.Quiz)
            page.AppendLine($"<li><p>{Figure(pictures, contrast.Sheet, contrast.Given)}{Safe(contrast.Situation)} <b>{Safe(contrast.Turns[0].Ask)}</b></p><p class=\"blank\">{(contrast.Alone ? "" : $"<span>{Safe(here)}:</span>")}<span>{Safe(there)}:</span></p></li>");
        page.AppendLine("</ol>");
        if (lesson.Beliefs.Count > 0)
        {
            page.AppendLine($"<h2>What many believe, and what {Safe(there)} says</h2><table><thead><tr><th>Many believe</th><th>The play</th><th>{Safe(there)}</th></tr></thead>");
            foreach (var b in lesson.Beliefs) page.AppendLine($"<tr><td>“{Safe(b.Belief.Said)}”</td><td>{Safe(b.Situation)}</td><td>{Safe(b.Belief.Decision)}: <b>{Safe(b.Ruled)}</b>{By(b.By)}</td></tr>");
            page.AppendLine("</table>");
        }
        if (lesson.Numbers.Count > 0) page.AppendLine($"<h2>What is counted and measured</h2><table class=\"numbers\"><thead><tr><th>Number</th><th>{Safe(here)}</th><th>{Safe(there)}</th></tr></thead>");
        foreach (var row in lesson.Numbers)
            page.AppendLine($"<tr><td><b>{Safe(Words.Upper(row.Name))}</b>{(row.Name.Contains(row.Sheet, StringComparison.OrdinalIgnoreCase) ? "" : $", {Safe(row.Sheet)}")}</td><td>{Safe(row.Here)} <small>{Safe(row.HereSource)}</small></td><td><b>{Safe(row.There)}</b> <small>{Safe(row.ThereSource)}</small></td></tr>");
        if (lesson.Numbers.Count > 0) page.AppendLine("</table>");
        foreach (var caution in lesson.Numbers.Select(n => n.Caution).OfType<string>().Distinct()) page.AppendLine($"<p><b>{Safe(caution)}</b></p>");
        if (lesson.Only.Count > 0)
        {
            page.AppendLine("<h2>Subjects that only one game knows</h2><table>");
            foreach (var row in lesson.Only) page.AppendLine($"<tr><td>{Safe(Words.Upper(row.Game))} only</td><td><b>{Safe(Words.Upper(row.Sheet))}.</b> {Safe(row.About)}</td></tr>");
            page.AppendLine("</table>");
        }
        foreach (var group in lesson.All.GroupBy(c => c.Group))
        {
            page.AppendLine($"<h2>{Safe(plan.Groups[group.Key])}</h2><table class=\"plays\"><thead><tr><th>The play</th><th>{Safe(here)}</th><th>{Safe(there)}</th></tr></thead>");
            foreach (var plays in PlayRows.Of([.. group])) Rows(page, plays);
            page.AppendLine("</table>");
            foreach (var caution in group.Select(c => c.Caution).OfType<string>().Distinct()) page.AppendLine($"<p><b>{Safe(caution)}</b></p>");
            foreach (var follow in lesson.Follows.Where(f => f.Group == group.Key))
                page.AppendLine($"<p>{Safe(Words.Upper(follow.Sheet))}: where {Safe(follow.Line.When)}, {Safe(follow.Line.Decision)}: {Safe(follow.Line.Here)} / {Safe(follow.Line.There)}. It follows from a ruling that only one of the two codes ever makes.</p>");
        }
        return End(page);
    }

    internal static string Figure(IReadOnlyDictionary<string, Picture> pictures, string sheet, IReadOnlyList<string> given) =>
        pictures.TryGetValue(sheet, out var picture) && Drawing.Of(picture, given) is { } drawing
            ? $"<span class=\"figure\">{drawing.Svg}<small>{string.Join(", ", drawing.Legend.Select(l => $"{l.Letter} {l.Name}"))}</small></span>" : "";

    private static void Rows(StringBuilder page, PlayRows plays)
    {
        var named = $"<b>{Safe(Words.Upper(plays.Sheet))}.</b>";
        if (plays.Rows.Count > 1) page.AppendLine($"<tr class=\"all\"><td colspan=\"3\">{named} {Safe(string.Join(' ', plays.Common))}</td></tr>");
        foreach (var (contrast, told) in plays.Rows)
        {
            var part = plays.Rows.Count > 1 ? " class=\"part\"" : "";
            page.AppendLine($"<tr><td{part}>{(plays.Rows.Count > 1 ? "" : named + " ")}{Safe(told)}</td>{Sides(contrast, contrast.Turns)}</tr>");
            if (contrast is { Alone: true, Twin: { } twin }) page.AppendLine($"<tr><td class=\"part\">Otherwise the same, but: {Safe(twin.Second)}</td>{Sides(contrast, twin.Turns)}</tr>");
        }
    }

    private static string Sides(Contrast contrast, IReadOnlyList<Turn> turns) =>
        contrast.Alone ? $"<td colspan=\"2\">{Side(turns, t => t.There, t => t.ThereBy)}</td>" : $"<td>{Side(turns, t => t.Here, t => t.HereBy)}</td><td>{Side(turns, t => t.There, t => t.ThereBy)}</td>";

    /// <summary>The key to the quiz.</summary>
    public static string Key(Lesson lesson, bool linked = false)
    {
        var (here, there) = Names(lesson.Here, lesson.There);
        var page = Begin($"{Words.Upper(lesson.Title)}: key", linked);
        page.AppendLine($"<h1>Key: {Safe(lesson.Title)}</h1><table><thead><tr><th>No.</th><th>The play</th><th>{Safe(here)}</th><th>{Safe(there)}</th></tr></thead>");
        for (var i = 0; i < lesson.Quiz.Count; i++)
        {
            var (contrast, turn) = (lesson.Quiz[i], lesson.Quiz[i].Turns[0]);
            page.AppendLine($"<tr><td>{i + 1}</td><td>{Safe(contrast.Situation)} {Safe(turn.Ask)}</td>{(contrast.Alone ? "<td colspan=\"2\">" : $"<td><b>{Safe(turn.Here)}</b>{By(turn.HereBy)}</td><td>")}<b>{Safe(turn.There)}</b>{By(turn.ThereBy)}</td></tr>");
        }
        return End(page.AppendLine("</table>"));
    }

    private static string Side(IReadOnlyList<Turn> turns, Func<Turn, string> ruled, Func<Turn, RuledBy> by) =>
        string.Join("; ", turns.Select(t => $"{Safe(t.Decision)}: <b>{Safe(ruled(t))}</b>")) + By(by(turns[0]));

    private static string By(RuledBy by) => $"<small>{Safe(Words.Upper(by.Title))} [{Safe(by.Rule)}]. {Safe(by.Source)}</small>";

    internal static StringBuilder Begin(string title, bool linked = false) => new StringBuilder($"<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width,initial-scale=1\"><title>{Safe(title)}</title>").Append(linked ? "<link rel=\"stylesheet\" href=\"/lessons/paper.css\">" : $"<style>{Style}</style>").AppendLine("</head><body><main>");

    internal static string End(StringBuilder page) => page.AppendLine("</main></body></html>").ToString();

    /// <summary>How printed pages look.</summary>
    public const string Style = """
        html{font-family:"Liberation Sans",Arial,Helvetica,sans-serif;font-size:11pt;line-height:1.25;color:#111;background:#fff}body{max-width:190mm;margin:8mm auto;padding:0 4mm}h1{font-size:20pt;line-height:1.15;margin:0 0 2mm}h2{font-size:14.5pt;margin:5mm 0 1.5mm;break-after:avoid}p{margin:0 0 2mm}
        table{border-collapse:collapse;width:100%}th,td{border:1px solid #555;padding:.8mm 1.4mm;text-align:left;vertical-align:top}tr{break-inside:avoid}thead th{background:#eee}thead{break-after:avoid}tbody tr:first-child{break-before:avoid}small{display:block;font-size:9pt;line-height:1.15;color:#111;margin-top:.4mm}.plays{table-layout:fixed}.plays th:first-child{width:40%}.plays .all{break-after:avoid}.plays .all td{background:#f4f4f4}.part{padding-left:4mm}
        .numbers small{display:inline}.clock p{margin:.6mm 0;font-size:10pt}.own{background:#e3f0ff;padding:1mm 2mm}
        .quiz{columns:2;column-gap:8mm;padding-left:6mm}.quiz li{break-inside:avoid;margin-bottom:3mm}.quiz p{margin:0 0 1mm}.figure{float:right;width:30mm;margin:0 0 1mm 3mm;text-align:center}.figure svg{width:30mm;height:30mm;border:1px solid #555}.quiz li::after{content:"";display:block;clear:both}.choices{list-style:none;margin:0;padding:0}.quiz .choices li{margin:0 0 .6mm}.quiz .choices li::after{content:none}.blank{display:flex;flex-direction:column}.blank span{border-bottom:1px solid #111;height:9mm}
        @media screen{html{font-size:18px}body{max-width:260mm}small,.clock p{font-size:16px}}
        @media screen and (max-width:800px){body{padding:0 2mm}.quiz{columns:1}tr,td,th{display:block;border:0}tr{border-bottom:2px solid #111;padding:2mm 0}}
        @media print{@page{margin:10mm}body{margin:0;max-width:none;padding:0}}
        """;
}
