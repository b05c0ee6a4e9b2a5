using PdfSharp.Drawing;
using PdfSharp.Fonts;

namespace Umpirage.Paper;

/// <summary>The one typeface of everything printed, carried with the program so that a page looks the same on every machine (SIL Open Font License 1.1).</summary>
internal sealed class Typeface : IFontResolver
{
    private const string Name = "Liberation Sans";

    private static readonly Lock Once = new();

    private Typeface() { }

    /// <summary>A size in points.</summary>
    public static XFont Of(double points, bool bold = false)
    {
        lock (Once) GlobalFontSettings.FontResolver ??= new Typeface();
        return new(Name, points, bold ? XFontStyleEx.Bold : XFontStyleEx.Regular);
    }

    public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic) => new(bold ? "LiberationSans-Bold.ttf" : "LiberationSans-Regular.ttf");

    public byte[]? GetFont(string faceName)
    {
        using var stream = typeof(Typeface).Assembly.GetManifestResourceStream(faceName);
        if (stream is null) return null;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
