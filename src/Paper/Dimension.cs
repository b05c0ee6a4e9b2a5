using Umpirage.District.Diamonds;

namespace Umpirage.Paper;

/// <summary>A measured distance on a drawing: its ends on the ground, how far aside of them the line is drawn in feet (left of the way from one to the other), what is measured, and how far along its words stand.</summary>
public sealed record Dimension(At From, At To, double Aside, string What, double Along = 0.5)
{
    /// <summary>Straight from one end to the other.</summary>
    private static Dimension Of(At from, At to, double aside, string what = "") => new(from, to, aside, what);

    /// <param name="told">Tells a length in feet.</param>
    public string Words(Func<double, string> told) => $"{What}{(What == "" ? "" : " ")}{told(From.To(To))}";

    /// <summary>What whoever lays out the infield asks first.</summary>
    public static IReadOnlyList<Dimension> OfInfield(Layout layout)
    {
        At home = layout["home"], first = layout["first"], second = layout["second"], third = layout["third"];
        At plate = layout.Marks.First(m => m.Made == Made.Rubber && m.Name != "home").At;
        var away = layout.Measures.Feet("base distance") / 25;
        List<Dimension> all =
        [
            Of(first, home, -2 * away), Of(second, first, -away), Of(second, third, away), Of(third, home, 2 * away), Of(home, second, -2.4 * away) with { Along = 0.82 }, Of(home, plate, 1.2 * away), Of(third, first, 5 * away) with { Along = 0.25 },
        ];
        // what stands outside the lines is measured on one side, and is the same on the other
        At level = layout["coach's box, third base, corner level with the base"], toward = layout["coach's box, third base, corner toward home"], deck = layout["on-deck circle, third base side, middle"];
        At across = new(layout.Measures.Feet("on-deck circle across") / 2, 0);
        all.AddRange([Of(toward, level, 0.6 * away), Of(third, level, 0.5 * away), Of(deck, home, -0.6 * away), Of(deck - across, deck + across, across.X + 0.5 * away), Of(layout["runner's lane, beginning in foul ground"], layout["runner's lane, end in foul ground"], -0.6 * away)]);
        if (layout.Bows.FirstOrDefault(b => b.Made == Made.Grass) is { } grass) all.Add(Of(grass.Centre, grass.Along(0.36), 0, "radius") with { Along = 0.85 });
        return all;
    }

    /// <summary>The boxes round the plate.</summary>
    public static IReadOnlyList<Dimension> OfPlate(Layout layout)
    {
        At Box(string corner) => layout[$"batter's box, first base side, {corner} corner"];
        At frontInner = Box("front inner"), frontOuter = Box("front outer"), rearOuter = Box("rear outer"), rearInner = Box("rear inner"), back = layout["catcher's box, first base side, rear corner"];
        double half = layout.Measures.Feet("home plate width") / 2;
        var left = layout["catcher's box, third base side, rear corner"];
        var from = layout.Measures.Word("catcher's box measured from") == "point of home" ? default : new At(0, rearOuter.Y);
        return
        [
            Of(frontOuter, rearOuter, 1.4), Of(frontInner, frontOuter, 0.7), Of(new(-half, 2 * half), new(half, 2 * half), 0.6), Of(new(half, half), new(frontInner.X, half), 0.15),
            Of(new(-frontOuter.X, half), new(-frontOuter.X, frontOuter.Y), 1.2, "ahead of the middle"), Of(left, back, -0.9), Of(new(left.X, from.Y), left, -1.1), Of(rearInner with { X = -rearInner.X }, rearInner, -0.5),
        ];
    }

    /// <summary>First base with the lane beside it.</summary>
    public static IReadOnlyList<Dimension> OfFirst(Layout layout)
    {
        var b = layout.Courses.First(c => c.Name == "first base").Corners;
        List<Dimension> all = [Of(b[0], b[3], 0.5), Of(b[3], b[2], 0.5), Of(layout["first"], layout["runner's lane, end in foul ground"], 1.2, "lane")];
        if (layout.Courses.FirstOrDefault(c => c.Made == Made.Coloured) is { } coloured) all.Add(Of(b[2], coloured.Corners[2], 0.5));
        return all;
    }

    /// <summary>The pitcher's plate with circle or mound.</summary>
    public static IReadOnlyList<Dimension> OfPitching(Layout layout)
    {
        var p = layout.Courses.First(c => c.Name == "pitcher's plate").Corners;
        List<Dimension> all = [Of(p[3], p[2], 1), Of(p[1], p[2], -0.7)];
        foreach (var bow in layout.Bows.Where(b => b.Name is "pitcher's circle" or "mound"))
            all.Add(bow.Name == "mound" ? Of(bow.Along(0.5), bow.Along(0), -bow.Radius - 1, "mound") : Of(bow.Centre, bow.Along(0.9), 0, "radius"));
        if (layout.Find("middle of the mound") is { } middle) all.Add(Of(middle, new(0, p[0].Y), 1.8, "plate behind the middle"));
        return all;
    }
}
