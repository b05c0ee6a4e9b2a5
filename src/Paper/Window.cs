using Umpirage.District.Diamonds;

namespace Umpirage.Paper;

/// <summary>A part of the ground that is drawn, in feet: its corners, its name, and the distances written into it.</summary>
public sealed record Window(string Name, At Low, At High, IReadOnlyList<Dimension> Dimensions, IReadOnlyList<(string Words, At At)> Labels)
{
    public double Wide => High.X - Low.X;
    public double Tall => High.Y - Low.Y;

    public static Window Infield(Layout layout)
    {
        List<At> points = [.. layout.Marks.Where(m => m.Made != Made.Fence).Select(m => m.At)];
        if (layout.Bows.FirstOrDefault(b => b.Made == Made.Grass) is { } grass) points.AddRange([grass.Along(0.25), grass.Along(0.5), grass.Along(0.75)]);
        double wide = points.Max(p => Math.Abs(p.X)) + 3, away = layout.Measures.Feet("base distance") / 15;
        At first = layout["first"], second = layout["second"], deck = layout["on-deck circle, first base side, middle"];
        // under the box, where neither its lines nor the margin cut the words
        var coach = layout.Courses.First(c => c.Name == "coach's box, first base").Corners.MinBy(c => c.Y) + new At(layout.Measures.Length("coach's box depth") is null ? away : 0, -away * 0.6);
        List<(string, At)> labels = [("on-deck circle", deck + new At(0, -5)), ("on-deck circle", deck.Mirrored() + new At(0, -5)), ("coach's box", coach), ("coach's box", coach.Mirrored())];
        if (layout.Bows.FirstOrDefault(b => b.Made == Made.Grass) is { } line) labels.Add(("grass line", line.Along(0.72) + new At(0, -away)));
        return new("The infield", new(-wide, points.Min(p => p.Y) - 6), new(wide, points.Max(p => p.Y) + 4), Dimension.OfInfield(layout),
            [("home", new(0, points.Min(p => p.Y) - away / 2 - 0.5)), ("first", first + new At(away, 0.5)), ("second", second + new At(0, away / 2)), ("third", first.Mirrored() + new At(-away, 0.5)), .. labels]);
    }

    public static Window Whole(Layout layout, Func<double, string>? told = null)
    {
        told ??= Tape.Told;
        var bows = layout.Bows.SelectMany(b => Enumerable.Range(0, 9).Select(i => b.Along(i / 8.0))).Concat(layout.Marks.Select(m => m.At)).ToList();
        double wide = bows.Max(p => Math.Abs(p.X)) + 4;
        List<(string, At)> labels = [];
        var fences = layout.Bows.Where(b => b.Made == Made.Fence && b.Along(0.5).Y > 0).ToList();
        foreach (var fence in fences)
        {
            At pole = fence.Along(0), centre = fence.Along(0.5);
            labels.Add((fence.Name, centre + new At(0, 6)));
            labels.Add((told(centre.Length), centre + new At(0, -6)));
            if (Math.Abs(pole.Length - centre.Length) > 1) labels.Add((told(pole.Length), fence.Along(0.06) + new At(-14, 0)));
        }
        return new("The whole field", new(-wide, bows.Min(p => p.Y) - 4), new(wide, bows.Max(p => p.Y) + 12), [], labels);
    }

    /// <summary>The square with room round it for the sun's path.</summary>
    public static Window Sky(Layout layout)
    {
        At middle = layout["second"] * 0.5, reach = new At(1, 1) * (layout.Measures.Feet("base distance") * 1.45);
        return new("The sun's path", middle - reach, middle + reach, [], [("home", new(0, -3.5)), ("second", layout["second"] + new At(0, 3.5))]);
    }

    public static Window Plate(Layout layout)
    {
        At front = layout["batter's box, first base side, front outer corner"], back = layout["catcher's box, first base side, rear corner"];
        var wide = Math.Max(front.X, back.X) + 3;
        return new("Home plate, the batter's boxes and the catcher's box", new(-wide, back.Y - 1.8), new(wide, front.Y + 2), Dimension.OfPlate(layout), []);
    }

    public static Window First(Layout layout)
    {
        At at = layout["first"], reach = new(4.2, 4.2);
        List<(string, At)> labels = [("fair ground", at + new At(-1.9, 2.6)), ("foul ground", at + new At(2.9, 1.6)), ("runner's lane", at + new At(-0.4, -3))];
        if (layout.DoubleFirst) labels.Add(("coloured half", at + new At(2, -1.5)));
        return new("First base and the end of the lane", at - reach, at + reach, Dimension.OfFirst(layout), labels);
    }

    public static Window Pitching(Layout layout)
    {
        var bows = layout.Bows.Where(b => b.Name is "pitcher's circle" or "mound").ToList();
        var middle = bows.Count > 0 ? bows[0].Centre : layout["second"] * 0.5;
        var reach = (bows.Count > 0 ? bows.Max(b => b.Radius) : 6) + 2.2;
        return new("The pitcher's plate", middle - new At(reach, reach), middle + new At(reach, reach), Dimension.OfPitching(layout), []);
    }
}
