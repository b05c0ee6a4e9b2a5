using Umpirage.District.Pitchers;

namespace Umpirage.Tests.Pitchers;

/// <summary>Two questions from the floor, as the district's own options and the published youth rules answer them.</summary>
public class StoryTests
{
    private static readonly DateOnly Thursday = new(2026, 5, 14), Saturday = new(2026, 5, 16);

    /// <summary>Seven innings on Thursday, one of them by a single pitch: rest on Friday. Five on Saturday morning. Values: one community youth code, 2022, from memory.</summary>
    [Fact]
    public void She_threw_on_Thursday_and_may_pitch()
    {
        var code = Arms.Code("SB 12U");
        var ledger = Arms.Ledger("softball", "12U", Arms.Line(Thursday, 84, 83, 7, outs: 19, game: "thu"), Arms.Line(Saturday, 61, 58, 5, outs: 15, game: "nine"));
        var occasion = new Occasion(Saturday, new("now", "softball", "12U", 14 * 60));
        var answer = Eligible.Of(ledger, code, code, occasion);
        Assert.Equal(MayPitch.Yes, answer.Answer);
        Assert.False(answer.Depends);
        Assert.Equal("D1a", Assert.Single(answer.Rest).Rule);
        var room = answer.Rooms.Single(r => r.Unit == Unit.Innings);
        Assert.Equal((5, 12, 7), (room.Used, room.Limit, room.Left));
        // after two more, seven in all, Sunday is a day of rest
        var cost = Assert.Single(Eligible.Costs(ledger, code, code, occasion));
        Assert.Equal((Unit.Innings, 2, 7, 1, new DateOnly(2026, 5, 18)), (cost.Unit, cost.More, cost.InAll, cost.RestDays, cost.NextDay));
        Assert.Null(answer.NoCatching);
    }

    /// <summary>The trap: 19 outs by thirds are six and a third innings, and would have asked for no rest; the single pitch makes it seven.</summary>
    [Fact]
    public void On_Friday_she_may_not()
    {
        var friday = Arms.Ask("SB 12U", new(2026, 5, 15), Arms.Line(Thursday, 84, 83, 7, outs: 19));
        Assert.Equal(MayPitch.No, friday.Answer);
        Assert.Equal(("innings pitched", "D2b"), (friday.Bars[0].Sheet, friday.Bars[0].Rule));
        Assert.Equal(Saturday, friday.NextDay);
        Assert.Equal(MayPitch.Yes, Arms.Ask("SB 12U", new(2026, 5, 15), Arms.Line(Thursday, 84, 83, 6, outs: 18)).Answer);
    }

    /// <summary>At 83 when the batter stepped in, now 87, the limit is 85: finish this batter, then off the mound, no catching, back on Thursday. Youth baseball leagues' published pitching rules.</summary>
    [Fact]
    public void He_is_at_the_limit_and_finishes_the_batter()
    {
        var code = Arms.Code("BB 11-12");
        var game = new PitchedGame("now", "baseball", "12U", 600);
        var ledger = Ledger.Of("7", [Arms.Line(Saturday, 87, 83, 5, game: "now")], _ => game);
        var answer = Eligible.Of(ledger, code, code, new(Saturday, game, BatterUnderWay: true));
        Assert.Equal(MayPitch.UntilThisBatterIsFinished, answer.Answer);
        Assert.Equal(("pitcher limits", "T4b"), (answer.Bars[0].Sheet, answer.Bars[0].Rule));
        Assert.Equal("A1a", answer.NoCatching!.Rule);
        Assert.Equal(new DateOnly(2026, 5, 21), answer.AfterToday);
        // before the next batter
        Assert.Equal(MayPitch.No, Eligible.Of(ledger, code, code, new(Saturday, game)).Answer);
        // a batter who came up at 85 was none to finish
        var late = Ledger.Of("7", [Arms.Line(Saturday, 87, 85, 5, game: "now")], _ => game);
        Assert.Equal(MayPitch.No, Eligible.Of(late, code, code, new(Saturday, game, BatterUnderWay: true)).Answer);
    }

    /// <summary>The two worked examples in common use, ages 11 and 12: 48 thrown before the last batter, two days; 50 before, three days.</summary>
    [Theory]
    [InlineData(48, 2), InlineData(50, 3)]
    public void The_first_pitch_to_the_last_batter_decides(int before, int days) =>
        Assert.Equal(Saturday.AddDays(days + 1), Arms.Ask("BB 11-12", Saturday, Arms.Line(Saturday, 53, before, 4)).AfterToday);
}
