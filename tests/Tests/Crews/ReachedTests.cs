using Umpirage.District.Crews;

namespace Umpirage.Tests.Crews;

/// <summary>Names and minutes as somebody types them beside the field.</summary>
public class ReachedTests
{
    private static readonly CrewPlan Plan = Town.Plan(Town.With([]) with
    {
        People = [.. Town.Empty.People, Town.Adult("anton")], Officials = [.. Town.Empty.Officials, new("anton", Umpirage.District.People.Grade.Base, 1, 2020)],
    });

    [Theory]
    [InlineData("Ben 14", "ben=14")]
    [InlineData("ben 14 min, Cora L. 5\nDan", "ben=14 cora=5 dan=")]
    [InlineData("Ann Lark 0; anton 7 min.", "ann=0 anton=7")]
    [InlineData(" , ,", "")]
    public void A_line_of_names_and_minutes_is_read(string typed, string expected)
    {
        var faults = new List<string>();
        Assert.Equal(expected, string.Join(' ', Reached.Read(Plan, typed, faults).Select(r => $"{r.Key}={r.Value}")));
        Assert.Empty(faults);
    }

    [Fact]
    public void Every_fault_is_told_at_once_and_what_is_right_is_kept()
    {
        var faults = new List<string>();
        var read = Reached.Read(Plan, "An 9, Zed 4, Ben 9x, Cora 601, Eve 3, Dan 12", faults);
        Assert.Equal("dan", Assert.Single(read).Key);
        Assert.Equal("'An' fits 2 umpires, Ann Lark and Anton Lark; write more of the name, or the key", faults[0]);
        Assert.StartsWith("there is no umpire 'Zed'; it may be", faults[1]);
        Assert.Equal("'Ben 9x': found '9x'; allowed is whole minutes from 0 to 600", faults[2]);
        Assert.Equal("'Cora 601': found '601'; allowed is whole minutes from 0 to 600", faults[3]);
        // Eve is on record and no umpire
        Assert.StartsWith("there is no umpire 'Eve'", faults[4]);
        Assert.Equal(5, faults.Count);
    }
}
