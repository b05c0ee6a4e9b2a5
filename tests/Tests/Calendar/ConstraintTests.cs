using Umpirage.District.Calendar;
using Umpirage.District.Calendar.Constraints;
using Umpirage.District.Pitchers;
using static Umpirage.Tests.Calendar.Tiny;

namespace Umpirage.Tests.Calendar;

/// <summary>Each constraint alone, on a few games. Beside each number stands where it comes from.</summary>
public class ConstraintTests
{
    private static void Names(IReadOnlyList<Violation> found, params string[] games) => Assert.Equal(games, Assert.Single(found).About.Select(g => g.Key));

    [Fact]
    public void OneGameOnADiamond_holds_for_the_planned_length()
    {
        // planned length 120 min: league schedules, common practice, no source
        Names(Find<OneGameOnADiamond>(World(), Game("1", Soft12, "AB", "mill-1", At(9)), Game("2", Base12, "CD", "mill-1", At(10, 59))), "1", "2");
        Assert.Empty(Find<OneGameOnADiamond>(World(), Game("1", Soft12, "AB", "mill-1", At(9)), Game("2", Base12, "CD", "mill-1", At(11))));
        Assert.Empty(Find<OneGameOnADiamond>(World(), Game("1", Soft12, "AB", "mill-1", At(9)), Game("2", Base12, "CD", "mill-2", At(9))));
        Assert.Empty(Find<OneGameOnADiamond>(World(), Game("1", Soft12, "AB", "mill-1", At(9), GameStatus.RainedOut), Game("2", Base12, "CD", "mill-1", At(9))));
    }

    [Fact]
    public void TeamInOnePlace_counts_the_way_between_parks()
    {
        // by the law of cosines on a sphere of 6371 km: 41.4392 N 88.2454 W to 41.2851 N 88.0975 W is 21.1 km
        Assert.Equal(21.1, Travel.Km(Mill, Common), 1);
        // 21.1 km at 40 km/h is 31.7 min, and 15 min to spare (common practice, no source): 47 min
        Assert.Equal(47, Travel.Minutes(Mill, Common, World().Rules.On("softball/12U", new(2026, 5, 16))));
        var first = Game("1", Soft14, "AB", "mill-1", At(9));
        Names(Find<TeamInOnePlace>(World(), first, Game("2", Soft14, "AC", "mill-2", At(10))), "1", "2");
        Names(Find<TeamInOnePlace>(World(), first, Game("2", Soft14, "AC", "common-1", At(11, 46))), "1", "2");
        Assert.Empty(Find<TeamInOnePlace>(World(), first, Game("2", Soft14, "AC", "common-1", At(11, 47))));
        Assert.Empty(Find<TeamInOnePlace>(World(), first, Game("2", Soft14, "AC", "mill-2", At(11))));
        Assert.Equal(0, Travel.Km(Mill, Mill));
    }

    [Fact]
    public void GamesADay_follow_the_division_and_the_suspended_game()
    {
        ScheduledGame[] Three(Umpirage.District.People.Division d) => [Game("1", d, "AB", "mill-1", At(9)), Game("2", d, "AC", "mill-1", At(12)), Game("3", d, "AD", "mill-1", At(15))];
        // one community youth code, 2022, common practice, no source: no third game at 10U and 12U, allowed at 14U and 18U
        Names(Find<GamesADay>(World(), Three(Soft12)), "1", "2", "3");
        Assert.Empty(Find<GamesADay>(World(), Three(Soft14)));
        // the rest of a suspended game, finished first, comes before the two; played last it does not
        Assert.Empty(Find<GamesADay>(World(), [Game("0", Soft12, "AB", "mill-1", At(18, days: -3), GameStatus.Suspended), Three(Soft12)[0] with { RestOf = "0" }, .. Three(Soft12)[1..]]));
        Names(Find<GamesADay>(World(), [Game("0", Soft12, "AD", "mill-1", At(18, days: -3), GameStatus.Suspended), .. Three(Soft12)[..2], Three(Soft12)[2] with { RestOf = "0" }]), "1", "2", "3");
    }

