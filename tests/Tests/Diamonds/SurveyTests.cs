using Umpirage.District.Diamonds;

namespace Umpirage.Tests.Diamonds;

/// <summary>Typed tapes: read with every fault at once, refused when no field can have them, and held against divisions.</summary>
public class SurveyTests
{
    private static readonly IReadOnlyList<Layout> Layouts = [LayoutTests.Of("softball/12U"), LayoutTests.Of("softball/14U"), LayoutTests.Of("baseball/18U")];

    private static (Surveyor? Found, List<string> Faults) Read(string text)
    {
        var findings = new List<Finding>();
        var survey = SurveyFile.Read("a.survey", text, Surveyor.Names(Layouts), findings);
        var found = survey is null ? null : Surveyor.Of(survey, Layouts, findings);
        return (found, [.. findings.Select(f => f.ToString())]);
    }

    /// <summary>What a perfect tape reads on a 60 ft square with the plate at 40 ft: worked out by hand.</summary>
    private const string Perfect = "home-first 60 ft\nhome-third 60 ft\nfirst-second 60 ft\nsecond-third 60 ft\nhome-second 84 ft 10 1/4 in\nfirst-third 84 ft 10 1/4 in\nhome-plate 40 ft\nfirst-plate 42 ft 6 in\nthird-plate 42 ft 6 in\n";

    [Fact]
    public void A_good_diamond_serves_its_division_and_the_others_are_told_why_not()
    {
        var (found, faults) = Read(Perfect);
        Assert.Empty(faults);
        Assert.Empty(found!.Suspects);
        Assert.Equal([Stands.AsAsked, Stands.Off, Stands.Off], found.Servings.Select(s => s.Stands));
        // 43 ft for the older division: the plate alone moves, three feet toward second
        var move = Assert.Single(found.Servings[1].Moves);
        Assert.Equal("plate", move.Mark);
        Assert.Equal(3, move.Feet, 1);
        Assert.Equal("straight toward second", move.Toward);
    }

    [Fact]
    public void The_smallest_move_mends_a_second_base_that_lies_too_far()
    {
        // second pushed 6 in straight out along the middle line: first-second = sqrt(42.4264^2 + (42.4264 + 0.5)^2) = 60.3546
        var (found, _) = Read(Perfect.Replace("first-second 60 ft", "first-second 60.355 ft").Replace("second-third 60 ft", "second-third 60.355 ft").Replace("home-second 84 ft 10 1/4 in", "home-second 85.353 ft"));
        Assert.Empty(found!.Suspects);
        var move = Assert.Single(found.Servings[0].Moves);
        Assert.Equal("second", move.Mark);
        Assert.Equal(0.5, move.Feet, 2);
        Assert.StartsWith("straight toward", move.Toward);
        Assert.Equal(60, move.Then.First(t => t.To == "first").Reading, 2);
    }

    [Fact]
    public void A_wrong_reading_is_named_and_does_not_move_the_field()
    {
        var (found, _) = Read(Perfect.Replace("home-second 84 ft 10 1/4 in", "home-second 85 ft 10 1/4 in"));
        Assert.Equal("home to second", Assert.Single(found!.Suspects).Reading.Between);
        Assert.Equal(Stands.AsAsked, found.Servings[0].Stands);
    }

    [Fact]
    public void Every_fault_of_a_file_is_told_at_once()
    {
        var (found, faults) = Read("home-fist 60 ft\nhome-mound 40 ft\nhome-third -60 ft\nhome-second 84 yd\nfirst-third 84.85 km\nhome-home 3 ft\nhome-first 7000 in\nsomething else\nhome-plate 40 ft 14 in\ntape: 0 in\n");
        Assert.Null(found);
        Assert.Equal(
        [
            "a.survey, line 1: a field has no point 'fist'; did you mean 'first'?",
            "a.survey, line 2: a field has no point 'mound'; it may be home, first, second, third, plate or the full name of a mark",
            "a.survey, line 3: '-60 ft' is less than nothing; a tape reads more than 0",
            "a.survey, line 4: 'yd' is no unit of a tape; it may be ft and in, or m",
            "a.survey, line 5: 'km' is no unit of a tape; it may be ft and in, or m",
            "a.survey, line 6: a tape from home to home reads nothing; name two points",
            "a.survey, line 7: '7000 in' is 583 ft 4 in; no tape is longer than 500 ft: is the unit right?",
            "a.survey, line 8: cannot read 'something else'; write 'home-second 127 ft 3 1/2 in', or 'Survey:', 'codes:' or 'tape:'",
            "a.survey, line 9: '40 ft 14 in' is no length; write '127 ft 3 1/2 in', '127.29 ft' or '38.80 m'",
            "a.survey, line 10: '0 in' is nothing; a tape reads more than 0",
        ], faults);
    }

