using Umpirage.District.Clock;

namespace Umpirage.Tests.Clock;

/// <summary>The parts of a game's clock that a code may set; times reckoned by hand.</summary>
public class GameClockTests
{
    private const string Plain = "17:32 first pitch\n17:50 inning 1 top over, 0-0\n18:10 inning 1 bottom over, 0-1\n";

    private static string Hamlet(string more = "") => Evening.Head(Evening.Hamlet, more: more);

    [Fact]
    public void The_clock_may_start_at_the_scheduled_time_or_with_the_plate_meeting()
    {
        var scheduled = Evening.With(("time limit", "clock starts at", "scheduled time"));
        Assert.Equal(("17:30", 40), Started(Evening.At(Hamlet("scheduled: 17:30") + Plain, null, scheduled)));
        var meeting = Evening.With(("time limit", "clock starts at", "end of the plate meeting"));
        Assert.Equal(("17:26", 44), Started(Evening.At(Hamlet() + "17:26 plate meeting over\n" + Plain, null, meeting)));
        Assert.Equal(("17:32", 38), Started(Evening.At(Evening.Head() + Plain)));

        static (string, int) Started(ClockReading r) => (r.Limit.Started!.Clock, r.Limit.OnClock);
    }

    [Fact]
    public void What_the_code_starts_from_must_be_told()
    {
        var findings = new List<Finding>();
        Assert.Null(Evening.Try(Hamlet() + Plain, null, Evening.With(("time limit", "clock starts at", "scheduled time")), findings));
        Assert.Contains("add 'scheduled: 17:30'", findings.Single().Message);
    }

    [Fact]
    public void An_inning_begins_with_the_last_out_or_with_its_first_pitch_as_the_code_says()
    {
        // 75 minutes from 17:32 are up at 18:47; the last out of the second is at 18:46, and the third is thrown at 18:48
        var text = Plain + "18:30 inning 2 top over, 1-1\n18:46 inning 2 bottom over, 1-2\n18:48 inning 3 begins\n";
        var lastOut = Evening.With(("time limit", "no new inning after", "75 min"));
        Assert.True(Evening.At(Hamlet() + text, "18:49", lastOut).Limit.Ruling!.Is("game", "goes on"));
        var pitch = Evening.With(("time limit", "no new inning after", "75 min"), ("time limit", "new inning begins", "at its first pitch"));
        Assert.True(Evening.At(Hamlet() + text, "18:49", pitch).Limit.Ruling!.Is("game", "over"));
    }

    [Fact]
    public void A_hard_stop_cuts_the_inning_and_goes_back_to_the_last_even_one()
    {
        var book = Evening.With(("time limit", "hard stop after", "60 min"));
        var reading = Evening.At(Hamlet() + Plain + "18:20 score 2-1\n", "18:32", book);
        Assert.Equal("18:32", reading.Limit.HardStop!.Clock);
        Assert.True(reading.Limit.Ruling!.Is("game", "stopped at once"));
        Assert.True(reading.Limit.Ruling.Is("score that counts", "last even inning"));
        Assert.Contains(reading.DoNow, d => d.StartsWith("The hard stop was at 18:32", StringComparison.Ordinal));
        Assert.True(Evening.At(Hamlet() + Plain, "18:31", book).Limit.Ruling!.Is("game", "goes on"));
    }

    [Fact]
    public void Only_weather_holds_the_clock()
    {
        var stop = "18:12 play stopped: {0}\n18:22 play resumed\n";
        Assert.Equal(38 + 12, Evening.At(Evening.Head() + Plain + string.Format(null, stop, "rain"), "18:32").Limit.OnClock);
        Assert.Equal(38 + 22, Evening.At(Evening.Head() + Plain + string.Format(null, stop, "injury"), "18:32").Limit.OnClock);
        Assert.Equal(38 + 12, Evening.At(Evening.Head() + Plain + string.Format(null, stop, "injury"), "18:32").Limit.Played);
    }

    [Fact]
    public void A_code_without_a_limit_says_so()
    {
        var reading = Evening.At(Evening.Head("baseball/12U") + Plain);
        Assert.Equal((null, null, null, null), (reading.Limit.NoNewInningAfter, reading.Limit.Left, reading.Limit.LastNewInning, reading.Limit.Ruling));
        Assert.Contains("no limit on new innings", ClockText.Of(reading));
    }

    [Fact]
    public void A_score_nobody_told_leaves_the_outcome_open()
    {
        var text = Evening.Head() + "17:32 first pitch\n" + string.Concat(Enumerable.Range(1, 4).Select(i => $"18:{i}0 inning {i} top over\n18:{i}5 inning {i} bottom over\n"));
        var reading = Evening.At(text);
        Assert.Null(reading.Score);
        Assert.Equal(["yes"], reading.IfStoppedNow.Official); // four innings are a short game at 12U (youth baseball leagues | common practice, no source)
        Assert.True(reading.IfStoppedNow.Game.Count > 1);
    }

    [Fact]
    public void The_last_inning_complete_is_the_end_of_the_game()
    {
        var text = Evening.Head("baseball/12U") + "17:32 first pitch\n18:59 inning 6 top over, 1-2\n";
        Assert.Contains("the game is over", string.Join(" ", Evening.At(text).DoNow));
    }

