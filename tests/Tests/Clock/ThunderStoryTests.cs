using Umpirage.District.Clock;

namespace Umpirage.Tests.Clock;

/// <summary>
/// The evening of demo/thunder.clock, reckoned by hand: first pitch 17:32, thunder and stop 18:40, last thunder 18:52, 30 minutes of wait (NFHS
/// sports medicine guideline, rev. Oct 2014 | published), 105 minutes to the last new inning (the demonstration district's own).
/// </summary>
public class ThunderStoryTests
{
    /// <summary>The same evening where the league lets the clock run through weather.</summary>
    private static ClockReading Running(string time) =>
        Evening.At(Evening.Thunder.Replace("BB-12", Evening.Hamlet), time, Evening.With(("time limit", "weather delay stops the clock", "no")));

    [Fact]
    public void Nobody_is_back_before_half_an_hour_after_the_last_thunder()
    {
        Assert.Equal("19:10", Evening.At(Evening.Thunder, "18:41").Storm.EarliestRestart!.Clock);
        Assert.Equal("19:16", Evening.At(Evening.Thunder, "18:46").Storm.EarliestRestart!.Clock);
        var reading = Evening.At(Evening.Thunder, "18:52");
        Assert.Equal(("19:22", "18:52", true), (reading.Storm.EarliestRestart!.Clock, reading.Storm.LastSign!.Clock, reading.Storm.MustBeStopped));
        Assert.True(Evening.At(Evening.Thunder, "19:21").Storm.MustBeStopped);
        Assert.True(Evening.At(Evening.Thunder, "19:21").Storm.Ruling!.Is("play", "stays stopped"));
        var after = Evening.At(Evening.Thunder, "19:22");
        Assert.False(after.Storm.MustBeStopped);
        Assert.True(after.Storm.Ruling!.MayBe("play", "may start again"));
        Assert.True(after.Storm.Ruling.MayBe("play", "stays stopped")); // nobody has said that the field is fit
    }

    [Fact]
    public void Everybody_is_told_where_to_go_and_where_not()
    {
        var told = string.Join(" ", Evening.At(Evening.Thunder, "18:40").DoNow);
        foreach (var word in new[] { "the crew too", "enclosed building", "hard-topped vehicle", "Dugouts", "no shelter", "before 19:10" }) Assert.Contains(word, told);
        Assert.Contains(Cautions.Storm, Evening.At(Evening.Thunder, "18:40").Cautions);
    }

    [Theory]
    [InlineData("18:52")]
    [InlineData("19:10")]
    [InlineData("19:22")]
    public void The_stopped_clock_leaves_thirty_seven_minutes(string time)
    {
        var limit = Evening.At(Evening.Thunder, time).Limit;
        Assert.Equal((68, 68, 37, "19:59"), (limit.Played, limit.OnClock, limit.Left, limit.LastNewInning!.Clock));
        Assert.Equal("if play starts again at 19:22", limit.Assuming);
        Assert.False(limit.OnlyThisInningAtRestart);
    }

    [Fact]
    public void Where_the_clock_runs_on_only_this_inning_may_be_finished()
    {
        var waiting = Running("18:52");
        Assert.Equal(("19:17", 25), (waiting.Limit.LastNewInning!.Clock, waiting.Limit.Left));
        Assert.True(waiting.Limit.OnlyThisInningAtRestart);
        Assert.Contains(waiting.DoNow, d => d.Contains("only the inning under way may be finished"));
        var again = Running("19:22");
        Assert.Equal((68, 110, -5, "19:17"), (again.Limit.Played, again.Limit.OnClock, again.Limit.Left, again.Limit.LastNewInning!.Clock));
        Assert.True(again.Limit.Ruling!.Is("game", "goes on")); // the home side is behind and has its turn
    }

    [Fact]
    public void At_the_restart_it_is_forty_three_minutes_to_the_dark()
    {
        Assert.Equal(("20:05", 43), (Evening.At(Evening.Thunder, "19:22").Dark.At!.Clock, Evening.At(Evening.Thunder, "19:22").Dark.Minutes));
        Assert.Equal((73, 43), (Evening.At(Evening.Thunder, "18:52").Dark.Minutes, Evening.At(Evening.Thunder, "18:52").Dark.MinutesAtRestart));
    }

    [Fact]
    public void In_the_third_inning_the_game_is_not_official_and_is_suspended()
    {
        var reading = Evening.At(Evening.Thunder, "18:52");
        Assert.Equal(("bottom 3", "4-2", PlayState.Stopped), (reading.Half, reading.Score, reading.State));
        Assert.Equal(["no"], reading.IfStoppedNow.Official);
        Assert.Equal(["suspended"], reading.IfStoppedNow.Game);
        Assert.Contains("not complete", reading.IfStoppedNow.Score.Single());
        var note = string.Join(" ", reading.ToNote);
        foreach (var word in new[] { "count", "outs", "runners", "orders", "pitch counts" }) Assert.Contains(word, note);
    }

    [Fact]
    public void After_the_restart_the_clock_goes_on_and_ends_at_its_minute()
    {
        var text = Evening.Thunder + "19:22 play resumed\n19:40 inning 3 bottom over, 4-2\n19:58 inning 4 top over\n";
        var reading = Evening.At(text, "19:59");
        Assert.Equal((PlayState.Playing, 105, 0, "19:59"), (reading.State, reading.Limit.OnClock, reading.Limit.Left, reading.Limit.LastNewInning!.Clock));
        Assert.Null(reading.Limit.Assuming);
        Assert.Empty(reading.Alerts);
        // at 19:59 a last out still begins the fifth; a minute later it does not
        Assert.True(Evening.At(text + "19:59 inning 4 bottom over\n", "20:00").Limit.Ruling!.Is("game", "goes on"));
        Assert.True(Evening.At(text + "20:00 inning 4 bottom over\n", "20:01").Limit.Ruling!.Is("game", "over"));
    }

    [Fact]
    public void Whoever_is_in_charge_may_only_add()
    {
        Assert.Equal("19:40", Evening.At(Evening.Thunder + "19:00 not before 19:40\n").Storm.EarliestRestart!.Clock);
        Assert.Equal("19:22", Evening.At(Evening.Thunder + "19:00 not before 19:10\n").Storm.EarliestRestart!.Clock);
        var reading = Evening.At(Evening.Thunder + "19:00 not before 19:40\n", "19:30");
        Assert.True(reading.Storm.MustBeStopped);
        Assert.True(reading.Storm.Ruling!.Is("play", "stays stopped"));
    }

    [Fact]
    public void Going_back_too_soon_and_not_stopping_are_told_aloud()
    {
        var soon = Evening.At(Evening.Thunder + "19:10 play resumed\n");
        Assert.Contains("nobody may be back before 19:22", soon.Alerts.Single());
        Assert.Equal("Stop play at once.", soon.DoNow[0]);
        Assert.True(soon.Storm.MustBeStopped);
        var late = Evening.At(Evening.Head() + "17:32 first pitch\n18:38 thunder\n18:40 play stopped: storm\n", "18:39");
        Assert.Contains("play was not stopped", late.Alerts.Single());
        Assert.Equal("Stop play at once.", late.DoNow[0]);
        Assert.True(late.Storm.Ruling!.Is("play", "stops at once"));
    }

    [Fact]
    public void Thunder_before_the_first_pitch_holds_the_start()
    {
        var reading = Evening.At(Evening.Head() + "17:20 thunder\n", "17:40");
        Assert.Equal((PlayState.NotStarted, "17:50", "Do not start."), (reading.State, reading.Storm.EarliestRestart!.Clock, reading.DoNow[0]));
    }
}
