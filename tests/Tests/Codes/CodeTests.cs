namespace Umpirage.Tests.Codes;

/// <summary>The project's own codes: proven whole, and read as their books print them.</summary>
public class CodeTests
{
    [Fact]
    public void Both_codes_have_no_findings_in_any_division_book_or_year() => Assert.Empty(Checker.Check(Shelf.Codes));

    [Fact]
    public void The_checker_sees_every_game_division_and_body()
    {
        var codes = Checker.Codes(Shelf.Codes, Shelf.Codes.Sheet("double first base")!).ToList();
        foreach (var division in Shelf.Roster.Divisions)
            foreach (var body in Shelf.Roster.Bodies)
                Assert.Contains(codes, c => c.Game == body.Game && c.Division == division && c.Body == body);
    }

    [Fact]
    public void Every_name_that_leagues_play_under_leads_to_a_code()
    {
        Assert.NotEmpty(Shelf.Roster.PlayedAs);
        foreach (var name in Shelf.Roster.PlayedAs.Keys)
        {
            var faults = new List<string>();
            Assert.True(Casebook.Code(Shelf.Codes, name, Shelf.Today, faults.Add) is not null, $"{name}: {string.Join("; ", faults)}");
        }
    }

    [Theory]
    [InlineData("league", true)]
    [InlineData("League", true)]
    [InlineData("-1", false)]
    [InlineData("2", false)]
    [InlineData("district, league", false)]
    [InlineData("region", false)]
    public void A_layer_is_of_one_kind_that_has_a_name(string kind, bool read)
    {
        var findings = new List<Finding>();
        LayerReader.Read("b.layer", $"Layer: Hilltop\nkind: {kind}\ntitle: Hilltop options\n", Shelf.Roster, findings);
        Assert.Equal(read ? [] : [2], findings.Select(f => f.Line));
    }

    /// <summary>A book of one game proves nothing of the other: under its code such a source is one by analogy, whatever its own standing.</summary>
    [Theory, InlineData("softball/12U", "OBR|BB", "SB|FP"), InlineData("baseball/12U", "SB|FP", "OBR|BB")]
    public void A_source_of_the_other_game_is_one_by_analogy(string address, string others, string own)
    {
        static bool Names(string source, string words) => System.Text.RegularExpressions.Regex.IsMatch(source, $@"\b({words})\b");
        var code = Casebook.Code(Shelf.Codes, address, Shelf.Today, Assert.Fail)!;
        var cites = Shelf.Codes.Sheets.Where(s => s.Speaks(code.Game)).SelectMany(s => s.Rules.SelectMany(r => r.Exceptions.Prepend(r))).Select(code.Cite).ToList();
        var (other, both) = (cites.Where(c => Names(c.Source, others) && !Names(c.Source, own)).ToList(), cites.Where(c => Names(c.Source, others) && Names(c.Source, own)).ToList());
        Assert.NotEmpty(other);
        Assert.All(other, c => Assert.Equal((Standing.CommonPractice, true), (c.Standing, c.Source.EndsWith(", by analogy", StringComparison.Ordinal))));
        Assert.All(both, c => Assert.DoesNotContain("by analogy", c.Source));
        Assert.All(cites.Where(c => Names(c.Source, own)), c => Assert.DoesNotContain("by analogy", c.Source));
    }
}
