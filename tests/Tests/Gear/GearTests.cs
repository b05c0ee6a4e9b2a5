using System.Text.RegularExpressions;
using Umpirage.District.Gear;

namespace Umpirage.Tests.Gear;

/// <summary>Gear looked over by division and day: the story of the plate meeting, marks through the years, and lists that cannot be read.</summary>
public class GearTests
{
    private static (GearFile List, IReadOnlyList<Looked>? Looked, List<string> Faults) Read(string text)
    {
        var findings = new List<Finding>();
        var list = GearFile.Read("a.gear", text, findings);
        var looked = list.Code == "" ? null : Inspector.Inspect(Shelf.Codes, list, "a.gear", Shelf.Today, findings);
        return (list, looked, [.. findings.OrderBy(f => f.Line).Select(f => f.ToString())]);
    }

    private static Looked One(string code, string piece)
    {
        var (_, looked, faults) = Read($"code: {code}\n{piece}");
        Assert.Empty(faults);
        return Assert.Single(looked!);
    }

    // the project's story F8: bats and helmet at the plate meeting of 11- and 12-year-olds
    private const string Story = """
        Gear: Pellwick Larks at Tarnholt Mice
        code: BB-12@2026-05-16
        bat A
          marks: wood-like youth standard
          bat condition is damaged (a dent you can feel)
        bat B
          marks: BBCOR .50 (a high-performance mark for older divisions)
        bat C
          marks: none (the mark is worn off)
          bat condition is damaged (the end cap rattles)
        helmet 4
          helmet itself is cracked (a hairline crack)
          helmet itself is mark not readable (a sticker over the mark)
        """;

    [Fact]
    public void The_story_of_the_plate_meeting()
    {
        var (list, looked, faults) = Read(Story);
        Assert.Empty(faults);
        var (a, b, c, helmet) = (looked![0], looked[1], looked[2], looked[3]);
        Assert.All(looked, l => Assert.False(l.Conforms));
        // A: the right mark, out for its damage
        Assert.StartsWith("carries the mark", a.Mark);
        Assert.Equal("a damaged bat", Assert.Single(a.Reasons).Title);
        // B: the mark of another division; the youth mark is asked for at 11 and 12, the other in older play only
        Assert.StartsWith("does not carry the mark this code asks for (wood-like youth standard)", b.Mark);
        Assert.Contains("NFHS baseball rules", b.Mark);
        Assert.Equal("only the mark of another body", Assert.Single(b.Reasons).Title);
        // C: cannot show compliance, and loose
        Assert.Equal(["no mark at all", "a damaged bat"], c.Reasons.Select(r => r.Title));
        // helmet: both faults stand
        Assert.Equal(["it is cracked", "its mark cannot be read"], helmet.Reasons.Select(r => r.Title));
        Assert.Equal(["bat A", "bat B", "bat C", "helmet 4"], looked.Select(l => l.Removal!.Item));
        Assert.Contains("the mark is worn off; the end cap rattles", c.Removal!.InWords);
        Assert.Contains("2026-05-16 | baseball/12U+Oslemoor-baseball | Pellwick Larks at Tarnholt Mice", a.Removal!.InWords);

        // a bat not approved, by when it is found: nothing before the box, out until the next pitch, nothing after it
        string Cost(Looked l, string found) => string.Join("; ", l.Costs.Single(k => k.Found == found).Decisions);
        Assert.Contains("batter: no penalty", Cost(b, "before the box"));
        Assert.Contains("batter: out", Cost(b, "in the box"));
        Assert.Contains("batter: out", Cost(b, "after the at-bat"));
        Assert.Contains("runners: return to the bases held at the pitch", Cost(b, "after the at-bat"));
        Assert.Contains("batter: no penalty", Cost(b, "after the next pitch"));
        // a loose end cap does not make a bat without a mark cheaper (the stricter of two readings; common practice, no source), a dent alone costs nothing (NFHS BB 1-3-5)
        Assert.Contains("batter: out", Cost(c, "in the box"));
        Assert.DoesNotContain("batter: out", Cost(a, "in the box"));

        var text = GearSheet.Text(list, looked);
        Assert.DoesNotMatch(new Regex(@"\bsafe\b", RegexOptions.IgnoreCase), text);
        Assert.Contains("Conforms to the code, or does not", text);
    }

