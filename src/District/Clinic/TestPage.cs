using Umpirage.District.Diamonds;
using static Umpirage.District.Clinic.Markup;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>A form of a test on paper, with the drawings of its plays, and its key.</summary>
public static class TestPage
{
    /// <summary>The questions, with room for a name and a letter to tick.</summary>
    public static string Html(TestForm form, IReadOnlyDictionary<string, Picture> pictures)
    {
        var page = HandoutPage.Begin(Words.Upper(form.Id));
        page.AppendLine($"<h1>{Safe(Words.Upper(form.Id))}</h1><p>Name: ______________________________  Date: ______________  One answer is right in each question.</p><ol class=\"quiz\">");
        foreach (var question in form.Questions)
        {
            page.AppendLine($"<li><p>{HandoutPage.Figure(pictures, question.Sheet, question.Given)}{Safe(question.Situation)} <b>{Safe(question.Ask)}</b></p><ul class=\"choices\">");
            for (var i = 0; i < question.Choices.Count; i++) page.AppendLine($"<li>\u2610 {(char)('a' + i)} {Safe(question.Choices[i].Text)}</li>");
            page.AppendLine("</ul></li>");
        }
        return HandoutPage.End(page.AppendLine("</ol>"));
    }

    /// <summary>The key: the letter, why, and the source.</summary>
    public static string Key(TestForm form)
    {
        var page = HandoutPage.Begin($"{Words.Upper(form.Id)}: key");
        page.AppendLine($"<h1>Key: {Safe(form.Id)}</h1><table><tr><th>No.</th><th>Answer</th><th>Why</th></tr>");
        for (var i = 0; i < form.Questions.Count; i++)
        {
            var question = form.Questions[i];
            var letter = (char)('a' + question.Choices.ToList().FindIndex(c => c.Right));
            page.AppendLine($"<tr><td>{i + 1}</td><td><b>{letter}</b> {Safe(question.Answer)}</td><td>{Safe(question.Reason ?? Words.Upper(question.Title))}<small>{Safe(question.Sheet)} [{Safe(question.Rule)}]. {Safe(question.Source)}</small></td></tr>");
        }
        return HandoutPage.End(page.AppendLine("</table>"));
    }
}