    [Theory]
    // the longest side longer than both others
    [InlineData("home-first 60 ft\nfirst-second 60 ft\nhome-second 130 ft\n", "cannot close")]
    // first and second exchanged
    [InlineData("home-second 60 ft\nhome-third 60 ft\nfirst-second 60 ft\nfirst-third 60 ft\nhome-first 84 ft 10 1/4 in\nsecond-third 84 ft 10 1/4 in\n", "look exchanged")]
    [InlineData("home-first 60 ft\nhome-second 84 ft 10 in\nsecond-third 60 ft\n", "only one tape goes to third")]
    [InlineData("first-second 60 ft\nfirst-third 84 ft\nsecond-third 60 ft\n", "no tape begins at home")]
    [InlineData("home-first 60 ft\nhome-second 84 ft 10 in\nhome-third 60 ft\nhome-plate 40 ft\n", "do not hold")]
    // feet written for metres: 60 ft on one side, 18.3 ft on the next
    [InlineData("home-first 60 ft\nfirst-second 18.29 ft\nhome-second 25.86 ft\n", "cannot close")]
    // all six read in metres (18.288 and 25.863 m are 60 ft and 84 ft 10 1/4 in) and typed as feet
    [InlineData("home-first 18.288 ft\nhome-second 25.863 ft\nhome-third 18.288 ft\nfirst-second 18.288 ft\nsecond-third 18.288 ft\nfirst-third 25.863 ft\n", "read in metres and typed as feet")]
    [InlineData("home-first 60 m\nhome-second 84.853 m\nhome-third 60 m\nfirst-second 60 m\nsecond-third 60 m\nfirst-third 84.853 m\n", "read in feet and typed as metres")]
    public void No_field_is_made_of_tapes_that_cannot_be(string text, string reason)
    {
        var (found, faults) = Read(text);
        Assert.Null(found);
        Assert.Contains(faults, f => f.Contains(reason));
    }

    /// <summary>Marks of feet and inches, straight or typographic, are 42 ft 6 1/2 in; what is no length remains none.</summary>
    [Theory]
    [InlineData("42' 6 1/2\"")]
    [InlineData("42'6 1/2\"")]
    [InlineData("42\u2032 6 1/2\u2033")]
    [InlineData("42\u2019 6 1/2\u201d")]
    [InlineData("42 ft 6 1/2 in")]
    public void A_tape_is_read_by_its_marks(string typed) => Assert.Equal(42 + 6.5 / 12, Tape.Read(typed, out _)!.Value, 12);

    [Fact]
    public void A_code_that_is_none_is_told_with_the_line_and_the_other_faults()
    {
        var findings = new List<Finding>();
        Assert.Null(SurveyFile.Read("a.survey", "codes: SB 12U, SB 99U\nhome-first -1 ft\n", Surveyor.Names(Layouts), findings, c => c == "SB 99U" ? "no such code" : null));
        Assert.Equal(["a.survey, line 1: no such code", "a.survey, line 2: '-1 ft' is less than nothing; a tape reads more than 0"], findings.Select(f => f.ToString()));
    }

    [Fact]
    public void Metres_and_feet_may_stand_side_by_side()
    {
        var (found, faults) = Read(Perfect.Replace("home-first 60 ft", "home-first 18.288 m"));
        Assert.Empty(faults);
        Assert.Equal(Stands.AsAsked, found!.Servings[0].Stands);
    }

    [Fact]
    public void The_demonstration_survey_names_the_wrong_tape_and_the_move()
    {
        var findings = new List<Finding>();
        var survey = SurveyFile.Read("low-field.survey", File.ReadAllText(Folder.Of("demo", "low-field.survey")), Surveyor.Names(Layouts), findings)!;
        var found = Surveyor.Of(survey, Layouts, findings)!;
        Assert.Empty(findings);
        // the tape of third to plate was typed 6 in too long when the file was made, second was put 4 in too far
        Assert.Contains("third to plate", Assert.Single(found.Suspects).InWords);
        Assert.Equal("second", Assert.Single(found.Servings[0].Moves).Mark);
        Assert.DoesNotContain("safe", found.Text());
    }
}
