using System.Text;
using static Umpirage.District.Clinic.Markup;

namespace Umpirage.District.Clinic;

/// <summary>What is handed out: every difference with its source, and a quiz; and the key to it. For printing on paper.</summary>
public static class HandoutPage
{
    /// <summary>The handout: plays to rule first, then everything that differs.</summary>
    public static string Html(Lesson lesson, LessonPlan plan)
    {
        var (here, there) = Names(lesson.Here, lesson.There);
        var page = Begin($"{LessonMaker.Upper(lesson.Title)}: handout");
        page.AppendLine($"<h1>{Safe(LessonMaker.Upper(lesson.Title))}</h1><p>Handout for {Safe(lesson.Audience)}s. Codes: {Safe(lesson.Here.Address.ToString())} and {Safe(lesson.There.Address.ToString())}. Advice from a stated edition; the printed rule book and local authority rule.</p>");
        page.AppendLine("<h2>Rule these plays under both codes</h2><ol class=\"quiz\">");
        foreach (var contrast in lesson.Quiz)
            page.AppendLine($"<li><p>{Safe(contrast.Situation)} <b>{Safe(contrast.Turns[0].Ask)}</b></p><p class=\"blank\"><span>{Safe(here)}:</span><span>{Safe(there)}:</span></p></li>");
        page.AppendLine("</ol><h2 class=\"new\">What is counted and measured</h2>");
        page.AppendLine($"<table><tr><th>Subject</th><th>Number</th><th>{Safe(here)}</th><th>{Safe(there)}</th></tr>");
        foreach (var row in lesson.Numbers)
            page.AppendLine($"<tr><td>{Safe(row.Sheet)}</td><td>{Safe(row.Name)}</td><td>{Safe(row.Here)}<small>{Safe(row.HereSource)}</small></td><td><b>{Safe(row.There)}</b><small>{Safe(row.ThereSource)}</small></td></tr>");
        page.AppendLine("</table>");
        foreach (var caution in lesson.Numbers.Select(n => n.Caution).OfType<string>().Distinct()) page.AppendLine($"<p><b>{Safe(caution)}</b></p>");
        if (lesson.Only.Count > 0)
        {
            page.AppendLine("<h2>Subjects that only one game knows</h2><table>");
            foreach (var row in lesson.Only) page.AppendLine($"<tr><td>{Safe(LessonMaker.Upper(row.Game))} only</td><td><b>{Safe(row.Sheet)}</b></td><td>{Safe(row.About)}</td></tr>");
            page.AppendLine("</table>");
        }
        foreach (var group in lesson.All.GroupBy(c => c.Group))
        {
            page.AppendLine($"<h2>{Safe(plan.Groups[group.Key])}</h2><table class=\"plays\"><tr><th>The play, and when it differs</th><th>{Safe(here)}</th><th>{Safe(there)}</th></tr>");
            foreach (var contrast in group)
                page.AppendLine($"<tr><td><b>{Safe(LessonMaker.Upper(contrast.Sheet))}.</b> {Safe(contrast.Situation)}<small>Differs {(contrast.When == "always" ? "always" : "when " + Safe(contrast.When))}.</small></td><td>{Side(contrast, t => t.Here, t => t.HereBy)}</td><td>{Side(contrast, t => t.There, t => t.ThereBy)}</td></tr>");
            page.AppendLine("</table>");
            foreach (var caution in group.Select(c => c.Caution).OfType<string>().Distinct()) page.AppendLine($"<p><b>{Safe(caution)}</b></p>");
            foreach (var follow in lesson.Follows.Where(f => f.Group == group.Key))
                page.AppendLine($"<p>{Safe(LessonMaker.Upper(follow.Sheet))}: where {Safe(follow.Line.When)}, {Safe(follow.Line.Decision)}: {Safe(follow.Line.Here)} / {Safe(follow.Line.There)}. It follows from a ruling that only one of the two codes ever makes.</p>");
        }
        return End(page);
    }

    /// <summary>The key to the quiz.</summary>
    public static string Key(Lesson lesson)
    {
        var (here, there) = Names(lesson.Here, lesson.There);
        var page = Begin($"{LessonMaker.Upper(lesson.Title)}: key");
        page.AppendLine($"<h1>Key: {Safe(lesson.Title)}</h1><table><tr><th></th><th>The play</th><th>{Safe(here)}</th><th>{Safe(there)}</th></tr>");
        for (var i = 0; i < lesson.Quiz.Count; i++)
        {
            var (contrast, turn) = (lesson.Quiz[i], lesson.Quiz[i].Turns[0]);
            page.AppendLine($"<tr><td>{i + 1}</td><td>{Safe(contrast.Situation)} {Safe(turn.Ask)}</td><td><b>{Safe(turn.Here)}</b>{By(turn.HereBy)}</td><td><b>{Safe(turn.There)}</b>{By(turn.ThereBy)}</td></tr>");
        }
        return End(page.AppendLine("</table>"));
    }

    private static string Side(Contrast contrast, Func<Turn, string> ruled, Func<Turn, RuledBy> by) =>
        string.Join("", contrast.Turns.Select(t => $"<div>{Safe(t.Decision)}: <b>{Safe(ruled(t))}</b></div>")) + By(by(contrast.Turns[0]));

    private static string By(RuledBy by) => $"<small>{Safe(LessonMaker.Upper(by.Title))} [{Safe(by.Rule)}]. {Safe(by.Source)}</small>";

    private static StringBuilder Begin(string title) => new StringBuilder($"<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>{Safe(title)}</title><style>").Append(Style).AppendLine("</style></head><body>");

    private static string End(StringBuilder page) => page.AppendLine("</body></html>").ToString();

    private const string Style = """
        html{font-family:"Liberation Sans",Arial,Helvetica,sans-serif;font-size:12pt;line-height:1.3;color:#111;background:#fff}body{max-width:190mm;margin:8mm auto;padding:0 4mm}h1{font-size:22pt;line-height:1.15;margin:0 0 3mm}h2{font-size:16pt;margin:7mm 0 2mm;break-after:avoid}
        table{border-collapse:collapse;width:100%}th,td{border:1px solid #555;padding:1.1mm 1.6mm;text-align:left;vertical-align:top}tr{break-inside:avoid}thead,tr:first-child th{background:#eee}small{display:block;font-size:9.5pt;line-height:1.2;color:#222;margin-top:.6mm}.plays{table-layout:fixed}.plays th:first-child{width:44%}
        .quiz li{break-inside:avoid;margin-bottom:4mm}.quiz p{margin:0 0 1mm}.blank{display:flex;gap:6mm}.blank span{flex:1;border-bottom:1px solid #111;height:10mm}.new{break-before:page}
        @media print{@page{margin:11mm}body{margin:0;max-width:none;padding:0}}
        """;
}
