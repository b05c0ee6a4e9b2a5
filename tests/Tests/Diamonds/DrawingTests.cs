using System.Diagnostics;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Graphics;
using Umpirage.District.Diamonds;
using Umpirage.Paper;

namespace Umpirage.Tests.Diamonds;

/// <summary>Drawings read back by other programs than the one that made them, and measured.</summary>
public partial class DrawingTests
{
    private static readonly string[] Divisions = ["softball/10U", "softball/12U+community", "softball/18U+USA", "baseball/12U", "baseball/14U", "baseball/18U+OBR"];

    /// <summary>A millimetre in points of PDF (72 to the inch).</summary>
    private const double Millimetre = 72 / 25.4;

    [GeneratedRegex(@"scale 1 : (\d+)")]
    private static partial Regex Scale();

    private static IEnumerable<(PdfPoint From, PdfPoint To)> Lines(UglyToad.PdfPig.Content.Page page) =>
        page.Paths.SelectMany(p => p).SelectMany(s => s.Commands).OfType<PdfSubpath.Line>().Select(l => (l.From, l.To));

    private static double Long((PdfPoint From, PdfPoint To) line) => Math.Sqrt(Math.Pow(line.From.X - line.To.X, 2) + Math.Pow(line.From.Y - line.To.Y, 2));

    [Fact]
    public void Paper_is_to_scale_within_a_fifth_of_a_millimetre()
    {
        foreach (var division in Divisions)
        {
            var layout = LayoutTests.Of(division);
            using var pdf = PdfDocument.Open(PlanPdf.Of(layout));
            // the infield: the measured side from home to first, and the way to second
            Has(pdf.GetPage(1), layout["home"].To(layout["first"]));
            Has(pdf.GetPage(1), layout["home"].To(layout["second"]));
            Has(pdf.GetPage(1), layout["home"].To(layout[LayoutTests.Plate]));
            // the plate: a side of the batter's box
            var box = layout.Courses.First(c => c.Name == "batter's box, first base side").Corners;
            Has(pdf.GetPage(2), box[0].To(box[1]));
            Has(pdf.GetPage(2), box[1].To(box[2]));

            void Has(UglyToad.PdfPig.Content.Page page, double feet)
            {
                var wanted = feet * 304.8 / int.Parse(Scale().Match(page.Text).Groups[1].Value);
                var nearest = Lines(page).Min(l => Math.Abs(Long(l) / Millimetre - wanted));
                Assert.True(nearest <= 0.2, $"{division}, page {page.Number}: {feet} ft should be {wanted:0.00} mm; the nearest line is off by {nearest:0.00} mm");
            }
        }
    }

    [Fact]
    public void The_corners_of_the_square_lie_to_scale_of_each_other_on_paper()
    {
        // the dimension lines first-second and second-third end where the bases are, moved aside alike: their lengths and the right angle between them
        var layout = LayoutTests.Of("softball/12U");
        using var pdf = PdfDocument.Open(PlanPdf.Of(layout));
        var page = pdf.GetPage(1);
        var side = 60 * 304.8 / int.Parse(Scale().Match(page.Text).Groups[1].Value) * Millimetre;
        // the grass line's radius is 60 ft, too, and lies at another angle
        var slopes = Lines(page).Where(l => Math.Abs(Long(l) - side) < 0.2 * Millimetre).Select(l => (l.To.Y - l.From.Y) / (l.To.X - l.From.X)).ToList();
        Assert.Equal((2, 2), (slopes.Count(s => Math.Abs(s - 1) < 1e-3), slopes.Count(s => Math.Abs(s + 1) < 1e-3)));
    }

    [Fact]
    public void Text_can_be_selected_lies_on_the_page_and_its_typeface_is_inside()
    {
        foreach (var division in Divisions)
        {
            var bytes = PlanPdf.Of(LayoutTests.Of(division));
            using var pdf = PdfDocument.Open(bytes);
            foreach (var page in pdf.GetPages())
            {
                Assert.Contains(division, page.Text);
                Assert.Contains("printed rule book", page.Text);
                Assert.All(page.Letters, l => Assert.True(l.BoundingBox.Left >= 10 && l.BoundingBox.Right <= page.Width - 10 && l.BoundingBox.Bottom >= 10 && l.BoundingBox.Top <= page.Height - 10, $"{division}, page {page.Number}: '{l.Value}' is off the page"));
                // embedded subsets carry a mark of six letters before their name (PDF 32000-1, 9.6.4)
                Assert.All(page.Letters, l => Assert.Matches(@"^[A-Z]{6}\+Liberation ?Sans", l.FontName));
            }
            var stakes = StakeOut.Of(LayoutTests.Of(division));
            // the readings of every stake stand somewhere on the pages, blanks apart
            var all = string.Concat(pdf.GetPages().Select(p => p.Text)).Replace(" ", "");
            Assert.All(stakes.Stakes, s => Assert.Contains($"{Tape.Told(s.Reading)} and {Tape.Told(s.AndReading)}".Replace(" ", ""), all));
        }
    }

