using Umpirage.District.Calendar;
using static Umpirage.Tests.Calendar.Tiny;

namespace Umpirage.Tests.Calendar;

/// <summary>The least change that mends one violation.</summary>
public class MendingTests
{
    private static Mend? First(Surroundings world, params ScheduledGame[] games)
    {
        var schedule = new Schedule(world, games);
        return new Mending(schedule, At(0, days: -30)).Of(Checking.Of(schedule).First(v => v.Hard)).Mend;
    }

    /// <summary>Games that make a start usual on Saturdays: three times the same hour, in other weeks.</summary>
    private static ScheduledGame[] Usual(params int[] hours) =>
        [.. hours.SelectMany(h => new[] { -21, -28, -35 }.Select(d => Game($"u{h}{d}", Base12, "EF", "mill-1", At(h, days: d), GameStatus.Played)))];

    [Fact]
    public void A_dark_game_goes_to_an_earlier_hour_of_its_own_day_and_diamond()
    {
        // two hours (common practice, no source) before a sunset at 19:26 is 17:26; in steps of a quarter of an hour 17:15
        var mend = First(World(sunset: At(19, 26)), [.. Usual(9, 20), Game("1", Soft12, "AB", "mill-2", At(17, 45))]);
        // a lit diamond of the same size has no usual start nearer than that
        Assert.Equal(new Mend("1", "mill-2", At(17, 15)), mend);
    }

    [Fact]
    public void Of_two_games_on_one_diamond_one_goes_to_the_diamond_beside_it_at_the_same_time()
    {
        var mend = First(World(), [.. Usual(9), Game("1", Soft12, "AB", "mill-1", At(9)), Game("2", Soft12, "CD", "mill-1", At(9)), Game("3", Soft12, "EF", "common-1", At(9, days: 7))]);
        Assert.Equal(At(9), mend!.Start);
        Assert.NotEqual("mill-1", mend.Diamond);
    }

    [Fact]
    public void A_game_that_has_begun_its_day_is_not_moved()
    {
        var schedule = new Schedule(World(), [.. Usual(9), Game("1", Soft12, "AB", "mill-3", At(9))]);
        var wrong = Checking.Of(schedule).Single(v => v.Hard);
        Assert.Null(new Mending(schedule, At(10)).Of(wrong).Mend);
        Assert.NotNull(new Mending(schedule, At(8)).Of(wrong).Mend);
    }
}
