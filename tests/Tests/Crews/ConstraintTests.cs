using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.People;

namespace Umpirage.Tests.Crews;

/// <summary>
/// Every constraint alone: a plan that keeps everything, and one that differs in a single thing and breaks that one constraint. Numbers: common
/// practice, no source, as the sheet on an umpire's day has them; travel by the haversine formula.
/// </summary>
public class ConstraintTests
{
    private static readonly ScheduledGame Nine = Town.Game("nine", Town.At(9)), Noon = Town.Game("noon", Town.At(12)), Three = Town.Game("three", Town.At(15)), Six = Town.Game("six", Town.At(18));
    private static readonly Coordination Named = new("nine", "eve");

    private static CrewRecords One(string person, string place = "plate", ScheduledGame? game = null) => Town.With([game ?? Nine], ((game ?? Nine).Key, place, person));
    private static CrewRecords Young(string person, ScheduledGame? game = null, string place = "plate") => One(person, place, game) with { Coordinations = [Named with { Game = (game ?? Nine).Key }] };
    private static CrewRecords Three_games(params string[] places) => Town.With([Nine, Noon, Three, Six], [.. places.Select((p, i) => (new[] { "nine", "noon", "three", "six" }[i], p, "ann"))]);
    private static ScheduledGame Twelve(string key, DateTime start) => Town.Game(key, start, "BB 11-12");
    private static CrewRecords Bases(int games) => Town.With([.. Hours.Take(games).Select((h, i) => Twelve($"g{i}", Town.At(h)))], [.. Enumerable.Range(0, games).Select(i => ($"g{i}", "base", "ann"))]);
    private static readonly int[] Hours = [8, 11, 14, 17];

