using System.Globalization;
using System.Text;

namespace Umpirage.District.Diamonds;

/// <summary>A figure in a drawing: what it is, its letter, where it stands in hundredths of the width, and the name of the spot.</summary>
public sealed record Drawn(Figure Figure, char Letter, double X, double Y, string Spot);

/// <summary>A play drawn: as SVG that needs no style sheet, and the same told in words for whoever cannot see it.</summary>
public sealed record Drawing(View View, IReadOnlyList<Drawn> Figures)
{
    private const double Near = 10, Aside = 12, Edge = 94;

    /// <summary>Draws what is said of a play; null when nothing of it stands in the picture.</summary>
    public static Drawing? Of(Picture picture, IReadOnlyList<string> said)
    {
        var figures = new List<Drawn>();
        foreach (var placing in picture.Of(said))
        {
            var (x, y) = picture.View.Spots[placing.Spot];
            if (figures.Any(f => f.Figure == placing.Figure && f.Spot == placing.Spot)) continue;
            // beside what stands there already
            var step = x + Aside < Edge ? Aside : -Aside;
            while (figures.Any(f => Math.Abs(f.X - x) < Near && Math.Abs(f.Y - y) < Near)) x += step;
            figures.Add(new(placing.Figure, Letter(placing.Figure), x, y, placing.Spot));
        }
        foreach (var scaling in picture.Scalings)
            if (Number(scaling, said) is { } number) figures.Add(new(scaling.Figure, Letter(scaling.Figure), Left + Wide * (Math.Clamp(number, scaling.Low, scaling.High) - scaling.Low) / (scaling.High - scaling.Low), 50, $"{number.ToString("0.###", CultureInfo.InvariantCulture)} {picture.View.Name}"));
        return figures.Count == 0 ? null : new(picture.View, figures) { Ticks = [.. picture.Scalings.Take(1).SelectMany(Tick)] };
    }

    private const double Left = 8, Wide = 84;
    private const int Spaces = 6;

    /// <summary>Numbers written along the line of a scale.</summary>
    private IReadOnlyList<Written> Ticks { get; init; } = [];

    private static IEnumerable<Written> Tick(Scaling scaling) =>
        Enumerable.Range(0, Spaces + 1).Select(i => new Written((scaling.Low + (scaling.High - scaling.Low) * i / Spaces).ToString("0.#", CultureInfo.InvariantCulture), Left + Wide * i / Spaces, 66));

    private static double? Number(Scaling scaling, IReadOnlyList<string> said)
    {
        var begins = scaling.Fact + " is ";
        return said.FirstOrDefault(s => s.StartsWith(begins, StringComparison.OrdinalIgnoreCase)) is { } told && double.TryParse(told[begins.Length..], CultureInfo.InvariantCulture, out var number) ? number : null;
    }

    /// <summary>Its letter: small for a ball, foot, hand or clock, since batter, fielder and home begin alike.</summary>
    public static char Letter(Figure figure) => figure is Figure.Ball or Figure.Foot or Figure.Hand or Figure.Clock ? char.ToLowerInvariant(figure.ToString()[0]) : figure.ToString()[0];

    /// <summary>The letters and what they stand for, each once.</summary>
    public IReadOnlyList<(char Letter, string Name)> Legend => [.. Figures.Select(f => (f.Letter, Name(f.Figure))).Distinct()];

    /// <summary>The drawing in words: "The field. Runner: first. Ball: foul ground."</summary>
    public string Words => $"{Rules.Ground.Words.Upper(View.Says)}. {string.Join(' ', Figures.Select(f => $"{Rules.Ground.Words.Upper(Name(f.Figure))}: {f.Spot}."))}";

    /// <summary>The drawing as SVG, black and pale on white, fit for print, projector and page.</summary>
    public string Svg
    {
        get
        {
            var svg = new StringBuilder($"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 100 100\" role=\"img\" aria-label=\"{Words.Replace("&", "&amp;").Replace("\"", "&quot;")}\"><rect width=\"100\" height=\"100\" fill=\"#fff\"/>");
            foreach (var shape in View.Shapes)
                svg.Append($"<{(shape.Closed ? "polygon" : "polyline")} {Look(shape.Stroke)} points=\"{string.Join(' ', shape.Points.Select(p => $"{N(p.X)},{N(p.Y)}"))}\"/>");
            foreach (var word in View.Written.Concat(Ticks))
                svg.Append($"<text x=\"{N(word.X)}\" y=\"{N(word.Y)}\" font-family=\"sans-serif\" font-size=\"5.6\" font-weight=\"bold\" text-anchor=\"middle\" fill=\"#111\">{word.Text}</text>");
            foreach (var tick in Ticks) svg.Append($"<path d=\"M{N(tick.X)} 47v6\" stroke=\"#333\" stroke-width=\"0.8\"/>");
            foreach (var figure in Figures) svg.Append(Body(figure)).Append($"<text x=\"{N(figure.X)}\" y=\"{N(figure.Y + 2.7)}\" font-family=\"sans-serif\" font-size=\"8\" font-weight=\"bold\" text-anchor=\"middle\" fill=\"{(figure.Figure is Figure.Ball or Figure.Clock ? "#111" : "#fff")}\">{figure.Letter}</text>");
            return svg.Append("</svg>").ToString();
        }
    }

    private static string Body(Drawn f) => f.Figure switch
    {
        Figure.Runner or Figure.Batter => $"<circle cx=\"{N(f.X)}\" cy=\"{N(f.Y)}\" r=\"6\" fill=\"#111\" stroke=\"#fff\"/>",
        Figure.Ball or Figure.Clock => $"<circle cx=\"{N(f.X)}\" cy=\"{N(f.Y)}\" r=\"5.5\" fill=\"#ffe45c\" stroke=\"#111\" stroke-width=\"1.4\"/>",
        Figure.Foot => $"<ellipse cx=\"{N(f.X)}\" cy=\"{N(f.Y)}\" rx=\"4.4\" ry=\"7.5\" fill=\"#111\" stroke=\"#fff\"/>",
        Figure.Hand => $"<ellipse cx=\"{N(f.X)}\" cy=\"{N(f.Y)}\" rx=\"6.5\" ry=\"5\" fill=\"#111\" stroke=\"#fff\"/>",
        _ => $"<rect x=\"{N(f.X - 6)}\" y=\"{N(f.Y - 6)}\" width=\"12\" height=\"12\" rx=\"2\" fill=\"#111\" stroke=\"#fff\"/>",
    };

    private static string Look(Stroke stroke) => stroke switch
    {
        Stroke.Grass => "fill=\"#e6efe0\"",
        Stroke.Dirt => "fill=\"#f2e5d3\"",
        Stroke.Base => "fill=\"#fff\" stroke=\"#111\" stroke-width=\"0.8\"",
        Stroke.Coloured => "fill=\"#ffb066\" stroke=\"#111\" stroke-width=\"0.8\"",
        _ => "fill=\"none\" stroke=\"#333\" stroke-width=\"0.8\"",
    };

    private static string Name(Figure figure) => figure.ToString().ToLowerInvariant();
    private static string N(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