    [Fact]
    public void DoubleheadersInSevenDays_are_two_in_the_community_code()
    {
        // one community youth code, 2022, common practice, no source: two in seven days
        ScheduledGame[] Pair(int day) => [Game($"{day}a", Soft14, "AB", "mill-1", At(9, days: day)), Game($"{day}b", Soft14, "AC", "mill-1", At(12, days: day))];
        Names(Find<DoubleheadersInSevenDays>(World(), [.. Pair(0), .. Pair(3), .. Pair(6)]), "0a", "0b", "3a", "3b", "6a", "6b");
        Assert.Empty(Find<DoubleheadersInSevenDays>(World(), [.. Pair(0), .. Pair(3), .. Pair(7)]));
        Assert.Empty(Find<DoubleheadersInSevenDays>(World(), [.. Pair(0), .. Pair(6)]));
    }

    [Fact]
    public void BreakBetweenGames_where_the_code_sets_one()
    {
        // OBR 7.03(a)(7) (2024), published: 30 minutes
        var first = Game("1", Pro, "AB", "mill-4", At(9));
        Names(Find<BreakBetweenGames>(World(), first, Game("2", Pro, "AC", "mill-4", At(11, 29))), "1", "2");
        Assert.Empty(Find<BreakBetweenGames>(World(), first, Game("2", Pro, "AC", "mill-4", At(11, 30))));
        Assert.Empty(Find<BreakBetweenGames>(World(), Game("1", Soft14, "AB", "mill-1", At(9)), Game("2", Soft14, "AC", "mill-1", At(11))));
    }

    [Fact]
    public void SuspendedGameFirst_before_the_teams_meet_again()
    {
        var stopped = Game("1", Soft12, "AB", "mill-1", At(9, days: -7), GameStatus.Suspended);
        var meeting = Game("2", Soft12, "BA", "mill-1", At(12));
        Names(Find<SuspendedGameFirst>(World(), stopped, meeting), "1", "2");
        Names(Find<SuspendedGameFirst>(World(), stopped, meeting, Game("3", Soft12, "AB", "mill-1", At(15), restOf: "1")), "1", "2", "3");
        Assert.Empty(Find<SuspendedGameFirst>(World(), stopped, meeting, Game("3", Soft12, "AB", "mill-1", At(9), restOf: "1")));
        Assert.Empty(Find<SuspendedGameFirst>(World(), stopped, Game("2", Soft12, "CA", "mill-1", At(12))));
    }

    [Fact]
    public void Curfew_of_each_age()
    {
        // league curfews, common practice, no source: 21:30 at 10U, 22:00 at 12U, 23:00 above; planned length 120 min
        Names(Find<Curfew>(World(), Game("1", Soft10, "AB", "mill-1", At(19, 31))), "1");
        Assert.Empty(Find<Curfew>(World(), Game("1", Soft10, "AB", "mill-1", At(19, 30))));
        Assert.Empty(Find<Curfew>(World(), Game("1", Soft12, "AB", "mill-1", At(20))));
        Names(Find<Curfew>(World(), Game("1", Soft12, "AB", "mill-1", At(20, 1))), "1");
        Assert.Empty(Find<Curfew>(World(), Game("1", Soft14, "AB", "mill-1", At(21))));
        Names(Find<Curfew>(World(), Game("1", Soft14, "AB", "mill-1", At(23))), "1");
    }

    [Fact]
    public void Daylight_to_the_minute_of_sunset()
    {
        // play ends by sunset, common practice, no source; the sun of this test sets at 19:26
        var world = World(sunset: At(19, 26));
        Names(Find<Daylight>(world, Game("1", Soft12, "AB", "mill-2", At(17, 45))), "1");
        Assert.Empty(Find<Daylight>(world, Game("1", Soft12, "AB", "mill-2", At(17, 26))));
        Names(Find<Daylight>(world, Game("1", Soft12, "AB", "mill-2", At(17, 27))), "1");
        Assert.Empty(Find<Daylight>(world, Game("1", Soft12, "AB", "mill-1", At(17, 45))));
    }

