using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using UglyToad.PdfPig;
using Umpirage.District.Cards;
using Umpirage.Paper;

namespace Umpirage.Tests.Carried;

/// <summary>Cards on paper, read back by two other programs: everything said can be selected, nothing is cut, nothing lies on anything else.</summary>
public partial class PaperTests
{
    private const double Millimetre = 72 / 25.4;

    private sealed record Box(string Word, double Left, double Top, double Right, double Bottom)
    {
        public double High() => Bottom - Top;
    }

    [GeneratedRegex(@"<page width=""([\d.]+)"" height=""([\d.]+)"">(.*?)</page>", RegexOptions.Singleline)]
    private static partial Regex Page();

    [GeneratedRegex(@"<word xMin=""([\d.-]+)"" yMin=""([\d.-]+)"" xMax=""([\d.-]+)"" yMax=""([\d.-]+)"">(.*?)</word>")]
    private static partial Regex Word();

    private static IEnumerable<(Card Card, Leaf Leaf, byte[] Pdf)> All(IEnumerable<string> games) =>
        from game in games from card in Deck.Of(game) from leaf in Leaf.All.Where(l => l.Kind == card.Kind) select (card, leaf, CardPdf.Of(card, leaf));

    private static string Plain(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));

    [Fact]
    public void Everything_said_can_be_selected_and_every_page_carries_its_stamp_and_day()
    {
        Assert.True(Deck.Games.Count >= 12);
        foreach (var (card, leaf, pdf) in All(Deck.Games))
        {
            using var document = PdfDocument.Open(pdf);
            var whole = Plain(string.Concat(document.GetPages().Select(p => p.Text)));
            foreach (var words in Deck.Words(card)) foreach (var word in words.Split(' ')) Assert.True(whole.Contains(Plain(word), StringComparison.Ordinal), $"{card.Name}, {leaf.Name}: '{word}' is not there");
            foreach (var page in document.GetPages())
            {
                var text = Plain(page.Text);
                Assert.Contains(Plain(card.Stamp.InWords), text);
                Assert.Contains("16May2026", text);
                Assert.Contains($"Page{page.Number}.", text);
                Assert.Matches("stamp[0-9a-f]{8}", text);
                // embedded subsets carry a mark of six letters before their name (PDF 32000-1, 9.6.4)
                Assert.All(page.Letters, l => Assert.Matches(@"^[A-Z]{6}\+Liberation ?Sans", l.FontName));
                Assert.Equal((leaf.Wide, leaf.Tall), (Math.Round(page.Width / Millimetre, 1), Math.Round(page.Height / Millimetre, 1)));
            }
        }
    }

    [Fact]
    public void Cards_of_the_usual_paper_have_two_sides_at_most_and_readable_text()
    {
        foreach (var game in Deck.Games)
            foreach (var card in Deck.Of(game).Where(c => c.Kind == LeafKind.Card))
            {
                using var document = PdfDocument.Open(CardPdf.Of(card, Leaf.Usual(LeafKind.Card)));
                Assert.True(document.NumberOfPages <= 2, $"{game}, {card.Name}: {document.NumberOfPages} pages");
                if (card.Name == "plate") Assert.Equal(2, document.NumberOfPages);
                // the body of a card is never below 8.5 points; the foot may be 6.5
                var sizes = document.GetPages().SelectMany(p => p.Letters).Select(l => l.PointSize).ToList();
                Assert.True(sizes.Min() >= 6.4 && sizes.Max() >= 11.8, $"{game}, {card.Name}: {sizes.Min()} to {sizes.Max()}");
            }
    }

    [Fact]
    public void No_word_lies_outside_the_margins_or_on_another_by_poppler()
    {
        Assert.SkipWhen(Run("pdftotext", "-v") is null, "needs poppler-utils; ./test.sh installs it");
        var (pages, words) = (0, 0);
        foreach (var (card, leaf, pdf) in All(["S-F1-SAT", "S-F4", "S-F6", "W06-BB910-12"]))
            foreach (var page in Boxes(pdf))
            {
                pages++;
                words += page.Words.Count;
                foreach (var w in page.Words)
                    // a font's line box stands a little over its letters
                    Assert.True(w.Left >= leaf.Margin * Millimetre - 0.5 && w.Right <= page.Width - leaf.Margin * Millimetre + 0.5 && w.Top >= leaf.Margin * Millimetre - 2 && w.Bottom <= page.Height - leaf.Margin * Millimetre + 3, $"{card.Name}, {leaf.Name}: '{w.Word}' is outside the margin");
                for (var i = 0; i < page.Words.Count; i++)
                    for (var j = i + 1; j < page.Words.Count; j++)
                        Assert.False(Overlap(page.Words[i], page.Words[j]), $"{card.Name}, {leaf.Name}: '{page.Words[i].Word}' lies on '{page.Words[j].Word}'");
            }
        Assert.True(pages > 100 && words > 10_000, $"{pages} pages, {words} words");
    }

    /// <summary>The measure itself must find a word that lies on another, and one that is cut.</summary>
    [Fact]
    public void The_measure_of_overlap_finds_what_overlaps()
    {
        Assert.True(Overlap(new("a", 0, 0, 10, 10), new("b", 5, 5, 15, 15)));
        Assert.False(Overlap(new("a", 0, 0, 10, 10), new("b", 10.2, 0, 20, 10)));
        Assert.False(Overlap(new("a", 0, 0, 10, 10), new("b", 0, 10.1, 10, 20)));
    }

    [Fact]
    public void Only_the_programs_own_typeface_is_in_it_by_poppler()
    {
        Assert.SkipWhen(Run("pdffonts", "-v") is null, "needs poppler-utils; ./test.sh installs it");
        foreach (var (card, leaf, pdf) in All(["S-F6"]))
        {
            var lines = InFile(pdf, f => Run("pdffonts", f)!).Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(2).ToList();
            Assert.InRange(lines.Count, 1, 2);
            Assert.All(lines, l => Assert.Matches(@"^[A-Z]{6}\+Liberation ?Sans(-?,?Bold)?\S* .* yes +yes +", l));
        }
    }

    [Fact]
    public void Long_tables_go_on_to_the_next_page_with_their_head_and_lose_no_row()
    {
        var stamp = Deck.Of("S-F6", "plate").Stamp;
        var card = new Card("long", "Long", "Under", LeafKind.Sheet, stamp, [new CardPart.Heading("Rows"), new CardPart.Grid([new("Left", 1), new("Right", 2)], [.. Enumerable.Range(1, 150).Select(i => (string[])[$"row-{i:000}", $"{new string('w', i % 40)} and more words of row {i:000}"])])]);
        using var document = PdfDocument.Open(CardPdf.Of(card, Leaf.All.First(l => l.Name == "A4")));
        Assert.True(document.NumberOfPages > 2);
        Assert.All(document.GetPages(), p => Assert.Contains("Right", p.Text));
        var text = string.Concat(document.GetPages().Select(p => p.Text));
        Assert.All(Enumerable.Range(1, 150), i => Assert.Single(Regex.Matches(text, $"row-{i:000}")));
    }

    [Fact]
    public void A_word_longer_than_its_column_is_broken_and_a_part_longer_than_a_page_is_refused()
    {
        var stamp = Deck.Of("S-F6", "plate").Stamp;
        Card With(params CardPart[] parts) => new("odd", "Odd", "Under", LeafKind.Card, stamp, parts);
        var word = new string('x', 300);
        var card = With(new CardPart.Line(word));
        using var document = PdfDocument.Open(CardPdf.Of(card, Leaf.Usual(LeafKind.Card)));
        Assert.Equal(300 + (card.Foot + card.Under).Count(c => c == 'x'), document.GetPages().SelectMany(p => p.Letters).Count(l => l.Value == "x"));
        Assert.Throws<InvalidOperationException>(() => CardPdf.Of(With(new CardPart.Line(string.Concat(Enumerable.Repeat("word ", 2000)))), Leaf.Usual(LeafKind.Card)));
    }

    private static bool Overlap(Box a, Box b) =>
        // line boxes of a font touch; letters do not: the middle three quarters of the height are held against each other
        Math.Min(a.Right, b.Right) - Math.Max(a.Left, b.Left) > 0.1 && Math.Min(a.Bottom - a.High() * 0.12, b.Bottom - b.High() * 0.12) - Math.Max(a.Top + a.High() * 0.12, b.Top + b.High() * 0.12) > 0.1;

    private static List<(double Width, double Height, IReadOnlyList<Box> Words)> Boxes(byte[] pdf)
    {
        static double N(string text) => double.Parse(text, CultureInfo.InvariantCulture);
        var text = InFile(pdf, f => Run("pdftotext", "-bbox", f, "-")!);
        return [.. Page().Matches(text).Select(p => (N(p.Groups[1].Value), N(p.Groups[2].Value), (IReadOnlyList<Box>)[.. Word().Matches(p.Groups[3].Value).Select(w => new Box(w.Groups[5].Value, N(w.Groups[1].Value), N(w.Groups[2].Value), N(w.Groups[3].Value), N(w.Groups[4].Value)))]))];
    }

    private static string InFile(byte[] pdf, Func<string, string> read)
    {
        var file = Path.GetTempFileName();
        try { File.WriteAllBytes(file, pdf); return read(file); }
        finally { File.Delete(file); }
    }

    private static string? Run(string program, params string[] words)
    {
        try
        {
            using var process = Process.Start(new ProcessStartInfo(program, words) { RedirectStandardOutput = true, RedirectStandardError = true })!;
            var error = process.StandardError.ReadToEndAsync();
            var text = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            _ = error.Result;
            return text;
        }
        catch (System.ComponentModel.Win32Exception) { return null; }
    }
}
