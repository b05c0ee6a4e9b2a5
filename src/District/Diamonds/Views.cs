namespace Umpirage.District.Diamonds;

/// <summary>
/// The views: the field, first base, the plate with its boxes, the pitcher's circle and the way of her feet, an inning in which time runs out, what
/// came before an out and after it, seconds and minutes on a line. Schematic: a laid-out field with its measures is another thing.
/// </summary>
public static class Views
{
    public static IReadOnlyList<View> All { get; } = [Field(), FirstBase(), Plate(), Circle(), Delivery(), Inning(), TheOut(), Scale("seconds", "a line of seconds"), Scale("minutes", "a line of minutes")];

    public static View? Named(string name) => All.FirstOrDefault(v => Rules.Ground.Words.Same(v.Name, name));

    private static Shape Open(Stroke stroke, params (double, double)[] points) => new(stroke, false, points);
    private static Shape Closed(Stroke stroke, params (double, double)[] points) => new(stroke, true, points);
    private static Shape Square(Stroke stroke, double x, double y, double half) => Closed(stroke, (x, y - half), (x + half, y), (x, y + half), (x - half, y));
    private static Shape HomePlate(double x, double y, double half) => Closed(Stroke.Base, (x - half, y - half), (x + half, y - half), (x + half, y), (x, y + half), (x - half, y));

    private static Shape Arc(Stroke stroke, double x, double y, double radius, double from, double until, bool closed = false) =>
        new(stroke, closed, [.. Enumerable.Range(0, 25).Select(i => (from + (until - from) * i / 24) * Math.PI / 180).Select(a => (x + radius * Math.Cos(a), y - radius * Math.Sin(a)))]);

    private static View Field() => new("field", "the field",
    [
        new(Stroke.Grass, true, [(50, 86), .. Arc(Stroke.Grass, 50, 86, 66, 45, 135).Points]),
        Closed(Stroke.Dirt, (50, 86), (78, 58), (50, 30), (22, 58)), Open(Stroke.Chalk, (50, 86), (97, 39)), Open(Stroke.Chalk, (50, 86), (3, 39)),
        Arc(Stroke.Chalk, 50, 60, 6, 0, 360, closed: true), Square(Stroke.Base, 78, 58, 2.6), Square(Stroke.Base, 50, 30, 2.6), Square(Stroke.Base, 22, 58, 2.6), HomePlate(50, 86, 2.6),
    ], new Dictionary<string, (double, double)>
    {
        ["home"] = (50, 86), ["first"] = (78, 58), ["second"] = (50, 30), ["third"] = (22, 58), ["circle"] = (50, 60), ["toward first"] = (65, 72), ["toward second"] = (65, 43), ["toward third"] = (36, 44), ["toward home"] = (36, 72),
        ["first base fielder"] = (72, 47), ["second base fielder"] = (62, 34), ["shortstop"] = (36, 36), ["third base fielder"] = (26, 47), ["catcher"] = (50, 93), ["left field"] = (22, 28), ["centre field"] = (50, 22), ["right field"] = (78, 28),
        ["foul ground"] = (86, 72), ["dead ground"] = (93, 90), ["past first"] = (88, 52), ["over the infield"] = (58, 48), ["short of the bases"] = (60, 74),
    }, []);

    private static View FirstBase() => new("first base", "first base seen from above",
    [
        Closed(Stroke.Grass, (0, 0), (52, 0), (52, 100), (0, 100)), Closed(Stroke.Dirt, (52, 0), (100, 0), (100, 100), (52, 100)), Open(Stroke.Chalk, (52, 0), (52, 100)), Open(Stroke.Chalk, (72, 50), (72, 100)),
        Closed(Stroke.Base, (36, 34), (52, 34), (52, 50), (36, 50)), Closed(Stroke.Coloured, (52, 34), (68, 34), (68, 50), (52, 50)),
    ], new Dictionary<string, (double, double)>
    {
        ["white half"] = (43, 42), ["coloured half"] = (61, 42), ["short of the base"] = (56, 62), ["off the base"] = (28, 52), ["lane"] = (62, 76), ["over the foul line"] = (40, 76), ["beyond the lane"] = (84, 76),
        ["fair side"] = (18, 20), ["foul side"] = (84, 20), ["past the base"] = (60, 14), ["into fair ground"] = (38, 14), ["in foul ground"] = (80, 40), ["inner corner"] = (33, 31), ["at the base"] = (52, 55),
    }, []);