    [Fact]
    public void The_penalty_after_a_hit_branches_by_code()
    {
        // NFHS SB 7-4-2 (2012 and after): batter out and ejected, head coach ejected, for a bat that is not approved
        var school = One("softball/18U+NFHS@2023-04-01", "bat 1\n  marks: performance factor 1.15\n");
        var after = string.Join("; ", school.Costs.Single(c => c.Found == "after the at-bat").Decisions);
        Assert.Contains("batter's stay: ejected", after);
        Assert.Contains("head coach: ejected", after);
        // editions to 2019 called the batter out for a damaged bat, from 2020 it is taken out without penalty (NFHS SB 1-5-1, 2-4-3, 7-4-2)
        string InTheBox(string day) => string.Join("; ", One($"softball/18U+NFHS@{day}", "bat 1\n  marks: body's own softball mark\n  bat condition is damaged\n").Costs.Single(c => c.Found == "in the box").Decisions);
        Assert.Contains("batter: out", InTheBox("2019-04-01"));
        Assert.Contains("batter: no penalty", InTheBox("2020-04-01"));
    }

    [Theory]
    // youth bat standard from 1 Jan 2018 (published): the older factor counts the day before and is an old mark that day
    [InlineData("baseball/12U@2017-12-31", "performance factor 1.15", true)]
    [InlineData("baseball/12U@2018-01-01", "performance factor 1.15", false)]
    [InlineData("baseball/12U@2018-01-01", "wood-like youth standard", true)]
    [InlineData("baseball/12U@2018-01-01", "wood-like youth standard, performance factor 1.15", true)]
    // NFHS BB 1-3-2d (2012)
    [InlineData("baseball/18U+NFHS@2012-04-01", "BBCOR .50", true)]
    [InlineData("baseball/18U+NFHS@2011-04-01", "BBCOR .50", false)]
    [InlineData("baseball/18U+NFHS@2026-04-01", "none", false)]
    // USSSA SB bat rule: 1.20
    [InlineData("softball/12U+USSSA", "performance factor 1.20", true)]
    [InlineData("softball/12U+USA", "performance factor 1.20", false)]
    public void Marks_count_by_code_and_day(string code, string marks, bool conforms) => Assert.Equal(conforms, One(code, $"bat 1\n  marks: {marks}\n").Conforms);

    [Theory]
    // NFHS BB 1-3-2: not more than 3 below the length, not more than 2 5/8 in across; a wood bat is not held to the drop
    [InlineData("baseball/18U+NFHS", "length is 33 in\n  weight is 30 oz", true)]
    [InlineData("baseball/18U+NFHS", "length is 33 in\n  weight is 29 oz", false)]
    [InlineData("baseball/18U+NFHS", "length is 33 in\n  weight is 29 oz\n  bat material is wood", true)]
    [InlineData("baseball/18U+NFHS", "thickness is 2 5/8 in", true)]
    [InlineData("baseball/18U+NFHS", "thickness is 2 3/4 in", false)]
    // softball: at most 34 in and 2 1/4 in across, grip 10 to 15 in (a fastpitch bat summary)
    [InlineData("softball/14U+USA", "length is 34 in\n  thickness is 2 1/4 in\n  grip is 15 in", true)]
    [InlineData("softball/14U+USA", "length is 35 in", false)]
    [InlineData("softball/14U+USA", "grip is 9 in", false)]
    public void Measures_are_held_against_the_code(string code, string measures, bool conforms) =>
        Assert.Equal(conforms, One(code, $"bat 1\n  marks: {BatMarks.Asked(Shelf.Code(Shelf.Codes, code))}\n  {measures}\n").Conforms);

