using System.Text;
using Umpirage.District.Diamonds;
using Umpirage.Rules.Ground;
using static Umpirage.District.Clinic.Markup;

namespace Umpirage.District.Clinic;

/// <summary>A form of a test on paper for one person, with the drawings of its plays, and its key. Both tell the form and its ten letters, so that none is marked by the key of another.</summary>
public static class TestPage
{
    /// <summary>The questions, with a box to tick before each answer.</summary>
    public static string Html(CertificateKind kind, TestForm form, string name, IReadOnlyDictionary<string, Picture> pictures, bool linked = false)
    {
        var page = Begin(kind.Title, kind, form, name, linked);
        page.AppendLine("<p>Day and proctor: ______________________________  One answer is right in each question; one left open counts as wrong.</p><ol class=\"quiz\">");
        foreach (var question in form.Questions)
        {
            page.AppendLine($"<li><p>{HandoutPage.Figure(pictures, question.Sheet, question.Given)}{Safe(question.Situation)} <b>{Safe(question.Ask)}</b></p><ul class=\"choices\">");
            for (var i = 0; i < question.Choices.Count; i++) page.AppendLine($"<li>\u2610 {(char)('a' + i)} {Safe(question.Choices[i].Text)}</li>");
            page.AppendLine("</ul></li>");
        }
        return HandoutPage.End(page.AppendLine("</ol>"));
    }

    /// <summary>The key: the letter, why, and the source.</summary>
    public static string Key(CertificateKind kind, TestForm form, string name, bool linked = false)
    {
        var page = Begin($"{kind.Title}: key, for the proctor only", kind, form, name, linked);
        page.AppendLine("<table><thead><tr><th>No.</th><th>Answer</th><th>Why</th></tr></thead>");
        for (var i = 0; i < form.Questions.Count; i++)
        {
            var question = form.Questions[i];
            var letter = (char)('a' + question.Choices.ToList().FindIndex(c => c.Right));
            page.AppendLine($"<tr><td>{i + 1}</td><td><b>{letter}</b> {Safe(question.Answer)}</td><td>{Safe(question.Reason ?? Words.Upper(question.Title))}<small>{Safe(question.Sheet)} [{Safe(question.Rule)}]. {Safe(question.Source)}</small></td></tr>");
        }
        return HandoutPage.End(page.AppendLine("</table>"));
    }

    private static StringBuilder Begin(string title, CertificateKind kind, TestForm form, string name, bool linked) => HandoutPage.Begin(title, linked)
        .AppendLine($"<h1>{Safe(title)}</h1><p>Form {Safe(form.Id)}, {form.Print}. {form.Questions.Count} questions, {kind.Needed} right are the cut. Name: <b>{Safe(name)}</b></p>");
}
