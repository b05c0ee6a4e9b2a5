using Umpirage.District.Diamonds;

namespace Umpirage.Tests.Diamonds;

/// <summary>Fields laid out from the sheets, measured on the layout and held against what the sources print.</summary>
public class LayoutTests
{
    internal static Layout Of(string address, bool? doubleFirst = null)
    {
        var findings = new List<Finding>();
        return Layout.Of(Shelf.Code(Shelf.Codes, address), findings, doubleFirst) ?? throw new InvalidOperationException(string.Join("; ", findings));
    }

    internal const string Plate = "pitcher's plate, middle of the front";

    [Theory]
    // layout notes: rear point of home to the centre of second, "Guide for Softball Field Dimensions" (quotes an NFHS layout): 84 ft 10 1/4 in
    [InlineData("softball/12U", "84 ft 10 1/4 in")]
    [InlineData("baseball/10U", "84 ft 10 1/4 in")]
    // OBR 2.01 (2016 text)
    [InlineData("baseball/18U+OBR", "127 ft 3 3/8 in")]
    // "Softball Field Dimensions" table prints 91 ft 11 in; to the eighth 91 ft 11 1/8 in
    [InlineData("baseball/10U+USSSA", "91 ft 11 1/8 in")]
    // s x sqrt(2) worked out by hand: 98 ft 11.939 in, which is nearest to 99 ft as books print it, and 113 ft 1.645 in (books print 113 ft 2 in; both from memory)
    [InlineData("baseball/12U+PONY", "99 ft")]
    [InlineData("baseball/14U", "113 ft 1 5/8 in")]
    public void Second_lies_where_the_sources_say(string address, string diagonal)
    {
        var layout = Of(address);
        Assert.Equal(diagonal, Tape.Told(layout["home"].To(layout["second"])));
        Assert.Equal(diagonal, Tape.Told(layout["first"].To(layout["third"])));
    }

    [Theory]
    // squares no division plays on: 70 ft 8 1/2 in (2019 wheelchair softball rules), 77 ft 9 in ("Softball Field Dimensions" table), rounded by their sources
    [InlineData(50, "70 ft 8 1/2 in", 0.5)]
    [InlineData(55, "77 ft 9 in", 0.5)]
    [InlineData(65, "91 ft 11 in", 0.125)]
    public void Diagonals_of_other_squares(double side, string printed, double inches) =>
        Assert.InRange(Math.Abs(Tape.Read(printed, out _)!.Value - side * Math.Sqrt(2)) * 12, 0, inches);

    [Theory]
    // US softball association field table, Rule 2-1 (undated scan)
    [InlineData("softball/10U", 35, 60)]
    [InlineData("softball/12U", 40, 60)]
    [InlineData("softball/14U", 43, 60)]
    [InlineData("softball/18U", 43, 60)]
    // a US fastpitch association's field table, section 1
    [InlineData("softball/10U+USSSA", 35, 60)]
    [InlineData("softball/12U+USSSA", 40, 60)]
    [InlineData("softball/18U+USSSA", 43, 60)]
    // OBR 2.01, 2.07; PONY league field rules (from memory); a youth event field page; a national youth games page: 14.02 m
    [InlineData("baseball/18U+OBR", 60.5, 90)]
    [InlineData("baseball/10U", 46, 60)]
    [InlineData("baseball/12U+PONY", 50, 70)]
    [InlineData("baseball/14U", 54, 80)]
    [InlineData("baseball/14U+USSSA", 60.5, 90)]
    [InlineData("baseball/12U", 14.02 / 0.3048, 60)]
    public void Plate_and_bases_lie_as_the_tables_print(string address, double pitching, double bases)
    {
        var layout = Of(address);
        Assert.Equal(pitching, layout["home"].To(layout[Plate]), 2);
        foreach (var (from, to) in ((string, string)[])[("home", "first"), ("first", "second"), ("second", "third"), ("third", "home")]) Assert.Equal(bases, layout[from].To(layout[to]), 9);
    }