    [Fact]
    public void The_dark_is_the_earlier_of_the_sites_rule_and_sunset()
    {
        // sunset there on that day is 20:05:40 by the almanac's own tests; a site may say sooner, not later
        Assert.Equal("19:45", Evening.At(Evening.Head(more: "dark: 19:45") + Plain).Dark.At!.Clock);
        Assert.Equal("20:05", Evening.At(Evening.Head(more: "dark: 21:00") + Plain).Dark.At!.Clock);
        Assert.Equal("20:05", Evening.At(Evening.Head() + Plain).Dark.At!.Clock);
        Assert.Null(Evening.At(Evening.Head(more: "lit: yes") + Plain).Dark.At);
        Assert.Equal("22:30", Evening.At(Evening.Head(more: "lit: yes\ndark: 22:30") + Plain).Dark.At!.Clock);
        Assert.Contains(Evening.At(Evening.Head() + Plain, "20:06").DoNow, d => d.StartsWith("It is past 20:05", StringComparison.Ordinal));
    }

    [Fact]
    public void Heat_is_ruled_with_the_clock()
    {
        var reading = Evening.At(Evening.Head() + Plain + "18:05 heat 96 F 60 %\n18:09 globe 78 F 110 F 94 F\n");
        Assert.Equal(["danger", "too hot"], reading.Heat.Select(h => h.Band));
        Assert.Equal(2, reading.DoNow.Count(d => d.StartsWith("Stop for heat", StringComparison.Ordinal)));
        Assert.Contains(Cautions.Heat, reading.Cautions);
        Assert.Contains("0.1 below the danger band", string.Join(" ", Evening.At(Evening.Head() + Plain + "18:05 heat 94 F 50 %\n").DoNow));
    }

    [Fact]
    public void A_stop_for_good_ends_the_clock()
    {
        var reading = Evening.At(Evening.Thunder + "19:05 stopped for good: the storm stays\n", "21:00");
        Assert.Equal((PlayState.StoppedForGood, 68), (reading.State, reading.Limit.OnClock));
        Assert.Null(reading.Limit.LastNewInning);
        Assert.Contains("suspended, not complete", string.Join(" ", reading.DoNow));
    }

    [Fact]
    public void A_flash_in_the_clouds_counts_where_the_code_says_so_and_after_any_other_sign()
    {
        var book = Evening.With(("lightning", "flash in the clouds", "does not stop play"));
        Assert.False(Evening.At(Hamlet() + Plain + "18:15 flash in the clouds\n", null, book).Storm.MustBeStopped);
        Assert.True(Evening.At(Evening.Head() + Plain + "18:15 flash in the clouds\n").Storm.MustBeStopped);
        Assert.Equal("18:50", Evening.At(Hamlet() + Plain + "18:15 thunder\n18:15 play stopped\n18:20 flash in the clouds\n", null, book).Storm.EarliestRestart!.Clock);
    }

    [Fact]
    public void A_wait_shorter_than_allowed_is_not_followed()
    {
        // 30 minutes (NFHS sports medicine guideline, rev. Oct 2014 | published)
        var reading = Evening.At(Hamlet() + Plain + "18:15 thunder\n18:15 play stopped\n", "18:40", Evening.With(("lightning", "lightning wait", "20 min")));
        Assert.Equal(("18:45", true), (reading.Storm.EarliestRestart!.Clock, reading.Storm.MustBeStopped));
        Assert.True(reading.Storm.Ruling!.Is("play", "stays stopped"));
    }

    [Fact]
    public void When_it_is_dark_or_too_hot_nothing_says_that_play_may_start_again()
    {
        Assert.DoesNotContain(Evening.At(Evening.Thunder, "20:05").DoNow, d => d.StartsWith("Play may", StringComparison.Ordinal));
        Assert.DoesNotContain(Evening.At(Evening.Thunder + "19:20 heat 96 F 60 %\n", "19:30").DoNow, d => d.StartsWith("Play may", StringComparison.Ordinal));
        Assert.Contains(Evening.At(Evening.Thunder, "19:30").DoNow, d => d.StartsWith("Play may", StringComparison.Ordinal));
        // 69.65 N in December
        var north = Evening.At("Clock: baseball/12U on 2026-12-21\nplace: 69.65 N 18.96 E, Europe/Oslo\n12:00 first pitch\n");
        Assert.True(north.Dark.AllDay);
        Assert.Contains(north.DoNow, d => d.EndsWith("no play.", StringComparison.Ordinal));
    }

    [Fact]
    public void In_one_minute_runs_come_before_the_last_out_and_the_last_out_before_the_stop()
    {
        var reading = Evening.At(Evening.Head() + "18:24 play stopped: storm\n18:24 inning 2 bottom over\n18:24 thunder\n18:24 score 0-1\n18:00 inning 2 top over\n18:00 score 0-0\n17:32 first pitch\n");
        Assert.Equal(("top 3", "0-1", PlayState.Stopped), (reading.Half, reading.Score, reading.State));
        Assert.Empty(reading.Alerts);
        Assert.Equal(["no"], reading.IfStoppedNow.Official);
    }

    [Fact]
    public void Finish_plus_one_plays_the_inning_and_one_more()
    {
        // 60 minutes from 17:32 are up at 18:32, in the second; the third is played too (the sheet's L3a, L3b: USA SB time limit, plays of July 2019 | published)
        var book = Evening.With(("time limit", "kind of limit used", "finish plus one"), ("time limit", "no new inning after", "60 min"));
        var text = Hamlet() + Plain + "18:30 inning 2 top over, 1-1\n18:40 inning 2 bottom over, 1-2\n18:55 inning 3 top over, 1-2\n19:05 inning 3 bottom over, 1-3\n";
        Assert.True(Evening.At(text, "18:35", book).Limit.Ruling!.Is("game", "goes on"));
        Assert.True(Evening.At(text, "18:41", book).Limit.Ruling!.Is("game", "one more inning"));
        Assert.True(Evening.At(text, "19:06", book).Limit.Ruling!.Is("game", "over"));
        Assert.Contains("one more is played", string.Join(" ", Evening.At(text, "18:41", book).DoNow));
    }
}