    [Theory]
    // USA SB 3-5E (2020): no mirror-like finish; NFHS SB 3-2-12 (2023): jewelry allowed; NFHS SB 1-4-1: colours counted to 2022, free from 2023
    [InlineData("softball/14U+USA@2019-06-01", "helmet 1\n  helmet itself is mirror finish", true)]
    [InlineData("softball/14U+USA@2020-06-01", "helmet 1\n  helmet itself is mirror finish", false)]
    [InlineData("softball/18U+NFHS@2022-04-01", "jewelry 1\n  worn is jewelry", false)]
    [InlineData("softball/18U+NFHS@2023-04-01", "jewelry 1\n  worn is jewelry", true)]
    [InlineData("softball/18U+NFHS@2022-04-01", "glove 1\n  glove is several colours on the pitcher", false)]
    [InlineData("softball/18U+NFHS@2023-04-01", "glove 1\n  glove is several colours on the pitcher", true)]
    // NFHS SB 3-2-7 (2017): sleeves of an odd colour; a padded cast with permission by NFHS SB 3-2 (from memory), without it not
    [InlineData("softball/18U+NFHS@2016-04-01", "sleeve 1\n  seen is odd-coloured undershirt", true)]
    [InlineData("softball/18U+NFHS@2017-04-01", "sleeve 1\n  seen is odd-coloured undershirt", false)]
    [InlineData("softball/18U+NFHS@2023-04-01", "cast 1\n  worn is padded cast\n  medical permission is in hand", true)]
    [InlineData("softball/18U+NFHS@2023-04-01", "cast 1\n  worn is padded cast", false)]
    // USA SB 3-3A (2024): 11 7/8 to 12 1/4 in round, 6 1/2 to 7 oz
    [InlineData("softball/14U+USA@2024-06-01", "ball 1\n  size found is 12 1/4 in\n  weight found is 6 3/4 oz", true)]
    [InlineData("softball/14U+USA@2024-06-01", "ball 1\n  size found is 11 in", false)]
    [InlineData("softball/14U+USA@2024-06-01", "protective gear 1\n  mask is without throat guard", false)]
    public void Other_gear_by_code_and_day(string code, string piece, bool conforms) => Assert.Equal(conforms, One(code, piece + "\n").Conforms);

    [Fact]
    public void What_is_worn_is_put_right_and_not_logged_as_taken_away()
    {
        var ring = One("SB 12U", "jewelry 7\n  worn is jewelry (an earring)\n");
        Assert.Null(ring.Removal);
        Assert.Contains("Have it taken off.", ring.Do);
    }

    [Fact]
    public void Every_fault_of_a_list_is_told_at_once()
    {
        var (_, _, faults) = Read("code: SB 12U\nhat 3\n  glov is torn\nbat A\n  marks: BBCORE\n  bat condition is dent\nbat K\n  length is 40 in\nglove 2\n  glove is too big\n  torn\nglove 2\n");
        Assert.Equal(
        [
            "a.gear, line 2: cannot read 'hat 3'. Did you mean 'bat'? A line at the beginning is Gear:, code:, found:, or a piece: bat, helmet, ball, glove, protective gear, sleeve, uniform, band, jewelry or cast, with its name",
            "a.gear, line 4: bat A: 'BBCORE' is no mark; it may be body's own softball mark, performance factor 1.20, BBCOR .50, wood-like youth standard, performance factor 1.15 or none",
            "a.gear, line 6: 'bat condition' has no value 'dent'; it may be sound, damaged, altered, painted, written on the barrel, warmed or something fixed to it",
            "a.gear, line 7: nobody wrote down which marks bat K carries; add 'marks:' and what can be read, or 'marks: none'",
            "a.gear, line 10: 'glove' has no value 'too big'; it may be as required, too large, panel in the colour of the ball, panel in the colour of the ball on another fielder, mitt away from catcher or first base, white or grey on the pitcher, white or grey on another fielder, several colours on the pitcher, several colours on another fielder or torn",
            "a.gear, line 11: cannot read 'torn'; a piece stands at the line's beginning ('bat A'), what was found on it two spaces in ('bat condition is damaged (a dent you can feel)', 'marks: BBCOR .50', 'length is 30 in')",
            "a.gear, line 12: 'glove 2' stands here twice; give each piece its own name",
        ], faults);
        Assert.Contains("there is no division", Assert.Single(Read("code: softball/11X\nhelmet 1\n").Faults));
        Assert.Contains("no code is named", Assert.Single(Read("helmet 1\n").Faults));
        Assert.Contains("no gear is listed", Assert.Single(Read("code: SB 12U\n").Faults));
    }

    [Fact]
    public void The_word_safe_stands_nowhere_in_the_room()
    {
        foreach (var file in Shelf.Files(Folder.Of("src", "District", "Gear"), "*.cs").Append(Folder.Of("src", "Cli", "Verbs", "GearVerb.cs")))
            Assert.DoesNotMatch(new Regex(@"\bsafe\b", RegexOptions.IgnoreCase), File.ReadAllText(file));
    }
}