    [Theory]
    // softball: box 3 x 7 ft (USA, NFHS, WBSC), 6 in from the plate, 4 ft ahead of its middle (a US fastpitch association, 1-2); catcher's box 10 ft by 8 ft 5 in (ISF, WBSC, NFHS)
    [InlineData("softball/18U+NFHS", 3, 7, 6, 4, "8 ft 5 in", 10)]
    // baseball: 4 x 6 ft, 6 in gap, 3 ft ahead (OBR appendix 2); catcher's box 43 in wide, its depth of 8 ft counted from the point (from memory)
    [InlineData("baseball/18U+OBR", 4, 6, 6, 3, "3 ft 7 in", 8 - 27.5 / 12)]
    // baseball to 12: 3 x 6 ft and a gap of 4 in ("Laying Out Your Ballfield", a grounds guide)
    [InlineData("baseball/12U", 3, 6, 4, 3, "3 ft 7 in", 8 - 27.5 / 12)]
    public void The_boxes_are_as_wide_and_long_as_printed(string address, double wide, double length, double gapInches, double ahead, string catcherWide, double catcherDeep)
    {
        var layout = Of(address);
        var box = layout.Courses.First(c => c.Name == "batter's box, first base side").Corners;
        Assert.Equal(wide, box[0].To(box[1]), 9);
        Assert.Equal(length, box[1].To(box[2]), 9);
        var plate = layout.Courses.First(c => c.Name == "home plate").Corners;
        // home plate is 17 in wide, its point cut at a right angle (OBR 2.02, from memory)
        Assert.Equal(17.0 / 12, plate[2].To(plate[3]), 9);
        Assert.Equal(0, (plate[1].X - plate[0].X) * (plate[4].X - plate[0].X) + (plate[1].Y - plate[0].Y) * (plate[4].Y - plate[0].Y), 12);
        Assert.Equal(gapInches / 12, box[0].X - plate[1].X, 9);
        Assert.Equal(ahead, box[0].Y - 8.5 / 12, 9);
        var catcher = layout.Courses.First(c => c.Name == "catcher's box").Corners;
        Assert.Equal(catcherWide, Tape.Told(catcher[0].To(catcher[1])));
        Assert.Equal(catcherDeep, catcher[1].To(catcher[2]), 9);
    }

    [Fact]
    public void First_and_third_lie_wholly_inside_and_second_in_the_middle_of_its_point()
    {
        // NFHS layout as quoted: rear tip of home to the centre of second, and to the outer corner of first and third
        var layout = Of("softball/18U+NFHS");
        bool Inside(At p) => p.Y >= Math.Abs(p.X) - 1e-9 && p.Y + Math.Abs(p.X) <= layout["second"].Y + 1e-9;
        foreach (var name in (string[])["first base", "third base"])
        {
            var corners = layout.Courses.First(c => c.Name == name).Corners;
            Assert.All(corners, c => Assert.True(Inside(c), $"{name} {c}"));
            Assert.Contains(corners, c => c.To(layout[name.Split(' ')[0]]) < 1e-9);
            // 15 in square (fastpitch summary)
            Assert.Equal(1.25, corners[0].To(corners[1]), 9);
        }
        var second = layout.Courses.First(c => c.Name == "second base").Corners;
        Assert.Equal(0, second.Average(c => c.X), 9);
        Assert.Equal(layout["second"].Y, second.Average(c => c.Y), 9);
    }

    [Fact]
    public void The_coloured_half_lies_wholly_in_foul_ground()
    {
        // 15 x 30 in, white half fair, coloured half foul (NFHS SB 1-2-1 note; USA SB 8-2, 2023)
        var layout = Of("softball/12U+USA");
        Assert.True(layout.DoubleFirst);
        var coloured = layout.Courses.Single(c => c.Made == Made.Coloured).Corners;
        Assert.All(coloured, c => Assert.True(c.Y <= c.X + 1e-9));
        var white = layout.Courses.First(c => c.Name == "first base").Corners;
        Assert.Equal(30.0 / 12, coloured[2].To(white[2]), 9);
        Assert.DoesNotContain(Of("baseball/18U+OBR").Courses, c => c.Made == Made.Coloured);
    }

