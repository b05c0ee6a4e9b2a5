using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Umpirage.Paper;

/// <summary>A printed document: pages of letter paper with one margin, a title, a foot line, and text that goes on to the next page and is never cut.</summary>
internal sealed class Pages : IDisposable
{
    /// <summary>Points in a millimetre.</summary>
    public const double Millimetre = 72 / 25.4;

    private const double Margin = 15 * Millimetre, Foot = 10 * Millimetre;

    private readonly PdfDocument document = new();
    private readonly string foot;
    private XGraphics? pen;

    public Pages(string title, string foot)
    {
        document.Info.Title = title;
        this.foot = foot;
    }

    public XGraphics Pen => pen ?? throw new InvalidOperationException("no page has been begun");

    public double Left => Margin;
    public double Width { get; private set; }
    public double Bottom { get; private set; }

    /// <summary>Where the next line begins, in points from the top.</summary>
    public double At { get; set; }

    public void Begin(string heading, string under)
    {
        pen?.Dispose();
        var page = document.AddPage();
        page.Size = PdfSharp.PageSize.Letter;
        pen = XGraphics.FromPdfPage(page);
        (Width, Bottom, At) = (page.Width.Point - 2 * Margin, page.Height.Point - Margin - Foot, Margin);
        Line(heading, 16, bold: true);
        Line(under, 9.5);
        At += 6;
        var small = Typeface.Of(8);
        var lines = Wrap($"{foot}  Page {document.PageCount}.", small, Width).ToList();
        for (var i = 0; i < lines.Count; i++) pen.DrawString(lines[i], small, XBrushes.Black, Left, page.Height.Point - Margin - (lines.Count - 1 - i) * 10);
    }

    /// <summary>Text in as many lines as it needs; false when the page has no room for it, and nothing was written.</summary>
    public bool TryLine(string text, double size, bool bold = false, double inset = 0, double hang = 0)
    {
        var font = Typeface.Of(size, bold);
        var lines = Wrap(text, font, Width - inset - hang).ToList();
        var high = size * 1.3;
        if (At + lines.Count * high > Bottom) return false;
        for (var i = 0; i < lines.Count; i++)
        {
            Pen.DrawString(lines[i], font, XBrushes.Black, Left + inset + (i > 0 ? hang : 0), At + size);
            At += high;
        }
        return true;
    }

    private void Line(string text, double size, bool bold = false)
    {
        if (!TryLine(text, size, bold)) throw new InvalidOperationException("a heading does not fit its page");
    }

    private IEnumerable<string> Wrap(string text, XFont font, double width)
    {
        var line = "";
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line == "" ? word : $"{line} {word}";
            if (line != "" && Pen.MeasureString(longer, font).Width > width) { yield return line; line = word; }
            else line = longer;
        }
        yield return line;
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
        document.Dispose();
    }
}