    [Fact]
    public void DiamondSize_is_the_codes_base_distance()
    {
        // 60 ft for softball: US softball association field table, Rule 2-1 (undated), published; 80 ft at 13-14: from memory
        Assert.Empty(Find<DiamondSize>(World(), Game("1", Soft12, "AB", "mill-1", At(9)), Game("2", Base14, "AB", "mill-3", At(9))));
        Names(Find<DiamondSize>(World(), Game("1", Base14, "AB", "mill-1", At(9))), "1");
        Names(Find<DiamondSize>(World(), Game("1", Soft12, "AB", "mill-3", At(9))), "1");
    }

    [Theory]
    [InlineData(BlackoutOf.District, "district", true)]
    [InlineData(BlackoutOf.League, "tarnholt", true)]
    [InlineData(BlackoutOf.League, "pellwick", false)]
    [InlineData(BlackoutOf.Team, "B-SB 12U", true)]
    [InlineData(BlackoutOf.Team, "C-SB 12U", false)]
    [InlineData(BlackoutOf.Park, "mill", true)]
    [InlineData(BlackoutOf.Park, "common", false)]
    [InlineData(BlackoutOf.Diamond, "mill-1", true)]
    [InlineData(BlackoutOf.Diamond, "mill-2", false)]
    public void ClosedDays_of_everything_that_can_be_closed(BlackoutOf kind, string of, bool broken)
    {
        var world = World(closed: [new(kind, of, new(2026, 5, 15), new(2026, 5, 16), "a fair")]);
        Assert.Equal(broken, Find<ClosedDays>(world, Game("1", Soft12, "AB", "mill-1", At(9))).Count == 1);
        Assert.Empty(Find<ClosedDays>(world, Game("1", Soft12, "AB", "mill-1", At(9, days: 1))));
    }

    [Fact]
    public void EnoughPitchers_by_the_logs_is_a_wish()
    {
        // 66 pitches at 11-12 call for four days of rest (youth guideline table, about 2015, published): thrown on Thursday, not on Saturday, and from Tuesday on again
        var thursday = Game("0", Base12, "AB", "mill-1", At(18, days: -2), GameStatus.Played);
        var world = World(staff: (rules, divisions) => new(rules, divisions, [thursday],
            [new("p1", "A-BB 11-12", 1), new("p2", "A-BB 11-12", 2), new("p3", "A-BB 11-12", 3), new("q1", "B-BB 11-12", 1), new("q2", "B-BB 11-12", 2)],
            [Log("p1", "A-BB 11-12", 66), Log("p2", "A-BB 11-12", 20), Log("q1", "B-BB 11-12", 20), Log("q2", "B-BB 11-12", 20)]));
        Appearance Log(string player, string team, int pitches) => new("0", player, team, "home book", thursday.Day, 1, pitches, pitches - 1, 3, 0, 9);
        var wish = Find<EnoughPitchers>(world, thursday, Game("1", Base12, "AB", "mill-1", At(9)));
        Names(wish, "1");
        Assert.False(wish[0].Hard);
        Assert.Equal("A-BB 11-12", wish[0].Of);
        Assert.StartsWith("1 of 2 pitchers", wish[0].Found);
        Assert.Empty(Find<EnoughPitchers>(world, thursday, Game("1", Base12, "AB", "mill-1", At(9, days: 3))));
    }

    [Fact]
    public void Every_constraint_has_a_test_a_sentence_and_known_sheets()
    {
        var tests = typeof(ConstraintTests).GetMethods().Select(m => m.Name.Split('_')[0]).ToHashSet();
        Assert.Equal(Checking.Constraints.Select(c => c.GetType().Name).Order(), tests.Where(t => Checking.Constraints.Any(c => c.GetType().Name == t)).Order());
        Assert.Equal(typeof(Constraint).Assembly.GetTypes().Where(t => t.IsSubclassOf(typeof(Constraint))).Select(t => t.Name).Order(), Checking.Constraints.Select(c => c.GetType().Name).Order());
        Assert.All(Checking.Constraints, c => Assert.EndsWith(".", c.Sentence));
        Assert.All(Checking.Constraints.SelectMany(c => c.Sheets), s => Assert.NotNull(Shelf.Codes.Sheet(s)));
        Assert.Equal(Checking.Constraints.Count, Checking.Constraints.Select(c => c.Name).Distinct().Count());
    }
}
