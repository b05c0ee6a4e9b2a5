using System.Globalization;
using System.Text;
using Umpirage.District.Diamonds;

namespace Umpirage.Paper;

/// <summary>The path of the sun drawn as a rim round the square: the way to the sun, its hour and its height; filled where it stands in somebody's eyes. North is shown.</summary>
internal static class SunRim
{
    public static void Put(StringBuilder svg, Layout layout, SunPath sun, double unit)
    {
        At middle = layout["second"] * 0.5;
        var radius = layout.Measures.Feet("base distance") * 1.08;
        svg.AppendLine($"  <circle class=\"rim\" cx=\"{PlanSvg.N(middle.X)}\" cy=\"{PlanSvg.N(-middle.Y)}\" r=\"{PlanSvg.N(radius)}\"/>");
        List<At> told = [];
        // the evening is told first: it is where the sun is low
        foreach (var stand in sun.Stands.Reverse())
        {
            At way = stand.Toward(sun.Bearing), at = middle + way * radius, words = middle + way * (radius + unit * 8);
            if (stand.InEyesOf.Count > 0) svg.AppendLine($"  <path class=\"ray\" d=\"M {PlanSvg.P(at)} L {PlanSvg.P(middle + way * (radius * 0.55))}\"/>");
            svg.AppendLine($"  <circle class=\"{(stand.InEyesOf.Count > 0 ? "sun near" : "sun")}\" cx=\"{PlanSvg.N(at.X)}\" cy=\"{PlanSvg.N(-at.Y)}\" r=\"{PlanSvg.N(unit * 1.7)}\"><title>{PlanSvg.E($"{stand.At}: {string.Join(", ", stand.InEyesOf.DefaultIfEmpty("in nobody's eyes"))}")}</title></circle>");
            // every half-hour has its mark, and words where there is room for them
            if (told.Any(t => Math.Abs(t.X - words.X) < unit * 12.5 && Math.Abs(t.Y - words.Y) < unit * 7.5)) continue;
            told.Add(words);
            svg.AppendLine($"  <text class=\"big\" x=\"{PlanSvg.N(words.X)}\" y=\"{PlanSvg.N(-words.Y - unit * 0.4)}\">{stand.At}</text>");
            svg.AppendLine($"  <text class=\"big\" x=\"{PlanSvg.N(words.X)}\" y=\"{PlanSvg.N(-words.Y + unit * 3)}\">{string.Create(CultureInfo.InvariantCulture, $"{stand.Elevation:0}° up")}</text>");
        }
        North(svg, middle + new At(-radius, radius) * 1.08, sun.Bearing, unit);
    }

    private static void North(StringBuilder svg, At at, double bearing, double unit)
    {
        var angle = -bearing * Math.PI / 180;
        At way = new(Math.Sin(angle), Math.Cos(angle)), aside = new(way.Y, -way.X);
        At tip = at + way * (unit * 5), tail = at - way * (unit * 5);
        svg.AppendLine($"  <path class=\"north\" d=\"M {PlanSvg.P(tail)} L {PlanSvg.P(tip)} M {PlanSvg.P(tip - way * (unit * 2.4) + aside * (unit * 1.4))} L {PlanSvg.P(tip)} L {PlanSvg.P(tip - way * (unit * 2.4) - aside * (unit * 1.4))}\"><title>north</title></path>");
        var word = at + way * (unit * 7.4);
        svg.AppendLine($"  <text class=\"big\" x=\"{PlanSvg.N(word.X)}\" y=\"{PlanSvg.N(-word.Y + unit * 1.2)}\">N</text>");
    }
}