    [Fact]
    public void Circle_mound_lane_boxes_and_fences_are_as_printed()
    {
        var softball = Of("softball/12U");
        // 8 ft round the middle of the plate's front edge (layout pages)
        var circle = softball.Bows.Single(b => b.Name == "pitcher's circle");
        Assert.Equal((8, softball[Plate]), (circle.Radius, circle.Centre));
        // lane 3 ft wide over the last 30 ft ("Laying Out Your Ballfield")
        Assert.Equal(3, softball["runner's lane, beginning on the line"].To(softball["runner's lane, beginning in foul ground"]), 9);
        Assert.Equal(30, softball["runner's lane, beginning on the line"].To(softball["first"]), 9);
        // coach's box 8 ft off the line ("Softball Field Dimensions" table)
        Assert.Equal(8, softball["coach's box, first base, corner level with the base"].To(softball["first"]), 9);
        // fence 200 to 225 ft (field table, Rule 2-1)
        Assert.Equal((200, 225), (softball.Bows.Single(b => b.Name == "shortest fence").Radius, softball.Bows.Single(b => b.Name == "longest fence").Radius));
        var obr = Of("baseball/18U+OBR");
        // pitcher's plate 24 x 6 in (OBR 2.04); mound 18 ft across, the plate 18 in behind its middle (a federation field page); 5 ft on deck (the same)
        var rubber = obr.Courses.Single(c => c.Name == "pitcher's plate").Corners;
        Assert.Equal((2.0, 0.5), (rubber[0].To(rubber[1]), rubber[1].To(rubber[2])));
        var mound = obr.Bows.Single(b => b.Name == "mound");
        Assert.Equal((9, 1.5), (mound.Radius, obr[Plate].Y - mound.Centre.Y));
        Assert.Equal(2.5, obr.Bows.First(b => b.Name.StartsWith("on-deck")).Radius);
        // 320 ft at the lines, 400 ft in centre (OBR 2.01, 2016 text, preferred): one arc through the three
        var fence = obr.Bows.Single(b => b.Name == "fence as advised");
        Assert.Equal(320, fence.Along(0).Length, 6);
        Assert.Equal(400, fence.Along(0.5).Length, 6);
        Assert.Equal(320, fence.Along(1).Length, 6);
        Assert.Equal(fence.Along(0).X, fence.Along(0).Y, 6);
        // bases 18 in from 2023 (OBR 2.03), 15 in before
        Assert.Equal(1.5, obr.Courses.First(c => c.Name == "first base").Corners is var b ? b[0].To(b[1]) : 0, 9);
        Assert.Equal(1.25, Of("baseball/18U+OBR@2022-06-01").Courses.First(c => c.Name == "first base").Corners is var old ? old[0].To(old[1]) : 0, 9);
        // backstop 60 ft (OBR 2.01, recommended)
        Assert.Equal(60, -obr["backstop, behind the middle"].Y);
    }

    public static TheoryData<string> Addresses => [.. Shelf.Roster.PlayedAs.Values.Distinct().Concat(Shelf.Roster.Games.SelectMany(g => Shelf.Roster.Divisions.SelectMany(d => Shelf.Roster.Bodies.Where(b => b.Game == g).Select(b => $"{g}/{d}+{b.Name}").Prepend($"{g}/{d}"))))];

    [Theory]
    [MemberData(nameof(Addresses))]
    public void Every_code_lays_out_and_both_sides_are_mirror_images(string address)
    {
        var layout = Of(address);
        foreach (var mark in layout.Marks.Where(m => m.Name.Contains("first base side") || m.Name.StartsWith("coach's box, first")))
            Assert.Equal(0, mark.At.Mirrored().To(layout[mark.Name.Replace("first", "third")]), 9);
        Assert.Equal(layout.Marks.Count, layout.Marks.Select(m => m.Name).Distinct().Count());
        // a tape from two corners and the side on which the point lies give the point back: circles cut by hand, no code of the program
        foreach (var s in StakeOut.Of(layout).Stakes)
        {
            At a = layout[s.From], b = layout[s.AndFrom];
            double d = a.To(b), along = (s.Reading * s.Reading - s.AndReading * s.AndReading + d * d) / (2 * d), off = Math.Sqrt(Math.Max(0, s.Reading * s.Reading - along * along));
            At u = (b - a) * (1 / d), v = new(-u.Y, u.X);
            Assert.True(Math.Min((a + u * along + v * off).To(s.At), (a + u * along - v * off).To(s.At)) < 1e-5, s.Mark);
        }
    }

