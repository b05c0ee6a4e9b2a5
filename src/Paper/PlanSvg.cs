using System.Globalization;
using System.Net;
using System.Text;
using Umpirage.District.Diamonds;

namespace Umpirage.Paper;

/// <summary>A part of a laid-out field as SVG, one unit a foot, for the screen.</summary>
public static class PlanSvg
{
    internal static string N(double v) => v.ToString("0.####", CultureInfo.InvariantCulture);

    /// <summary>The up of the ground is the up of the picture; SVG counts downward.</summary>
    internal static string P(At at) => $"{N(at.X)} {N(-at.Y)}";

    /// <param name="told">Tells a length in feet; by default in feet and inches.</param>
    /// <param name="letters">The height of letters in hundredths of the width: more where it is shown small.</param>
    /// <param name="sun">The path of the sun round the square, if it is to be drawn.</param>
    public static string Of(Layout layout, Window window, Func<double, string>? told = null, SunPath? sun = null, double letters = 2.2)
    {
        var unit = window.Wide / 100;
        var svg = new StringBuilder();
        svg.AppendLine($"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"{N(window.Low.X)} {N(-window.High.Y)} {N(window.Wide)} {N(window.Tall)}\" role=\"img\" aria-label=\"{E($"{window.Name}, {layout.Code.Address}")}\">");
        svg.AppendLine($$"""
              <title>{{E($"{window.Name}, {layout.Code.Address}")}}</title>
              <style>
                .paper { fill: #fff } .Chalk, .Rubber, .Base { stroke: #111; fill: none; stroke-width: {{N(unit * 0.28)}} } .Base, .Rubber { fill: #fff }
                .Coloured { fill: #e8590c; stroke: #111; stroke-width: {{N(unit * 0.28)}} } .Grass { fill: none; stroke: #2b6a2b; stroke-width: {{N(unit * 0.25)}}; stroke-dasharray: {{N(unit * 1.2)}} {{N(unit * 0.7)}} }
                .Dirt { fill: none; stroke: #7a4a1c; stroke-width: {{N(unit * 0.25)}}; stroke-dasharray: {{N(unit * 0.4)}} {{N(unit * 0.5)}} } .Fence { fill: none; stroke: #444; stroke-width: {{N(unit * 0.5)}} }
                .measure { stroke: #0b4f8a; stroke-width: {{N(unit * 0.14)}} } text { font: {{N(unit * letters)}}px "Liberation Sans", Arial, sans-serif; fill: #0b4f8a; text-anchor: middle; paint-order: stroke; stroke: #fff; stroke-width: {{N(unit * 0.7)}} }
                .label { fill: #111; font-weight: bold } .rim { fill: none; stroke: #888; stroke-width: {{N(unit * 0.14)}} } .sun { fill: #fff; stroke: #7a1200; stroke-width: {{N(unit * 0.35)}} } .near { fill: #7a1200 }
                .ray { stroke: #7a1200; stroke-width: {{N(unit * 0.35)}}; stroke-dasharray: {{N(unit * 1.2)}} {{N(unit * 0.8)}} } .big { font-size: {{N(unit * 3.4)}}px; fill: #111 } .north { stroke: #111; stroke-width: {{N(unit * 0.5)}}; fill: none }
              </style>
            """);
        svg.AppendLine($"  <rect class=\"paper\" x=\"{N(window.Low.X)}\" y=\"{N(-window.High.Y)}\" width=\"{N(window.Wide)}\" height=\"{N(window.Tall)}\"/>");
        foreach (var bow in layout.Bows)
            svg.AppendLine(bow.IsWhole
                ? $"  <circle class=\"{bow.Made}\" cx=\"{N(bow.Centre.X)}\" cy=\"{N(-bow.Centre.Y)}\" r=\"{N(bow.Radius)}\"><title>{E(bow.Name)}</title></circle>"
                : $"  <path class=\"{bow.Made}\" d=\"M {P(bow.Along(0))} A {N(bow.Radius)} {N(bow.Radius)} 0 {(bow.Sweep > 180 ? 1 : 0)} 0 {P(bow.Along(1))}\"><title>{E(bow.Name)}</title></path>");
        foreach (var course in layout.Courses)
            svg.AppendLine($"  <path class=\"{course.Made}\" d=\"M {string.Join(" L ", course.Corners.Select(P))}{(course.Closed ? " Z" : "")}\"><title>{E(course.Name)}</title></path>");
        foreach (var d in window.Dimensions) Measure(svg, d, told ?? Tape.Told, unit);
        // a label is moved in rather than cut: a bold letter is about as wide as six tenths of its height
        double Inside(string words, double x) => words.Length * letters * unit * 0.3 is var half && 2 * half < window.Wide ? Math.Clamp(x, window.Low.X + half, window.High.X - half) : x;
        foreach (var (words, at) in window.Labels) svg.AppendLine($"  <text class=\"label\" x=\"{N(Inside(words, at.X))}\" y=\"{N(-at.Y + unit * letters * 0.36)}\">{E(words)}</text>");
        if (sun is not null) SunRim.Put(svg, layout, sun, unit);
        return svg.AppendLine("</svg>").ToString();
    }

    private static void Measure(StringBuilder svg, Dimension d, Func<double, string> told, double unit)
    {
        var way = (d.To - d.From) * (1 / d.From.To(d.To));
        var aside = new At(-way.Y, way.X);
        At from = d.From + aside * d.Aside, to = d.To + aside * d.Aside, middle = from + (to - from) * d.Along;
        var angle = -Math.Atan2(way.Y, way.X) * 180 / Math.PI;
        // words are read from below or from the right
        if (angle is >= 90 or < -90) angle += angle > 0 ? -180 : 180;
        svg.Append($"  <path class=\"measure\" d=\"M {P(from)} L {P(to)}");
        foreach (var (end, mark) in ((At, At)[])[(from, d.From), (to, d.To)])
        {
            svg.Append($" M {P(end - way * (unit * 0.4) - aside * (unit * 0.4))} L {P(end + way * (unit * 0.4) + aside * (unit * 0.4))}");
            if (Math.Abs(d.Aside) > unit) svg.Append($" M {P(mark)} L {P(end)}");
        }
        svg.AppendLine("\"/>");
        svg.AppendLine($"  <text transform=\"translate({P(middle)}) rotate({N(angle)})\" y=\"{N(-unit * 0.5)}\">{E(d.Words(told))}</text>");
    }

    internal static string E(string text) => WebUtility.HtmlEncode(text);
}
