using System.Globalization;
using System.Text;
using Umpirage.District.Diamonds;
using Umpirage.Rules.Codes;

namespace Umpirage.District.Clinic;

/// <summary>Pieces of pages: text made harmless, names of codes, minutes, and a small drawing of a play.</summary>
internal static class Markup
{
    public static string Safe(string text) => text.Replace("&", "&amp;").Replace("<", "&lt;").Replace(">", "&gt;").Replace("\"", "&quot;");

    /// <summary>"Softball 12U", with the book and the day where the two codes would otherwise have one name.</summary>
    public static (string Here, string There) Names(Code here, Code there)
    {
        foreach (var name in (Func<Code, string>[])[Plain, c => c.Body is { } body ? $"{Plain(c)}, {body.Name}" : $"{Plain(c)}, at large", c => $"{Plain(c)}{(c.Body is { } b ? $", {b.Name}" : "")}, {c.Date.Year}"])
            if (name(here) != name(there)) return (name(here), name(there));
        return (here.Address.ToString(), there.Address.ToString());
    }

    private static string Plain(Code code) => $"{LessonMaker.Upper(code.Game)} {code.Division}{string.Concat(code.Stack.Select(l => $" {l.Name}"))}";

    public static string OnTheClock(int seconds) => $"{seconds / 60}:{seconds % 60:00}";

    private static string N(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    // batter and ball, fielder and foot begin alike
    private static char Letter(Figure figure) => figure is Figure.Ball or Figure.Foot ? char.ToLowerInvariant(figure.ToString()[0]) : figure.ToString()[0];

    /// <summary>The play drawn, when its subject has a picture and something of what is given stands in it; otherwise nothing.</summary>
    public static string Drawing(IReadOnlyDictionary<string, Picture> pictures, Contrast contrast)
    {
        if (!pictures.TryGetValue(contrast.Sheet, out var picture)) return "";
        var placings = picture.Of(contrast.Given).ToList();
        if (placings.Count == 0) return "";
        var svg = new StringBuilder($"<svg viewBox=\"0 0 100 100\" role=\"img\" aria-label=\"{Safe(contrast.Sheet)}\">");
        foreach (var shape in picture.View.Shapes)
            svg.Append($"<{(shape.Closed ? "polygon" : "polyline")} class=\"{shape.Stroke.ToString().ToLowerInvariant()}\" points=\"{string.Join(' ', shape.Points.Select(p => $"{N(p.X)},{N(p.Y)}"))}\"/>");
        foreach (var placing in placings)
        {
            var (x, y) = picture.View.Spots[placing.Spot];
            svg.Append(placing.Figure is Figure.Runner or Figure.Batter or Figure.Ball ? $"<circle class=\"figure\" cx=\"{N(x)}\" cy=\"{N(y)}\" r=\"6\"/>" : $"<rect class=\"figure\" x=\"{N(x - 6)}\" y=\"{N(y - 6)}\" width=\"12\" height=\"12\" rx=\"2\"/>");
            svg.Append($"<text x=\"{N(x)}\" y=\"{N(y + 2.7)}\">{Letter(placing.Figure)}</text>");
        }
        var legend = string.Join(", ", placings.Select(p => p.Figure).Distinct().Select(f => $"<b>{Letter(f)}</b> {f.ToString().ToLowerInvariant()}"));
        return $"<figure>{svg.Append("</svg>")}<figcaption>{legend}</figcaption></figure>";
    }
}
