using System.Globalization;
using System.Text;

namespace Umpirage.District.Mechanics;

/// <summary>A card as a drawing to scale: the diamond of a base distance, the runners, and where each umpire starts. SVG that needs no style sheet.</summary>
public static class CardDrawing
{
    private const double Left = 1.05, Back = 0.3, Wide = 2.1, High = 2.1;

    /// <summary>The drawing.</summary>
    /// <param name="feet">Feet from base to base.</param>
    public static string Svg(Card card, double feet)
    {
        var svg = new StringBuilder($"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 210 210\" role=\"img\" aria-label=\"{Words(card).Replace("&", "&amp;").Replace("\"", "&quot;")}\"><rect width=\"210\" height=\"210\" fill=\"#fff\"/>");
        var half = Math.Sqrt(0.5);
        (double X, double Y)[] bases = [(0, 0), (half, half), (0, 2 * half), (-half, half)];
        svg.Append($"<path d=\"M{At(0, 0)}L{At(1.05, 1.05)}A150 150 0 0 0 {At(-1.05, 1.05)}Z\" fill=\"#e6efe0\"/><polygon points=\"{string.Join(' ', bases.Select(b => At(b.X, b.Y)))}\" fill=\"#f2e5d3\" stroke=\"#333\" stroke-width=\"1\"/>");
        foreach (var (x, y) in bases) svg.Append($"<rect x=\"{N(X(x) - 3.5)}\" y=\"{N(Y(y) - 3.5)}\" width=\"7\" height=\"7\" transform=\"rotate(45 {N(X(x))} {N(Y(y))})\" fill=\"#fff\" stroke=\"#111\"/>");
        foreach (var runner in Runners(card)) svg.Append($"<circle cx=\"{N(X(bases[runner].X))}\" cy=\"{N(Y(bases[runner].Y))}\" r=\"8\" fill=\"#fff\" stroke=\"#111\" stroke-width=\"2\"/>").Append(Letter(X(bases[runner].X), Y(bases[runner].Y), "R", "#111"));
        foreach (var standing in card.Start.Where(s => s.Place is not null))
        {
            var (x, y) = (X(standing.Place!.Across / feet), Y(standing.Place.Deep / feet));
            svg.Append($"<rect x=\"{N(x - 9)}\" y=\"{N(y - 9)}\" width=\"18\" height=\"18\" rx=\"3\" fill=\"#111\"/>").Append(Letter(x, y, Initial(standing.Umpire), "#fff"));
        }
        return svg.Append("</svg>").ToString();
    }

    /// <summary>The drawing in words.</summary>
    public static string Words(Card card) => $"The field. {string.Join(' ', card.Start.Select(s => $"{Rules.Ground.Words.Upper(s.Umpire)}: {s.Spot}."))}{(Runners(card) is { Count: > 0 } on ? $" Runners on {string.Join(", ", on.Select(r => r switch { 1 => "first", 2 => "second", _ => "third" }))}." : " Nobody on base.")}";

    /// <summary>The letter of an umpire in the drawing: P for the plate umpire, B for the base umpire, 1 to 3 for those named by a base.</summary>
    public static string Initial(string umpire) => umpire.StartsWith("first", StringComparison.Ordinal) ? "1" : umpire.StartsWith("second", StringComparison.Ordinal) ? "2" : umpire.StartsWith("third", StringComparison.Ordinal) ? "3" : umpire[..1].ToUpperInvariant();

    private static IReadOnlyList<int> Runners(Card card)
    {
        var said = card.Given.FirstOrDefault(g => g.StartsWith("runners is ", StringComparison.Ordinal)) ?? "";
        return said.EndsWith("bases full", StringComparison.Ordinal) ? [1, 2, 3] : [.. new[] { "first", "second", "third" }.Select((b, i) => (b, i)).Where(x => said.Contains(x.b, StringComparison.Ordinal)).Select(x => x.i + 1)];
    }

    private static string Letter(double x, double y, string letter, string ink) => $"<text x=\"{N(x)}\" y=\"{N(y + 4.2)}\" font-family=\"sans-serif\" font-size=\"12\" font-weight=\"bold\" text-anchor=\"middle\" fill=\"{ink}\">{letter}</text>";
    private static string At(double across, double deep) => $"{N(X(across))},{N(Y(deep))}";
    private static double X(double across) => Math.Clamp((across + Left) / Wide * 210, 10, 200);
    private static double Y(double deep) => Math.Clamp(210 - (deep + Back) / High * 210, 10, 200);
    private static string N(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
