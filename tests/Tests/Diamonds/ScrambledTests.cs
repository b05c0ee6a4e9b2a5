using Umpirage.District.Diamonds;
using Umpirage.District.Gear;
using Umpirage.Paper;

namespace Umpirage.Tests.Diamonds;

/// <summary>Lists of tapes and gear with letters, numbers and lines changed at random: told what is wrong, never thrown.</summary>
public class ScrambledTests
{
    private static string Spoilt(Random random, string text)
    {
        var lines = text.Split('\n').ToList();
        for (var n = random.Next(1, 5); n > 0; n--)
        {
            var at = random.Next(lines.Count);
            switch (random.Next(5))
            {
                case 0: lines.RemoveAt(at); if (lines.Count == 0) lines.Add(""); break;
                case 1: lines.Insert(at, lines[random.Next(lines.Count)]); break;
                case 2 when lines[at].Length > 0: var cut = random.Next(lines[at].Length); lines[at] = lines[at][..cut] + (char)random.Next(32, 127) + lines[at][(cut + 1)..]; break;
                case 3: lines[at] = lines[at].Replace((char)('0' + random.Next(10)), (char)('0' + random.Next(10))); break;
                default: (lines[at], lines[^1]) = (lines[^1], lines[at]); break;
            }
        }
        return string.Join('\n', lines);
    }

    [Fact]
    public void Surveys()
    {
        IReadOnlyList<Layout> layouts = [LayoutTests.Of("softball/12U"), LayoutTests.Of("baseball/18U")];
        var names = Surveyor.Names(layouts);
        var text = File.ReadAllText(Folder.Of("demo", "low-field.survey"));
        var random = new Random(7);
        for (var run = 0; run < Folder.Count(500, 5000); run++)
        {
            var findings = new List<Finding>();
            var survey = SurveyFile.Read("a", Spoilt(random, text), names, findings);
            var found = survey is null ? null : Surveyor.Of(survey, layouts, findings);
            Assert.True(found is not null == (findings.Count == 0));
            if (found is not null) Assert.DoesNotContain("NaN", found.Text());
        }
    }

    [Fact]
    public void Gear()
    {
        var text = File.ReadAllText(Folder.Of("demo", "plate-meeting.gear"));
        var random = new Random(8);
        for (var run = 0; run < Folder.Count(200, 2000); run++)
        {
            var findings = new List<Finding>();
            var list = GearFile.Read("a", Spoilt(random, text), findings);
            var looked = list.Code == "" ? null : Inspector.Inspect(Shelf.Codes, list, "a", Shelf.Today, findings);
            if (looked is not null) Assert.NotEmpty(GearSheet.Text(list, looked));
            else Assert.NotEmpty(findings);
        }
    }

    [Fact]
    public void Local_layers_of_any_measure_are_laid_and_drawn_or_refused()
    {
        var sheets = Shelf.Files(Folder.Of("codes"), "field*.sheet").Select(f => new SourceText(Path.GetFileName(f), File.ReadAllText(f))).ToList();
        var random = new Random(9);
        for (var run = 0; run < Folder.Count(60, 500); run++)
        {
            string Feet(int most) => random.Next(8) == 0 ? "none" : $"{random.Next(0, most)} ft";
            var layer = $"Layer: Odd\nkind: district\ntitle: Odd\n\nSheet: field\nSet base distance\n  softball = {Feet(200)} | x | our own\nSet pitching distance\n  softball = {Feet(90)} | x | our own\n"
                + $"Set second base diagonal\n  softball = none | x | our own\nSet lane length\n  softball = {Feet(90)} | x | our own\nSet shortest fence\n  softball = {Feet(5000)} | x | our own\nSet longest fence\n  softball = none | x | our own\nSet grass line radius\n  softball = {Feet(200)} | x | our own\nSet backstop advised\n  softball = {Feet(90)} | x | our own\n";
            var book = Codebook.Read(("roster.txt", Shelf.RosterText), sheets.Append(new("odd.layer", layer)));
            Assert.Empty(book.Findings);
            var findings = new List<Finding>();
            var layout = Layout.Of(Shelf.Code(book, "softball/12U+Odd"), findings);
            if (layout is null) { Assert.NotEmpty(findings); continue; }
            Assert.NotEmpty(PlanPdf.Of(layout));
            Assert.DoesNotContain("NaN", PlanSvg.Of(layout, Window.Infield(layout)) + PlanDxf.Of(layout) + StakeOut.Of(layout).Text());
        }
    }
}