    private static View Plate() => new("plate", "home plate and the boxes seen from above",
    [
        Closed(Stroke.Dirt, (4, 4), (96, 4), (96, 96), (4, 96)), HomePlate(50, 50, 9), Closed(Stroke.Chalk, (16, 24), (36, 24), (36, 74), (16, 74)), Closed(Stroke.Chalk, (64, 24), (84, 24), (84, 74), (64, 74)),
        Closed(Stroke.Chalk, (34, 74), (66, 74), (66, 96), (34, 96)),
    ], new Dictionary<string, (double, double)>
    {
        ["in the box"] = (26, 46), ["on the line"] = (36, 40), ["partly outside"] = (38, 30), ["outside the box"] = (44, 18), ["on the plate"] = (50, 48), ["other box"] = (74, 46), ["catcher's box"] = (50, 86), ["before the plate"] = (50, 28),
        ["in front"] = (60, 14), ["third base line"] = (10, 14), ["bat"] = (44, 40), ["in the air outside"] = (46, 22),
    }, []);

    private static View Circle() => new("circle", "the pitcher's plate and circle seen from above",
    [
        Closed(Stroke.Dirt, (2, 2), (98, 2), (98, 98), (2, 98)), Arc(Stroke.Chalk, 50, 50, 42, 0, 360, closed: true), Closed(Stroke.Base, (34, 47), (66, 47), (66, 53), (34, 53)),
    ], new Dictionary<string, (double, double)>
    {
        ["left on the plate"] = (42, 50), ["right on the plate"] = (58, 50), ["behind the plate"] = (42, 66), ["ahead of the plate"] = (42, 32), ["off the plate"] = (58, 68), ["outside the ends"] = (76, 50), ["inside the circle"] = (50, 74), ["on the line"] = (50, 92),
        ["outside the circle"] = (88, 94), ["hands apart"] = (24, 36), ["hands together"] = (50, 40), ["ball"] = (62, 36), ["toward home"] = (50, 10),
    }, []);

    // home is at the top: the lane as wide as the plate runs toward it
    private static View Delivery() => new("delivery", "the pitcher's plate and the lane toward home, seen from above",
    [
        Closed(Stroke.Dirt, (2, 2), (98, 2), (98, 98), (2, 98)), Closed(Stroke.Base, (30, 72), (70, 72), (70, 79), (30, 79)), Open(Stroke.Chalk, (30, 72), (30, 8)), Open(Stroke.Chalk, (70, 72), (70, 8)),
    ], new Dictionary<string, (double, double)>
    {
        ["pivot on the plate"] = (56, 75), ["pivot ahead, toes dragging"] = (56, 48), ["pivot at the end of the plate"] = (67, 75), ["pivot off the plate"] = (56, 92), ["replanted ahead of the plate"] = (56, 56),
        ["inside the lane"] = (42, 28), ["partly outside the lane"] = (30, 28), ["wholly outside the lane"] = (14, 28), ["beside the plate"] = (42, 88), ["in the air"] = (42, 14), ["also in the air"] = (58, 24), ["over a hole"] = (58, 40),
    }, [new("toward home", 50, 7)]);

    private static View Inning() => new("inning", "an inning as a line in time",
    [
        Closed(Stroke.Grass, (2, 40), (34, 40), (34, 60), (2, 60)), Closed(Stroke.Dirt, (34, 40), (66, 40), (66, 60), (34, 60)), Closed(Stroke.Chalk, (2, 40), (34, 40), (34, 60), (2, 60)), Closed(Stroke.Chalk, (34, 40), (66, 40), (66, 60), (34, 60)),
        Closed(Stroke.Chalk, (66, 40), (98, 40), (98, 60), (66, 60)),
    ], new Dictionary<string, (double, double)>
    {
        ["in the visitors' half"] = (18, 26), ["in the home half"] = (50, 26), ["after both halves"] = (82, 26), ["now, in the visitors' half"] = (24, 74), ["now, in the home half"] = (56, 74), ["now, between innings"] = (66, 74), ["now, an inning later"] = (94, 74),
    }, [new("visitors", 18, 52), new("home side", 50, 52), new("next inning", 82, 52)]);

    private static View TheOut() => new("the out", "the out on a line of time", [Open(Stroke.Chalk, (4, 50), (96, 50)), Open(Stroke.Chalk, (50, 38), (50, 62))], new Dictionary<string, (double, double)>
    {
        ["home touched before the out"] = (24, 50), ["home touched after the out"] = (76, 50),
    }, [new("the out", 50, 33), new("earlier", 12, 66), new("later", 88, 66)]);

    /// <summary>A line from left to right on which numbers lie.</summary>
    private static View Scale(string name, string says) => new(name, says, [Open(Stroke.Chalk, (8, 50), (92, 50))], new Dictionary<string, (double, double)>(), [], Scale: true);
}
