using PdfSharp.Drawing;
using PdfSharp.Pdf;
using Umpirage.District.Cards;

namespace Umpirage.Paper;

/// <summary>
/// A printed document: pages of one kind of paper with one margin, a title, a foot that stands on every page, and what is put on them from the top
/// down. Text is folded to the width it has and never cut; whoever writes asks for room first and begins a page when there is none.
/// </summary>
internal sealed class Pages : IDisposable
{
    /// <summary>Points in a millimetre.</summary>
    public const double Millimetre = 72 / 25.4;

    /// <summary>Height of a line beside the size of its text.</summary>
    public const double Leading = 1.3;

    private readonly PdfDocument document = new();
    private readonly Leaf leaf;
    private readonly string foot;
    private readonly XGraphics ruler = XGraphics.CreateMeasureContext(new XSize(2000, 2000), XGraphicsUnit.Point, XPageDirection.Downwards);
    private readonly Dictionary<(string, double, bool, double), IReadOnlyList<string>> folded = [];
    private XGraphics? pen;

    public Pages(string title, string foot, Leaf? leaf = null)
    {
        document.Info.Title = title;
        this.foot = foot;
        this.leaf = leaf ?? Leaf.Usual(LeafKind.Sheet);
        Left = this.leaf.Margin * Millimetre;
        Width = this.leaf.Wide * Millimetre - 2 * Left;
    }

    public XGraphics Pen => pen ?? throw new InvalidOperationException("no page has been begun");

    /// <summary>Points of the document's plain text.</summary>
    public double Text => leaf.Text;

    public double Left { get; }
    public double Width { get; }
    public double Bottom { get; private set; }
    public int Count { get; private set; }

    /// <summary>Where the next line begins, in points from the top.</summary>
    public double At { get; set; }

    public double Room => Bottom - At;

    public void Begin(string heading, string under)
    {
        pen?.Dispose();
        var page = document.AddPage();
        Count++;
        (page.Width, page.Height) = (XUnit.FromMillimeter(leaf.Wide), XUnit.FromMillimeter(leaf.Tall));
        pen = XGraphics.FromPdfPage(page);
        var small = Math.Max(6.5, Text * 0.72);
        var lines = Fold($"{foot} Page {Count}.", small, false, Width);
        Bottom = page.Height.Point - Left - lines.Count * small * Leading - small * 0.6;
        At = Bottom + small * 0.6;
        foreach (var line in lines) Put(line, small, false, 0);
        pen.DrawLine(new XPen(XColors.Black, 0.4), Left, Bottom + small * 0.3, Left + Width, Bottom + small * 0.3);
        At = Left;
        if (!TryLine(heading, Text * 1.4, bold: true) || !TryLine(under, Text * 0.88)) throw new InvalidOperationException("a heading does not fit its page");
        At += Text * 0.5;
    }

    /// <summary>Text in as many lines as it needs; false when the page has no room for it, and nothing was written.</summary>
    public bool TryLine(string text, double size, bool bold = false, double inset = 0, double hang = 0)
    {
        var lines = Fold(text, size, bold, Width - inset - hang);
        if (lines.Count * size * Leading > Room) return false;
        for (var i = 0; i < lines.Count; i++) Put(lines[i], size, bold, inset + (i > 0 ? hang : 0));
        return true;
    }

    /// <summary>One line that is known to fit.</summary>
    public void Put(string line, double size, bool bold, double inset)
    {
        Pen.DrawString(line, Typeface.Of(size, bold), XBrushes.Black, Left + inset, At + size);
        At += size * Leading;
    }

    public double Wide(string text, double size, bool bold) => ruler.MeasureString(text, Typeface.Of(size, bold)).Width;

    /// <summary>A text in lines no wider than this; a word that is wider by itself is broken. What was folded to see whether there is room is not folded again to be written.</summary>
    public IReadOnlyList<string> Fold(string text, double size, bool bold, double width)
    {
        if (!folded.TryGetValue((text, size, bold, width), out var lines)) folded[(text, size, bold, width)] = lines = Folded(text, size, bold, width);
        return lines;
    }

    private List<string> Folded(string text, double size, bool bold, double width)
    {
        var font = Typeface.Of(size, bold);
        bool Fits(string words) => ruler.MeasureString(words, font).Width <= width;
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line == "" ? word : $"{line} {word}";
            if (Fits(longer)) { line = longer; continue; }
            if (line != "") lines.Add(line);
            for (line = word; !Fits(line) && line.Length > 1;)
            {
                var most = line.Length - 1;
                while (most > 1 && !Fits(line[..most])) most--;
                lines.Add(line[..most]);
                line = line[most..];
            }
        }
        if (line != "" || lines.Count == 0) lines.Add(line);
        return lines;
    }

    public byte[] Bytes()
    {
        pen?.Dispose();
        pen = null;
        using var stream = new MemoryStream();
        document.Save(stream, closeStream: false);
        return stream.ToArray();
    }

    public void Dispose()
    {
        pen?.Dispose();
        ruler.Dispose();
        document.Dispose();
    }
}
