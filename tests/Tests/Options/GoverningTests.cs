using Umpirage.District.Options;
using Umpirage.District.People;
using Umpirage.Rules.Plays;

namespace Umpirage.Tests.Options;

/// <summary>The chain of the demonstration district: its leagues' options and their agreement stand in codes/layers.</summary>
public class GoverningTests
{
    private static readonly Division Softball = new("SB 12U", "softball/12U+Oslemoor", 2, false), Baseball = new("BB 11-12", "baseball/12U+Oslemoor-baseball", 2, false);
    private static readonly League Tarnholt = new("tarnholt", "Tarnholt"), Wrenfall = new("wrenfall", "Wrenfall"), Pellwick = new("pellwick", "Pellwick");

    [Fact]
    public void A_league_at_home_plays_its_own_options() => Assert.Equal("softball/12U+Tarnholt", Governing.Code(Shelf.Codes, Softball, Tarnholt, Tarnholt));

    [Fact]
    public void A_league_without_options_plays_the_districts() => Assert.Equal(Softball.Code, Governing.Code(Shelf.Codes, Softball, Pellwick, Pellwick));

    [Fact]
    public void The_options_of_one_game_are_not_carried_into_the_other() => Assert.Equal(Baseball.Code, Governing.Code(Shelf.Codes, Baseball, Tarnholt, Tarnholt));

    /// <summary>The host's time limit, and otherwise the district's code: no run limit, the district's courtesy runner.</summary>
    [Theory]
    [InlineData(true, "100 min"), InlineData(false, "110 min")]
    public void Between_two_leagues_the_agreement_holds(bool tarnholtHosts, string limit)
    {
        var (home, visitor) = tarnholtHosts ? (Tarnholt, Wrenfall) : (Wrenfall, Tarnholt);
        var code = Casebook.Code(Shelf.Codes, Governing.Code(Shelf.Codes, Softball, home, visitor), new(2026, 5, 16), f => Assert.Fail(f))!;
        string Value(string sheet, string parameter) => code.Value(Shelf.Codes.Sheet(sheet)!.Parameters.Single(p => p.Name == parameter))!.Value;
        Assert.Equal(limit, Value("time limit", "no new inning after"));
        Assert.Equal("none", Value("run limit in an inning", "run limit"));
    }

    [Fact]
    public void A_visitor_without_options_is_no_party()
    {
        var address = Governing.Code(Shelf.Codes, Softball, Tarnholt, Pellwick);
        var code = Casebook.Code(Shelf.Codes, address, new(2026, 5, 16), f => Assert.Fail(f))!;
        Assert.Equal("100 min", code.Value(Shelf.Codes.Sheet("time limit")!.Parameters.Single(p => p.Name == "no new inning after"))!.Value);
    }
}
