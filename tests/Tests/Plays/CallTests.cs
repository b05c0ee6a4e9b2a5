using Umpirage.Rules.Calls;
using Umpirage.Rules.Games;

namespace Umpirage.Tests.Plays;

/// <summary>Rulings carried out on a game: expected states are worked out by hand from the published rulings named beside them.</summary>
public class CallTests
{
    private static IReadOnlyList<Ending> Endings(string path)
    {
        var findings = new List<Finding>();
        var play = PlayReader.Read(path, File.ReadAllText(Folder.Of("casebook", path)), findings);
        var ruling = Casebook.Rule(Shelf.Codes, play, Shelf.Today, findings)!;
        var endings = OnTheField.Of(play, ruling, findings);
        Assert.Empty(findings);
        return endings;
    }

    [Fact]
    public void An_illegal_pitch_that_was_strike_three_leaves_the_offence_two_outcomes()
    {
        // ASA and NCAA rule 6 effect, 2001: take the play (one out, runner on third) or the penalty (count 2-2, runner awarded second)
        var endings = Endings("illegal-pitch-penalty/SB-136.play");
        var play = endings.Single(e => e.Choice == "takes the play");
        Assert.Equal(("offence", 1, "#4", ""), (play.Side, play.After!.Outs, play.After.Third, play.After.Second));
        var penalty = endings.Single(e => e.Choice == "takes the penalty");
        Assert.Equal((0, "#4", "2-2"), (penalty.After!.Outs, penalty.After.Second, penalty.After.Count.ToString()));
    }

    [Fact]
    public void Out_of_order_and_appealed_in_time_cancels_the_hit_and_keeps_the_steal()
    {
        // number 4 bats for number 3 and doubles; appeal before the next pitch: 3 is out, the runner stays on the second she stole, 4 bats again
        var ending = Endings("batting-out-of-order/own-f10.play").Single();
        Assert.Equal((2, "#2", "#4", 0), (ending.After!.Outs, ending.After.Second, ending.After.Batter, ending.After.Visitors.Runs));
    }

    [Theory]
    [InlineData("bottom 3, 1 out, 2-1, first #7, third #12, home 2", "bottom 3, 1 out, first and third, 2-1, visitors 0 home 2")]
    [InlineData("top 1, bases empty", "top 1, 0 out, bases empty, 0-0, visitors 0 home 0")]
    public void A_standing_is_read_as_written(string text, string words)
    {
        var findings = new List<Finding>();
        var game = Scene.Read("a.play", [(text, 1)], findings);
        Assert.Empty(findings);
        Assert.Equal(words, game.InWords);
        Assert.True(game.Proves);
    }

    [Fact]
    public void A_standing_that_cannot_be_read_says_what_may_stand_there()
    {
        var findings = new List<Finding>();
        Scene.Read("a.play", [("bottom x, 4 outs, first 7", 3)], findings);
        Assert.Equal(3, findings.Count);
    }

    [Fact]
    public void A_ruling_that_does_not_fit_the_game_says_why()
    {
        var reasons = new List<string>();
        Assert.Null(Scorekeeper.Apply(Game.New, new Played("#1", true, [new(Place.Plate, Place.First), new(Place.First, Place.Second)], "made up", 1), reasons));
        Assert.Equal(["nobody is on first"], reasons);
    }
}