    [Fact]
    public void A_field_that_cannot_be_is_refused_with_the_reason()
    {
        var book = Codebook.Read(("roster.txt", Shelf.RosterText), Shelf.Files(Folder.Of("codes"), "field*.sheet").Select(f => new SourceText(Path.GetFileName(f), File.ReadAllText(f)))
            .Append(new("bad.layer", "Layer: Bad\nkind: district\ntitle: Bad\n\nSheet: field\nSet pitching distance\n  softball = 90 ft | invented | our own\nSet base distance\n  softball = 50 ft | invented | our own\nSet shortest fence\n  softball = 45 ft | invented | our own\n")));
        var findings = new List<Finding>();
        Assert.Null(Layout.Of(Shelf.Code(book, "softball/12U+Bad"), findings));
        Assert.Equal(3, findings.Count);
        Assert.Contains(findings, f => f.Message.Contains("behind second base"));
        Assert.Contains(findings, f => f.Message.Contains("stands before first base"));
        Assert.Contains(findings, f => f.Message.Contains("closes at 70 ft 8 1/2 in"));
    }

    [Fact]
    public void Two_divisions_share_bases_and_clash_where_marks_are_near()
    {
        var shared = CommonMark.Of([("softball", Of("softball/12U")), ("baseball", Of("baseball/12U"))]);
        CommonMark Mark(string mark) => shared.First(s => s.Name == mark);
        Assert.Equal(Fit.Shared, Mark("first").Fit);
        // 40 ft and 46 ft
        Assert.Equal(6, Mark(Plate).Nearest!.Value, 9);
        Assert.Equal(Fit.Apart, Mark(Plate).Fit);
        // boxes 6 in and 4 in from the plate, both ending 3 ft behind its middle: 2 in apart
        Assert.Equal(Fit.Clashing, Mark("batter's box, first base side, rear inner corner").Fit);
        Assert.All(CommonMark.Of([("one", Of("softball/12U")), ("other", Of("softball/12U"))]), s => Assert.Equal(Fit.Shared, s.Fit));
    }

    /// <summary>
    /// A mound 10 ft across with its middle at 45 ft 2 in (youth baseball on 60 ft bases | from memory) reaches into the circle of 8 ft round a plate at 40 ft (field layout pages | published):
    /// the two are 5 ft 2 in apart, and 5 ft and 8 ft reach 13 ft. The plate of the eldest boys lies at 60 ft 6 in (OBR 2.01), its mound 9 ft round 59 ft: 13 ft 10 in from 45 ft 2 in, and 9 and 5 reach 14 ft.
    /// </summary>
    [Fact]
    public void Earth_that_lies_in_anothers_way_is_told_and_two_level_fields_have_none()
    {
        IReadOnlyList<string> Told(params string[] codes) => Mounds.Clashing([.. codes.Select(c => (c, Of(c)))]);
        Assert.Equal("the mound of baseball/12U, 10 ft across and 6 in high, its middle 45 ft 2 in from home, lies in the level ground that is asked for by softball/12U (plate at 40 ft): use one that is carried away, or another diamond",
            Assert.Single(Told("softball/12U", "baseball/12U")));
        Assert.Single(Told("baseball/12U", "softball/12U", "softball/14U", "baseball/10U"));
        // 59 ft less 45 ft 2 in: 13 ft 10 in, and 14 ft is reached
        Assert.Contains("its middle 59 ft from home, lie in each other", Assert.Single(Told("baseball/12U", "baseball/18U")));
        // 59 ft less 35 ft: 24 ft, and 9 ft and 8 ft reach 17 ft
        Assert.Empty(Told("softball/10U", "baseball/18U"));
        Assert.Empty(Told("softball/12U", "softball/14U", "softball/18U"));
        // one mound at one place and of one height is one for both
        Assert.Empty(Told("baseball/10U", "baseball/12U"));
    }

    [Theory]
    [InlineData(84.85281374238570, "84 ft 10 1/4 in")]
    [InlineData(0.0104, "1/8 in")]
    [InlineData(59.9999, "60 ft")]
    [InlineData(-0.5, "-6 in")]
    [InlineData(0, "0 ft")]
    public void Feet_are_told_to_the_eighth(double feet, string told) => Assert.Equal(told, Tape.Told(feet));
}
