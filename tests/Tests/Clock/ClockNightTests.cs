namespace Umpirage.Tests.Clock;

/// <summary>
/// The nights on which the clocks are put on and back. In America/Chicago 8 March 2026 at 2:00 to 3:00, and 1 November 2026 at 2:00 to 1:00
/// (US law since 2007 | published). What passes is real time.
/// </summary>
public class ClockNightTests
{
    [Fact]
    public void On_the_short_night_an_hour_of_the_wall_clock_does_not_pass()
    {
        var text = Evening.Head(date: "2026-03-07", more: "lit: yes") + "23:30 first pitch\n2026-03-08 01:50 thunder\n2026-03-08 01:50 play stopped: storm\n";
        var reading = Evening.At(text, "2026-03-08 03:15");
        Assert.Equal(140, reading.Limit.OnClock);
        Assert.Equal("2026-03-08 03:20", reading.Storm.EarliestRestart!.Clock);
        Assert.Equal(165, Evening.At(Evening.Head(date: "2026-03-07", more: "lit: yes") + "23:30 first pitch\n", "2026-03-08 03:15").Limit.OnClock);
    }

    [Fact]
    public void On_the_long_night_an_hour_of_the_wall_clock_passes_twice()
    {
        var text = Evening.Head(date: "2026-11-01", more: "lit: yes") + "00:30 first pitch\n01:45-05:00 thunder\n01:45-05:00 play stopped: storm\n";
        Assert.Equal("01:15-06:00", Evening.At(text).Storm.EarliestRestart!.Clock);
        Assert.True(Evening.At(text, "01:14-06:00").Storm.MustBeStopped);
        Assert.False(Evening.At(text, "01:15-06:00").Storm.MustBeStopped);
        Assert.Equal(75, Evening.At(text, "01:15-06:00").Limit.OnClock);
        // 00:30 and 105 minutes: 01:15 of the second round
        Assert.Equal("01:15-06:00", Evening.At(Evening.Head(date: "2026-11-01", more: "lit: yes") + "00:30 first pitch\n").Limit.LastNewInning!.Clock);
        Assert.Equal(150, Evening.At(Evening.Head(date: "2026-11-01", more: "lit: yes") + "00:30 first pitch\n", "02:00").Limit.OnClock);
    }

    [Fact]
    public void A_time_that_never_comes_or_comes_twice_is_a_finding()
    {
        Assert.Equal("test.clock, line 4: there is no 02:30 on that night in America/Chicago: the clocks are put on from 02:00 to 03:00",
            Evening.Faults(Evening.Head(date: "2026-03-08") + "02:30 first pitch\n").Single());
        Assert.Equal("test.clock, line 4: 01:30 comes twice on that night in America/Chicago, since the clocks are put back; write 01:30-05:00 or 01:30-06:00",
            Evening.Faults(Evening.Head(date: "2026-11-01") + "01:30 first pitch\n").Single());
    }
}
