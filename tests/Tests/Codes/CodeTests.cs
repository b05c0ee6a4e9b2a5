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
}