    /// <summary>Words that stand level on a drawing keep clear of each other; nothing clips them (the clip of a page holds its lines only).</summary>
    [Fact]
    public void No_word_of_a_drawing_lies_on_another_or_is_clipped()
    {
        foreach (var division in Divisions)
        {
            using var pdf = PdfDocument.Open(PlanPdf.Of(LayoutTests.Of(division)));
            foreach (var page in pdf.GetPages())
            {
                var words = page.GetWords().Where(w => w.TextOrientation == UglyToad.PdfPig.Content.TextOrientation.Horizontal).ToList();
                foreach (var (a, i) in words.Select((w, i) => (w, i)))
                    foreach (var b in words.Skip(i + 1))
                    {
                        var (wide, high) = (Math.Min(a.BoundingBox.Right, b.BoundingBox.Right) - Math.Max(a.BoundingBox.Left, b.BoundingBox.Left), Math.Min(a.BoundingBox.Top, b.BoundingBox.Top) - Math.Max(a.BoundingBox.Bottom, b.BoundingBox.Bottom));
                        Assert.False(wide > 0.5 && high > 0.5, $"{division}, page {page.Number}: '{a.Text}' and '{b.Text}' lie on each other");
                    }
            }
            // a clip that is open where words are drawn would cut them
            foreach (var page in pdf.GetPages()) Assert.DoesNotContain("Tj", ClippedPart(page));
        }
    }

    private static string ClippedPart(UglyToad.PdfPig.Content.Page page)
    {
        var clipped = new System.Text.StringBuilder();
        var open = new Stack<bool>([false]);
        foreach (var operation in page.Operations)
        {
            switch (operation.Operator)
            {
                case "q": open.Push(open.Peek()); break;
                case "Q": open.Pop(); break;
                case "W" or "W*": open.Pop(); open.Push(true); break;
                default: if (open.Peek()) clipped.Append(operation.Operator).Append(' '); break;
            }
        }
        return clipped.ToString();
    }

    [Fact]
    public void The_picture_for_the_screen_is_well_formed_and_holds_what_is_laid_out()
    {
        foreach (var division in Divisions)
        {
            var layout = LayoutTests.Of(division);
            var svg = XDocument.Parse(PlanSvg.Of(layout, Window.Infield(layout)));
            XNamespace ns = "http://www.w3.org/2000/svg";
            Assert.Equal(layout.Courses.Count + layout.Bows.Count(b => !b.IsWhole), svg.Descendants(ns + "path").Count(p => p.Element(ns + "title") is not null));
            Assert.Equal(layout.Bows.Count(b => b.IsWhole), svg.Descendants(ns + "circle").Count());
            Assert.Contains(svg.Descendants(ns + "text"), t => t.Value == Tape.Told(layout["home"].To(layout["second"])));
        }
    }

    [Fact]
    public void The_drawing_opens_in_an_independent_reader_with_the_right_entities()
    {
        // python3-ezdxf of Debian, told to audit as well
        const string Script = "import sys,ezdxf,collections\nd=ezdxf.readfile(sys.argv[1])\na=d.audit()\nc=collections.Counter((e.dxftype(),e.dxf.layer) for e in d.modelspace())\nprint(len(a.errors),len(a.fixes))\nfor (t,l),n in sorted(c.items()): print(t,l,n)\nfor e in d.modelspace().query('POINT'): print('P',round(e.dxf.location.x,4),round(e.dxf.location.y,4))\n";
        var file = Path.Combine(Directory.CreateTempSubdirectory().FullName, "a.dxf");
        foreach (var division in Divisions)
        {
            var layout = LayoutTests.Of(division);
            File.WriteAllText(file, PlanDxf.Of(layout));
            if (Ask("/usr/bin/python3", "-c", Script, file) is not { } told) { Assert.Skip("python3-ezdxf is not installed"); return; }
            var lines = told.Trim().Split('\n');
            Assert.Equal("0 0", lines[0]);
            Assert.Contains($"LINE CHALK {layout.Courses.Where(c => c.Made == Made.Chalk).Sum(c => c.Closed ? c.Corners.Count : c.Corners.Count - 1)}", lines);
            Assert.Contains($"LINE BASE {layout.Courses.Where(c => c.Made == Made.Base).Sum(c => c.Corners.Count)}", lines);
            Assert.Equal(layout.Bows.Count(b => b.IsWhole), lines.Where(l => l.StartsWith("CIRCLE ")).Sum(l => int.Parse(l.Split(' ')[^1])));
            Assert.Equal(layout.Bows.Count(b => !b.IsWhole), lines.Where(l => l.StartsWith("ARC ")).Sum(l => int.Parse(l.Split(' ')[^1])));
            var points = lines.Where(l => l.StartsWith("P ")).Select(l => l.Split(' ')).Select(w => new At(double.Parse(w[1]), double.Parse(w[2]))).ToList();
            Assert.All(layout.Marks.Where(m => m.Staked), m => Assert.Contains(points, p => p.To(m.At) < 0.001));
        }
        Directory.Delete(Path.GetDirectoryName(file)!, true);
    }

    private static string? Ask(string program, params string[] words)
    {
        try
        {
            var start = new ProcessStartInfo(program, words) { RedirectStandardOutput = true, RedirectStandardError = true };
            using var process = Process.Start(start)!;
            var error = process.StandardError.ReadToEndAsync();
            var text = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            if (process.ExitCode == 0) return text;
            return error.Result.Contains("No module named") ? null : throw new InvalidOperationException(error.Result);
        }
        catch (System.ComponentModel.Win32Exception) { return null; }
    }
}
