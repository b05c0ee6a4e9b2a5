using System.Xml.Linq;
using Umpirage.District.Clinic;

namespace Umpirage.Tests.Clinic;

/// <summary>Questions with a drawing: what is told stands in it, another fact gives another drawing, and it is told in words as well.</summary>
public class PicturedTests
{
    private static IEnumerable<Question> All => Desk.Softball.Questions.Concat(Desk.Baseball.Questions);

    /// <summary>The kinds of pictured questions that a test has to have: runners and ball, feet and hands at the delivery, the box, the bases, time.</summary>
    [Theory]
    [InlineData("infield fly")]
    [InlineData("ball out of play")]
    [InlineData("batted ball hits a runner")]
    [InlineData("fair and foul")]
    [InlineData("delivery")]
    [InlineData("pitching position")]
    [InlineData("hands together and stepping back")]
    [InlineData("batter's box and contact")]
    [InlineData("double first base")]
    [InlineData("missed base")]
    [InlineData("time limit")]
    [InlineData("pitch time limit")]
    [InlineData("batter in the box between pitches")]
    [InlineData("lightning")]
    public void A_subject_has_questions_with_drawings_that_differ(string sheet)
    {
        var drawn = All.Where(q => q.Sheet == sheet).Select(q => q.Drawn(Desk.Pictures)).OfType<Umpirage.District.Diamonds.Drawing>().ToList();
        Assert.True(drawn.Count >= 2, $"{drawn.Count}");
        Assert.True(drawn.Select(d => d.Svg).Distinct().Count() >= 2);
    }

    [Fact]
    public void A_drawing_shows_only_what_the_question_tells_and_tells_it_in_words()
    {
        var count = 0;
        foreach (var question in All)
        {
            if (question.Drawn(Desk.Pictures) is not { } drawing) continue;
            count++;
            var svg = XDocument.Parse(drawing.Svg).Root!;
            Assert.Equal("img", svg.Attribute("role")!.Value);
            Assert.Equal(drawing.Words, svg.Attribute("aria-label")!.Value);
            Assert.All(drawing.Figures, f => Assert.Contains(f.Spot, drawing.Words));
            Assert.All(drawing.Figures, f => Assert.True(f is { X: >= 4 and <= 96, Y: >= 4 and <= 96 }, $"{question.Id} {f}"));
            // no figure hides another
            Assert.All(drawing.Figures, f => Assert.DoesNotContain(drawing.Figures, g => g != f && Math.Abs(f.X - g.X) < 8 && Math.Abs(f.Y - g.Y) < 8));
            var picture = Desk.Pictures[question.Sheet];
            var told = picture.Placings.Where(p => question.Given.Contains(p.Said)).Select(p => p.Spot).Distinct();
            Assert.Equal(told.Order(), drawing.Figures.Select(f => f.Spot).Where(picture.View.Spots.ContainsKey).Distinct().Order());
        }
        Assert.True(count > 500, $"{count} pictured questions");
    }

    [Fact]
    public void A_number_lies_where_it_belongs_on_its_line()
    {
        var picture = Desk.Pictures["pitch time limit"];
        double At(string seconds) => Umpirage.District.Diamonds.Drawing.Of(picture, [$"seconds is {seconds}"])!.Figures.Single().X;
        // the line runs from 8 to 92 for 0 to 30 seconds: 2.8 for each
        Assert.Equal((8.0, 50.0, 66.8, 92.0), (At("0"), At("15"), Math.Round(At("21"), 6), At("45")));
        Assert.Null(Umpirage.District.Diamonds.Drawing.Of(picture, ["runners is none"]));
    }

    [Fact]
    public void The_printed_test_has_the_drawings_and_the_key_the_letters()
    {
        var questions = Desk.Softball.Questions.Where(q => q.Sheet == "infield fly").Take(5).ToList();
        var kind = CertificateReader.Read("certificates.txt", File.ReadAllText(Folder.Of("codes", "clinic", "certificates.txt")), Shelf.Codes, [])!.Kinds[0];
        var form = new TestForm("infield fly 2026 A", questions);
        var page = TestPage.Html(kind, form, "Lark W", Desk.Pictures);
        Assert.Equal(questions.Count(q => q.Drawn(Desk.Pictures) is not null), page.Split("<svg").Length - 1);
        Assert.DoesNotContain("class=\"right\"", page);
        var key = TestPage.Key(kind, form, "Lark W");
        foreach (var paper in (string[])[page, key]) Assert.Contains($"Form infield fly 2026 A, {form.Print}", paper);
        foreach (var question in questions) Assert.Contains($"<b>{(char)('a' + question.Choices.ToList().IndexOf(question.Choices.Single(c => c.Right)))}</b> {question.Answer}", key);
    }
}
