namespace Umpirage.District.Diamonds;

/// <summary>Lays a field out from its measures.</summary>
internal sealed class GroundsKeeper
{
    /// <summary>From home to first, and from home to third: the square stands on its corner.</summary>
    private static readonly At ToFirst = new(Math.Sqrt(0.5), Math.Sqrt(0.5)), ToThird = ToFirst.Mirrored();

    /// <summary>From the first base line straight into foul ground.</summary>
    private static readonly At Outward = ToThird * -1;

    private readonly Measures code;
    private readonly List<Mark> marks = [];
    private readonly List<Course> courses = [];
    private readonly List<Bow> bows = [];

    private GroundsKeeper(Measures code) => this.code = code;

    public static Layout Lay(Measures measures, bool doubleFirst)
    {
        var keeper = new GroundsKeeper(measures);
        keeper.Outfield();
        keeper.Bases(doubleFirst);
        keeper.Pitching();
        keeper.Plate();
        keeper.Lane();
        foreach (var side in (string[])["first", "third"]) keeper.CoachAndOnDeck(side);
        return new(measures, doubleFirst, keeper.marks, keeper.courses, keeper.bows);
    }

    private void Stake(string name, Made made, At at) => marks.Add(new(name, made, at, Staked: true));
    private void Point(string name, Made made, At at) => marks.Add(new(name, made, at, Staked: false));
    private void Line(string name, Made made, params At[] corners) => courses.Add(new(name, made, Closed: false, corners));
    private void Box(string name, Made made, params At[] corners) => courses.Add(new(name, made, Closed: true, corners));

    private void Bases(bool doubleFirst)
    {
        double far = code.Feet("base distance"), width = code.Feet("base width");
        // first and third lie wholly inside; the square's corner is the base's outer one
        Stake("home", Made.Rubber, default);
        Stake("first", Made.Base, ToFirst * far);
        Stake("second", Made.Base, (ToFirst + ToThird) * far);
        Stake("third", Made.Base, ToThird * far);
        At[] first = [ToFirst * (far - width), ToFirst * far, ToFirst * far + ToThird * width, ToFirst * (far - width) + ToThird * width];
        Box("first base", Made.Base, first);
        Box("third base", Made.Base, [.. first.Select(c => c.Mirrored())]);
        At centre = (ToFirst + ToThird) * far, half = ToFirst * (width / 2), across = ToThird * (width / 2);
        Box("second base", Made.Base, centre - half - across, centre + half - across, centre + half + across, centre - half + across);
        if (!doubleFirst) return;
        var coloured = Outward * (code.Feet("double base length") - width);
        Box("coloured half of first base", Made.Coloured, first[0], first[1], first[1] + coloured, first[0] + coloured);
        Point("coloured half, outer back corner", Made.Coloured, first[1] + coloured);
    }

    private void Pitching()
    {
        double far = code.Feet("pitching distance"), half = code.Feet("pitcher's plate length") / 2, deep = code.Feet("pitcher's plate width");
        Box("pitcher's plate", Made.Rubber, new(-half, far), new(half, far), new(half, far + deep), new(-half, far + deep));
        Stake("pitcher's plate, middle of the front", Made.Rubber, new(0, far));
        if (code.Length("circle radius") is { } radius) bows.Add(new("pitcher's circle", Made.Chalk, new(0, far), radius, 0, 360));
        if (code.Length("mound across") is not { } mound || code.Length("pitcher's plate behind the middle of the mound") is not { } behind) return;
        // the plate lies behind the middle, as seen from home
        Stake("middle of the mound", Made.Dirt, new(0, far - behind));
        bows.Add(new("mound", Made.Dirt, new(0, far - behind), mound / 2, 0, 360));
    }

    private void Plate()
    {
        double width = code.Feet("home plate width"), half = width / 2;
        Box("home plate", Made.Rubber, new(0, 0), new(half, half), new(half, width), new(-half, width), new(-half, half));
        double front = half + code.Feet("batter's box reach ahead of the plate's centre"), rear = front - code.Feet("batter's box length");
        double inner = half + code.Feet("batter's box gap from the plate"), outer = inner + code.Feet("batter's box width");
        foreach (var (side, sign) in ((string, int)[])[("first base side", 1), ("third base side", -1)])
        {
            At[] corners = [new(sign * inner, front), new(sign * outer, front), new(sign * outer, rear), new(sign * inner, rear)];
            Box($"batter's box, {side}", Made.Chalk, corners);
            foreach (var (corner, at) in ((string[])["front inner", "front outer", "rear outer", "rear inner"]).Zip(corners)) Stake($"batter's box, {side}, {corner} corner", Made.Chalk, at);
        }
        var back = code.Word("catcher's box measured from") == "point of home" ? -code.Feet("catcher's box depth") : rear - code.Feet("catcher's box depth");
        if (code.Length("catcher's box width") is { } wide)
            Box("catcher's box", Made.Chalk, new(-wide / 2, rear), new(wide / 2, rear), new(wide / 2, back), new(-wide / 2, back));
        // the base lines run on behind the plate, from the boxes until the back line
        else Line("catcher's box", Made.Chalk, new(-rear, rear), new(-back, back), new(back, back), new(rear, rear));
        var reach = code.Length("catcher's box width") / 2 ?? -back;
        Stake("catcher's box, first base side, rear corner", Made.Chalk, new(reach, back));
        Stake("catcher's box, third base side, rear corner", Made.Chalk, new(-reach, back));
    }

