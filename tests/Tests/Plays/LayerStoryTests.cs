namespace Umpirage.Tests.Plays;

/// <summary>
/// Whose rules govern an interleague game. Host Tarnholt (1:40, run limit 4, courtesy runner for the catcher only), visitor Wrenfall (1:50,
/// limit 5, pitcher or catcher), district agreement: the district's code, except that the time limit is the host's. All invented.
/// </summary>
public class LayerStoryTests
{
    private const string Interleague = "softball/12U+interleague(Tarnholt,Wrenfall)@2026-05-16";

    private static Provenance Value(string address, string sheet, string parameter)
    {
        var code = Casebook.Code(Shelf.Codes, address, Shelf.Today, f => Assert.Fail(f))!;
        return code.Value(Shelf.Codes.Sheet(sheet)!.Parameters.Single(p => p.Name == parameter))!;
    }

    [Fact]
    public void The_time_limit_is_the_hosts()
    {
        var value = Value(Interleague, "time limit", "no new inning after");
        Assert.Equal((100, "min"), ((int)value.Quantity!.Value, value.Quantity.Unit));
        Assert.StartsWith("Tarnholt", value.Layer);
    }

    [Fact]
    public void With_the_other_host_it_is_the_other_limit() =>
        Assert.Equal(110, Value("softball/12U+interleague(Wrenfall,Tarnholt)@2026-05-16", "time limit", "no new inning after").Quantity!.Value);

    [Fact]
    public void There_is_no_run_limit() => Assert.True(Value(Interleague, "run limit in an inning", "run limit").Quantity!.IsNone);

    [Fact]
    public void Courtesy_runners_follow_the_districts_code() => Assert.Equal("pitcher or catcher", Value(Interleague, "courtesy runner", "position that may have one").Value);

    [Fact]
    public void Inside_one_league_its_own_options_hold()
    {
        Assert.Equal(4, Value("softball/12U+Tarnholt@2026-05-16", "run limit in an inning", "run limit").Quantity!.Value);
        Assert.Equal("catcher only", Value("softball/12U+Tarnholt@2026-05-16", "courtesy runner", "position that may have one").Value);
        Assert.Equal(5, Value("softball/12U+Wrenfall@2026-05-16", "run limit in an inning", "run limit").Quantity!.Value);
    }

    [Fact]
    public void Before_the_season_of_the_options_the_district_is_silent_and_the_book_speaks()
    {
        var value = Value("softball/12U+Tarnholt@2025-05-16", "time limit", "no new inning after");
        Assert.True(value.Quantity!.IsNone);
        Assert.Equal("softball at large", value.Layer);
    }

    [Fact]
    public void The_demo_district_plays_softball_under_the_community_code() =>
        Assert.Equal("community", Casebook.Code(Shelf.Codes, "SB 12U", Shelf.Today, f => Assert.Fail(f))!.Body!.Name);
}