    private static readonly Dictionary<string, (CrewRecords Kept, CrewRecords Broken, string Said)> Cases = new()
    {
        ["clearance"] = (One("ann"), One("ann") with { Clearances = [.. Town.Empty.Clearances.Select(c => c.Person == "ann" && c.Requirement == "background check" ? c with { Until = new(2026, 5, 15) } : c)] }, "background check ran out 2026-05-15"),
        ["guardian's approval"] = (Young("dan"), Young("dan") with { Approvals = [new("dan", "gil", new(2026, 3, 1), new(2026, 5, 15))] }, "no guardian's approval holds that day"),
        // 13 at least, players up to 10 and up to 12: three years are asked
        ["age gap"] = (Young("dan"), Young("dan", Twelve("nine", Town.At(9)), "base"), "less than 3 years older than the oldest players: at least 13 by the age band, players up to 12"),
        ["adult coordinator"] = (Young("dan"), One("dan"), "no adult coordinator is named for the game"),
        ["never with one adult alone"] = (
            Town.With([Nine], ("nine", "plate", "ann"), ("nine", "youth base", "dan")) with { Coordinations = [Named] },
            Town.With([Nine], ("nine", "plate", "ann"), ("nine", "youth base", "dan")) with { Coordinations = [new("nine", "ann")] }, "Ann Lark would be the only adult with the minor before and after the game"),
        // planned length 120 min; under 16 until half past nine
        ["youth curfew"] = (Young("dan", Town.Game("late", Town.At(19, 30))), Young("dan", Town.Game("late", Town.At(19, 31))), "under 16, the game has to be over by 21 1/2 hours; it ends at 21:31"),
        ["games a day"] = (Bases(3), Bases(4), "more than 3 games on one day; it would be number 4"),
        ["plates a day"] = (Three_games("plate", "plate"), Three_games("plate", "plate", "plate"), "more than 2 games at the plate on one day; it would be number 3"),
        ["one game at a time"] = (
            Town.With([Nine, Town.Game("other", Town.At(11, 45), diamond: "mill-2")], ("nine", "plate", "ann"), ("other", "plate", "ann")),
            Town.With([Nine, Town.Game("other", Town.At(10, 59), diamond: "mill-2")], ("nine", "plate", "ann"), ("other", "plate", "ann")), "on plate of nine at 09:00 until 11:00"),
        ["break between games"] = (
            Town.With([Nine, Town.Game("next", Town.At(11, 45))], ("nine", "plate", "ann"), ("next", "plate", "ann")),
            Town.With([Nine, Town.Game("next", Town.At(11, 44))], ("nine", "plate", "ann"), ("next", "plate", "ann")), "less than 45 min since the last game: 44 min"),
        // 0.5 degrees of latitude are 55.6 km: 84 min at 40 km an hour, and 10
        ["travel"] = (Far(12, 34), Far(12, 33), "94 min from Mill, 93 are left"),
        ["certificate"] = (One("ann", game: Town.Game("nine", Town.At(9), "BB 13-14")), One("ann", game: Town.Game("nine", Town.At(9), "BB 13-14")) with { Certificates = [new("ann", "baseball", "BB 11-12", Position.Plate, new(2026, 3, 15), Town.Year)] },
            "certified for plate up to BB 11-12 only, asked for plate in BB 13-14"),
        ["grade"] = (One("ann"), One("ann") with { Officials = [new("ann", Grade.Base, 3, 2010)] }, "base grade, the plate asks for plate grade"),
        ["availability"] = (One("ann"), One("ann") with { Hours = [new("ann", DayOfWeek.Saturday, new(9, 0), new(10, 59))] }, "gave 09:00 to 10:59 on Saturday; the game lasts from 09:00 to 11:00"),
        ["interest"] = (One("ann"), One("ann") with { Interests = [new("ann", InterestOf.Team, "north-BB 9-10", "daughter plays there")] }, "daughter plays there: north BB 9-10"),
        ["kept apart"] = (
            Town.With([Twelve("g", Town.At(9))], ("g", "plate", "ann"), ("g", "base", "ben")),
            Town.With([Twelve("g", Town.At(9))], ("g", "plate", "ann"), ("g", "base", "ben")) with { Pairings = [new("ben", "ann", PairingKind.Apart, new(2026, 3, 1), new(2026, 10, 31))] }, "not to be put together with Ben Lark"),
        ["mentor"] = (Young("dan") with { Pairings = [new("dan", "ben", PairingKind.Mentor, new(2026, 5, 1), new(2026, 5, 15))] }, Young("dan") with { Pairings = [new("dan", "ben", PairingKind.Mentor, new(2026, 5, 1), new(2026, 5, 16))] },
            "until 2026-05-16 only beside Ben Lark"),
        ["place"] = (Young("dan", place: "youth base"), One("ann", "youth base"), "the youth base is for a minor"),
        ["neutrality"] = (One("ann"), One("ann", game: Town.Game("nine", Town.At(9), home: "east")), "of the same league as east BB 9-10"),
        ["plate rotation"] = (Town.With([Nine, Twelve("later", Town.At(12))], ("nine", "plate", "ann"), ("later", "base", "ann")), Town.With([Nine, Twelve("later", Town.At(12))], ("nine", "plate", "ann"), ("later", "plate", "ann")), "the plate straight after plate of nine at 09:00"),
        ["games offered"] = (Bases(3), Bases(3) with { Officials = [new("ann", Grade.Plate, 2, 2010)] }, "offered 2 a week; it would be number 3"),
    };

    private static CrewRecords Far(int hour, int minute) => Town.With([Nine, Town.Game("away", Town.At(hour, minute), diamond: "far-1")], ("nine", "plate", "ann"), ("away", "plate", "ann")) with
    {
        Parks = [.. Town.Empty.Parks, new("far", "Far", 41.90, -88.10)], Diamonds = [.. Town.Empty.Diamonds, new("far-1", "far", "Far 1", 60, true)],
    };

    public static TheoryData<string> Names => [.. Cases.Keys];

    [Theory, MemberData(nameof(Names))]
    public void Is_found_where_it_is_broken_and_only_there(string name)
    {
        var (kept, broken, said) = Cases[name];
        Assert.DoesNotContain(Town.Check(kept), b => b.Constraint == name);
        Assert.Contains(said, Town.Check(broken).Where(b => b.Constraint == name).Select(b => b.Said));
        // nothing else that is a no has changed with it
        Assert.Equal(Town.Check(kept).Where(Hard(name)).Select(b => b.Constraint).Distinct(), Town.Check(broken).Where(Hard(name)).Select(b => b.Constraint).Distinct());
    }

    private static Func<Breach, bool> Hard(string but) => b => b.Hold != Hold.Wish && b.Constraint != but && !(but is "place");