    private void Lane()
    {
        double end = code.Feet("base distance"), begin = end - code.Feet("lane length");
        var wide = Outward * code.Feet("lane width");
        Line("runner's lane", Made.Chalk, ToFirst * begin, ToFirst * begin + wide, ToFirst * end + wide);
        Stake("runner's lane, beginning on the line", Made.Chalk, ToFirst * begin);
        Stake("runner's lane, beginning in foul ground", Made.Chalk, ToFirst * begin + wide);
        Stake("runner's lane, end in foul ground", Made.Chalk, ToFirst * end + wide);
    }

    private void CoachAndOnDeck(string side)
    {
        At Side(At at) => side == "first" ? at : at.Mirrored();
        var end = code.Feet("base distance") + code.Feet("coach's box past the base");
        var begin = end - code.Feet("coach's box length");
        var off = Outward * code.Feet("coach's box distance from the line");
        At near = Side(ToFirst * end + off), back = Side(ToFirst * begin + off);
        if (code.Length("coach's box depth") is { } depth)
        {
            At deep = Side(Outward * depth);
            Line($"coach's box, {side} base", Made.Chalk, near + deep, near, back, back + deep);
        }
        else Line($"coach's box, {side} base", Made.Chalk, near, back);
        Stake($"coach's box, {side} base, corner level with the base", Made.Chalk, near);
        Stake($"coach's box, {side} base, corner toward home", Made.Chalk, back);
        var deck = Side(new(code.Feet("on-deck circle from home"), 0));
        bows.Add(new($"on-deck circle, {side} base side", Made.Chalk, deck, code.Feet("on-deck circle across") / 2, 0, 360));
        Stake($"on-deck circle, {side} base side, middle", Made.Chalk, deck);
    }

    private void Outfield()
    {
        var plate = new At(0, code.Feet("pitching distance"));
        double? lines = code.Length("fence advised at the lines"), centre = code.Length("fence advised in centre"), grass = code.Length("grass line radius");
        if (code.Length("shortest fence") is { } near) Fence("shortest fence", near, near);
        if (code.Length("longest fence") is { } longest) Fence("longest fence", longest, longest);
        if (lines is { } advised) Fence("fence as advised", advised, centre ?? advised);
        var end = code.Length("shortest fence") ?? lines ?? 2 * code.Feet("base distance");
        // no chalk inside the batter's boxes: the lines begin where they leave them
        var half = code.Feet("home plate width") / 2;
        var begin = Math.Min(half + code.Feet("batter's box reach ahead of the plate's centre"), half + code.Feet("batter's box gap from the plate") + code.Feet("batter's box width"));
        Line("foul line, first base side", Made.Chalk, new(begin, begin), ToFirst * end);
        Line("foul line, third base side", Made.Chalk, new(-begin, begin), ToThird * end);
        if (grass is { } radius && Meets(plate, radius) is { } at)
        {
            Bow(name: "grass line", Made.Grass, plate, radius, ToFirst * at);
            Stake("grass line on the first base line", Made.Grass, ToFirst * at);
            Stake("grass line on the third base line", Made.Grass, ToThird * at);
        }
        if (code.Length("backstop advised") is { } stop)
        {
            Stake("backstop, behind the middle", Made.Fence, new(0, -stop));
            bows.Add(new("backstop as advised", Made.Fence, default, stop, 240, 60));
        }
    }

    /// <summary>How far up the first base line a circle about a place on the middle line meets it.</summary>
    private static double? Meets(At centre, double radius)
    {
        double along = centre.X * ToFirst.X + centre.Y * ToFirst.Y, under = along * along - centre.Length * centre.Length + radius * radius;
        return under < 0 ? null : along + Math.Sqrt(under);
    }

    /// <summary>From a pole on the first base line over centre field to the other pole: a part of the one circle through the three.</summary>
    private void Fence(string name, double atTheLines, double inCentre)
    {
        var pole = ToFirst * atTheLines;
        var middle = (inCentre * inCentre - atTheLines * atTheLines) / (2 * (inCentre - pole.Y));
        Bow(name, Made.Fence, new(0, middle), inCentre - middle, pole);
        if (marks.Any(m => m.Made == Made.Fence)) return;
        Stake("foul pole, first base side", Made.Fence, pole);
        Stake("foul pole, third base side", Made.Fence, pole.Mirrored());
    }

    /// <summary>An arc from a point on the first-base side to its mirror point, over the middle.</summary>
    private void Bow(string name, Made made, At centre, double radius, At from)
    {
        var start = Math.Atan2(from.Y - centre.Y, from.X - centre.X) * 180 / Math.PI;
        bows.Add(new(name, made, centre, radius, start, 180 - 2 * start));
    }
}