    /// <summary>The first and the last day away count, and no hours weigh against them; the days beside do not.</summary>
    [Theory, InlineData(16, 16, "is away on 2026-05-16"), InlineData(10, 16, "is away from 2026-05-10 to 2026-05-16"), InlineData(16, 20, "is away from 2026-05-16 to 2026-05-20"), InlineData(10, 15, null), InlineData(17, 20, null)]
    public void A_day_away_is_a_day_away(int from, int until, string? told) =>
        Assert.Equal(told, Town.Check(One("ann") with { Aways = [new("ann", new(2026, 5, from), new(2026, 5, until))] }).FirstOrDefault(b => b.Constraint == "availability")?.Said);

    /// <summary>From 9 to 11: hours to 10 and from 10 are hours to 11; a minute between them is a gap.</summary>
    [Theory, InlineData(0, true), InlineData(1, false)]
    public void Hours_that_meet_are_one(int gap, bool may) =>
        Assert.Equal(may, !Town.Check(One("ann") with { Hours = [new("ann", DayOfWeek.Saturday, new(10, gap), new(12, 0)), new("ann", DayOfWeek.Saturday, new(8, 0), new(10, 0))] }).Any(b => b.Constraint == "availability"));

    [Fact]
    public void Every_constraint_has_its_case_and_its_words()
    {
        Assert.Equal(CrewConstraints.All.Select(c => c.Name).Order(), Cases.Keys.Order());
        Assert.All(CrewConstraints.All, c => Assert.True(c.Sentence.EndsWith('.') && c.Source.Source != "", c.Name));
    }

    /// <summary>W1: in the danger band one plate; 103 belongs to it, a tenth below does not (US weather service heat-index chart).</summary>
    [Theory, InlineData(102.9, false), InlineData(103.0, true), InlineData(110, true)]
    public void Great_heat_leaves_one_plate(double heat, bool barred)
    {
        var hot = Three_games("plate", "plate") with { Heat = new Dictionary<DateOnly, double> { [Town.Saturday] = heat } };
        Assert.Equal(barred, Town.Check(hot).Any(b => b.Constraint == "plates a day"));
    }

    [Fact]
    public void Under_sixteen_two_games_are_the_most_and_from_sixteen_on_three()
    {
        CrewRecords Day(string who) => Town.With([Nine, Noon, Three], ("nine", "plate", who), ("noon", "youth base", who), ("three", "youth base", who)) with
        {
            Coordinations = [Named, new("noon", "eve"), new("three", "eve")],
        };
        Assert.Equal(["three"], Town.Check(Day("dan")).Where(b => b.Constraint == "games a day").Select(b => b.Game));
        Assert.DoesNotContain(Town.Check(Day("cora")), b => b.Constraint == "games a day");
    }

    [Fact]
    public void Games_elsewhere_count_for_the_day_whenever_they_are()
    {
        var day = Bases(3) with { Elsewhere = [new("ann", Town.At(20), Town.At(22), "base")] };
        Assert.Equal("g2", Assert.Single(Town.Check(day), b => b.Constraint == "games a day").Game);
        Assert.Contains(Town.Check(One("ann") with { Elsewhere = [new("ann", Town.At(11, 30), Town.At(13), "base")] }), b => b.Constraint == "break between games");
        Assert.Contains(Town.Check(One("ann") with { Elsewhere = [new("ann", Town.At(10), Town.At(12), "base")] }), b => b.Constraint == "one game at a time");
    }

    [Theory]
    [InlineData("manages", "the coordinator Eve Lark manages a team of the game"), InlineData("two", "the coordinator Eve Lark has other at the same time")]
    public void A_coordinator_coaches_neither_team_and_is_at_one_game(string what, string said)
    {
        var young = Town.With([Nine, Town.Game("other", Town.At(10), diamond: "heath-1")], ("nine", "plate", "dan")) with
        {
            Coordinations = what == "two" ? [Named, new("other", "eve")] : [Named], Roles = what == "manages" ? [new("eve", Role.Manager, "", "north-BB 9-10")] : [],
        };
        Assert.Equal(said, Assert.Single(Town.Check(young), b => b.Hold == Hold.Safety).Said);
    }

    [Fact]
    public void A_requirement_on_record_that_ran_out_bars_even_where_the_code_does_not_ask_for_it()
    {
        var lapsed = One("ann") with { Clearances = [.. Town.Empty.Clearances, new("ann", "concussion course", new(2024, 2, 1), new(2026, 1, 31), "officer")] };
        Assert.Equal("concussion course ran out 2026-01-31", Assert.Single(Town.Check(lapsed), b => b.Hold == Hold.Safety).Said);
    }
}
