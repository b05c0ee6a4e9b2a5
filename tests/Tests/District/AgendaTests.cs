using Umpirage.District.Calendar;
using Umpirage.District.Cases;
using Umpirage.District.Options;
using Umpirage.District.People;
using Umpirage.District.Pitchers;
using Umpirage.District.Today;

namespace Umpirage.Tests.District;

/// <summary>What needs a decision on Saturday, 16 May 2026 at eight, built up one matter at a time.</summary>
public class AgendaTests
{
    private static readonly DateTime Now = new(2026, 5, 16, 8, 0, 0);
    private static readonly DateOnly Today = new(2026, 5, 16);

    private static readonly Day Quiet = new(Now, [], [], [Adult("ben")], [], [], [], [], [], new Dictionary<string, string> { ["OWL"] = "Owls", ["TERN"] = "Terns" });

    private static Person Adult(string key) => Person.Of(key, "Ben", "Lark", AgeBand.Adult, null, null, null, null, [])!;
    private static Person Minor(string key) => Person.Of(key, "Finn", "Lark", AgeBand.From13To15, new(2029, 3, 1), null, null, null, [])!;
    private static ScheduledGame Game(string key, DateTime start, GameStatus status = GameStatus.Planned, string home = "OWL") =>
        new(key, "SB 12U", "TERN", home, "mill-1", start, status, 0);
    private static Clearance Check(DateOnly from, DateOnly until, string requirement = "background check", string person = "ben") =>
        new(person, requirement, from, until, "officer");
    private static Appearance Log(string counter, int pitches, int before = 40, int innings = 4) => new("G", "#7", "OWL", counter, DateOnly.FromDateTime(Now), 1, pitches, before, innings, 0, 3 * innings);
    private static Matter Only(Day day) => Assert.Single(Agenda.Of(day));
    private static Matter? Kind(Day day, MatterKind kind) => Agenda.Of(day).SingleOrDefault(m => m.Kind == kind);

    [Fact]
    public void A_quiet_day_has_nothing() => Assert.Empty(Agenda.Of(Quiet));

    [Fact]
    public void A_place_without_an_umpire_waits_until_the_game_starts() => Assert.Equal(
        new(MatterKind.OpenPlace, Now.AddHours(1), "No umpire: plate and base", "SB 12U, Terns at Owls", "G"),
        Only(Quiet with { Games = [Game("G", Now.AddHours(1))], Places = [new("G", "plate", null), new("G", "base", null)] }));

    [Fact]
    public void A_swap_waits_until_the_first_of_its_games_begins()
    {
        AskedSwap Swap(string? yes, string? otherYes) => new("s", "ben", "G", "plate", "ann", "H", "base", Now.AddDays(-1), SwapState.Asked, yes, otherYes);
        Day With(AskedSwap swap, int minutes) => Quiet with { Swaps = [new(swap, Game("G", Now.AddHours(5)), Game("H", Now.AddMinutes(minutes)))] };
        Assert.Equal(new(MatterKind.Swap, Now.AddMinutes(30), "A swap waits for your answer", "plate; SB 12U, Terns at Owls", "s"), Only(With(Swap("ben", null), 30)));
        Assert.Equal("A swap waits to be confirmed", Only(With(Swap("ben", "ann"), 30)).What);
        Assert.Empty(Agenda.Of(With(Swap("ben", null), 0)));
        Assert.Empty(Agenda.Of(With(Swap("ben", null) with { State = SwapState.Declined }, 30)));
    }

    [Theory]
    [InlineData(0, true), InlineData(-1, false)]
    public void A_game_that_has_begun_needs_nobody_any_more(int minutes, bool shown) =>
        Assert.Equal(shown, Kind(Quiet with { Games = [Game("G", Now.AddMinutes(minutes))], Places = [new("G", "plate", null)] }, MatterKind.OpenPlace) is not null);

    [Theory]
    [InlineData(GameStatus.Planned, true), InlineData(GameStatus.Moved, true), InlineData(GameStatus.RainedOut, false), InlineData(GameStatus.CalledOff, false),
        InlineData(GameStatus.Played, false)]
    public void Only_games_to_be_played_need_umpires(GameStatus status, bool shown) =>
        Assert.Equal(shown, Kind(Quiet with { Games = [Game("G", Now.AddHours(1), status)], Places = [new("G", "plate", null)] }, MatterKind.OpenPlace) is not null);

    [Fact]
    public void A_youth_base_is_wanted_but_not_required() =>
        Assert.Empty(Agenda.Of(Quiet with { Games = [Game("G", Now.AddHours(1))], Places = [new("G", "youth base", null), new("G", "plate", "ben")] }));

    [Fact]
    public void From_the_day_after_tomorrow_open_places_are_told_by_the_day()
    {
        var tomorrow = Now.Date.AddDays(2).AddMinutes(-1);
        var games = new[] { Game("A", tomorrow), Game("B", tomorrow.AddMinutes(1)), Game("C", tomorrow.AddHours(3)), Game("D", tomorrow.AddDays(2)) };
        var day = Quiet with { Games = games, Places = [.. games.Select(g => new Assignment(g.Key, "plate", null)), new("C", "base", null)] };
        Assert.Equal(
            [("A", tomorrow, "No umpire: plate"), ("", tomorrow.AddMinutes(1), "3 places without an umpire"), ("", tomorrow.AddDays(2), "1 places without an umpire")],
            Agenda.Of(day).Select(m => (m.About, m.Due, m.What)));
    }

    [Theory]
    [InlineData(23, 59, true), InlineData(24, 0, false)]
    public void Open_places_are_told_eight_days_ahead(int hours, int minutes, bool shown)
    {
        var start = Now.Date.AddDays(7).AddHours(hours).AddMinutes(minutes);
        Assert.Equal(shown, Kind(Quiet with { Games = [Game("G", start)], Places = [new("G", "plate", null)] }, MatterKind.OpenPlace) is not null);
    }

    private static Day Assigned(params Clearance[] clearances) =>
        Quiet with { Games = [Game("G", Now.Date.AddDays(3).AddHours(18))], Places = [new("G", "plate", "ben")], Clearances = clearances };

    [Theory]
    [InlineData(3, false), InlineData(4, false), InlineData(2, true), InlineData(-10, true)]
    public void A_clearance_that_ends_on_the_day_of_the_game_is_good_and_the_day_before_is_not(int until, bool told) =>
        Assert.Equal(told, Kind(Assigned(Check(Today.AddYears(-1), Today.AddDays(until))), MatterKind.Safety) is not null);

    [Theory]
    [InlineData(3, false), InlineData(2, false), InlineData(4, true)]
    public void A_clearance_that_begins_on_the_day_of_the_game_is_good_and_the_day_after_is_not(int from, bool told) =>
        Assert.Equal(told, Kind(Assigned(Check(Today.AddDays(from), Today.AddYears(1))), MatterKind.Safety) is not null);

    [Fact]
    public void Who_may_not_be_assigned_is_told_with_the_reason()
    {
        var matter = Kind(Assigned(Check(new(2025, 5, 1), new(2026, 5, 14))), MatterKind.Safety)!;
        Assert.Equal((Now.Date.AddDays(3).AddHours(18), "Ben Lark may not be assigned: background check ran out 2026-05-14", "plate; SB 12U, Terns at Owls", "G"),
            (matter.Due, matter.What, matter.Why, matter.About));
        Assert.Equal("Ben Lark may not be assigned: background check begins 2026-06-01", Kind(Assigned(Check(new(2026, 6, 1), new(2027, 5, 31))), MatterKind.Safety)!.What);
        // one that ran out and one still to come: what matters is that none holds
        Assert.Equal("Ben Lark may not be assigned: background check ran out 2026-05-14",
            Kind(Assigned(Check(new(2025, 5, 1), new(2026, 5, 14)), Check(new(2026, 6, 1), new(2027, 5, 31))), MatterKind.Safety)!.What);
    }

    [Fact]
    public void A_renewed_clearance_is_good_and_each_requirement_counts_for_itself()
    {
        Assert.Null(Kind(Assigned(Check(new(2025, 5, 1), new(2026, 5, 14)), Check(new(2026, 5, 15), new(2027, 5, 14))), MatterKind.Safety));
        Assert.Contains("concussion course", Kind(Assigned(Check(new(2025, 5, 1), new(2027, 5, 14)), Check(new(2025, 5, 1), new(2026, 5, 14), "concussion course")),
            MatterKind.Safety)!.What);
    }

    [Fact]
    public void A_minor_without_a_guardian_is_a_matter_of_safety()
    {
        var day = Quiet with { People = [Minor("finn"), Minor("gwen"), Adult("ben")], Guardianships = [new("gwen", "ben")] };
        Assert.Equal(new(MatterKind.Safety, Now, "Finn L. has no guardian on record", "nobody can write to a minor alone", "finn"), Only(day));
    }

    [Fact]
    public void Two_counts_that_differ_wait_until_the_team_plays_again()
    {
        var played = Game("G", Now.AddDays(-2), GameStatus.Played);
        var day = Quiet with { Games = [played, Game("N", Now.AddDays(3)), Game("L", Now.AddDays(9)), Game("off", Now.AddDays(1), GameStatus.CalledOff),
            Game("their", Now.AddDays(1), home: "JAY") with { Visitor = "WREN" }], Logs = [Log("home book", 48), Log("visitors' book", 50)] };
        Assert.Equal(new(MatterKind.CountsDiffer, Now.AddDays(3), "Two counts differ: 48 pitches (home book) and 50 pitches (visitors' book)",
            "SB 12U, Terns at Owls, 2026-05-14", "G"), Only(day));
        Assert.Equal(played.Start.Date.AddDays(14), Only(day with { Games = [played] }).Due);
    }

    [Fact]
    public void Counts_that_agree_are_nothing_to_settle()
    {
        var day = Quiet with { Games = [Game("G", Now.AddDays(-2), GameStatus.Played)] };
        Assert.Empty(Agenda.Of(day with { Logs = [Log("home book", 48)] }));
        Assert.Empty(Agenda.Of(day with { Logs = [Log("home book", 48), Log("visitors' book", 48)] }));
        Assert.NotNull(Kind(day with { Logs = [Log("home book", 48, before: 44), Log("visitors' book", 48, before: 45)] }, MatterKind.CountsDiffer));
        Assert.NotNull(Kind(day with { Logs = [Log("home book", 48, innings: 4), Log("visitors' book", 48, innings: 5)] }, MatterKind.CountsDiffer));
    }

    [Theory]
    [InlineData(-14, 0, false), InlineData(-14, 1, true), InlineData(2, 0, true)]
    public void A_rained_out_game_waits_a_fortnight_for_a_new_date(int days, int minutes, bool shown)
    {
        var game = Game("G", Now.AddDays(days).AddMinutes(minutes), GameStatus.RainedOut);
        var matter = Kind(Quiet with { Games = [game] }, MatterKind.Rainout);
        Assert.Equal(shown ? new(MatterKind.Rainout, game.Start.Date.AddDays(14), "Rained out, no new date", "SB 12U, Terns at Owls", "G") : null, matter);
    }

    [Fact]
    public void An_open_question_waits_two_days()
    {
        AskedQuestion Asked(string key, bool open) => new(key, Now.AddDays(-1), "ben", "Is she out?", "", "", "", "", "", open);
        Assert.Equal(new(MatterKind.Question, Now.AddDays(1), "Question not answered yet", "Is she out?", "q-1"),
            Only(Quiet with { Questions = [Asked("q-1", true), Asked("q-2", false)] }));
    }

    [Fact]
    public void A_proposed_option_waits_a_week()
    {
        LocalOption Option(int version, OptionStatus status) => new("Tarnholt", version, status, "tarnholt", "", "pia", Now.AddDays(-3));
        Assert.Equal(new(MatterKind.Proposal, Now.AddDays(4), "Local option proposed: Tarnholt", "version 2, by pia", "Tarnholt"),
            Only(Quiet with { Options = [Option(1, OptionStatus.Published), Option(2, OptionStatus.Proposed)] }));
    }

    [Theory]
    [InlineData(-1, MatterKind.Lapsed), InlineData(0, MatterKind.Expiring), InlineData(30, MatterKind.Expiring), InlineData(31, null)]
    public void A_clearance_is_told_thirty_days_before_it_runs_out_and_afterwards_as_lapsed(int until, MatterKind? kind)
    {
        var matters = Agenda.Of(Quiet with { Clearances = [Check(Today.AddYears(-1), Today.AddDays(until))] });
        Assert.Equal(kind is null ? [] : [kind.Value], matters.Select(m => m.Kind));
    }

    [Fact]
    public void A_clearance_about_to_run_out_is_due_at_the_end_of_its_day() => Assert.Equal(
        new(MatterKind.Expiring, new(2026, 5, 20, 23, 59, 0), "Ben Lark: background check runs out", "no games after that day until it is renewed", "ben"),
        Only(Quiet with { Clearances = [Check(new(2025, 5, 21), new(2026, 5, 20)), Check(new(2024, 5, 21), new(2025, 5, 20))] }));

    [Fact]
    public void Those_whose_clearances_ran_out_are_told_together()
    {
        var day = Quiet with { People = [Adult("ben"), Person.Of("cleo", "Cleo", "Lark", AgeBand.Adult, null, null, null, null, [])!],
            Clearances = [Check(new(2025, 1, 1), new(2026, 1, 1)), Check(new(2025, 1, 1), new(2026, 1, 1), "concussion course"),
            Check(new(2025, 1, 1), new(2026, 1, 1), person: "cleo")] };
        Assert.Equal((MatterKind.Lapsed, Now.Date.AddDays(7), "2 umpires may not be assigned: a clearance ran out", "Ben Lark and Cleo Lark"), Only(day) is var m
            ? (m.Kind, m.Due, m.What, m.Why) : default);
        Assert.StartsWith("1 umpire may not", Only(day with { People = [Adult("ben")] }).What);
    }

    [Fact]
    public void The_day_decides_then_safety_then_the_hour_then_the_kind()
    {
        var day = Quiet with
        {
            Games = [Game("late", Now.Date.AddHours(18)), Game("early", Now.Date.AddHours(9)), Game("next", Now.Date.AddDays(1).AddHours(9)),
            Game("rain", Now.Date.AddDays(-14).AddHours(20), GameStatus.RainedOut)],
            Places = [new("late", "plate", "ben"), new("early", "plate", null), new("next", "plate", null)],
            Clearances = [Check(new(2025, 5, 1), new(2026, 5, 15))],
            Questions = [new("q", Now.Date.AddDays(-2).AddHours(9), "ben", "?", "", "", "", "", "", true)],
            Options = [new("T", 1, OptionStatus.Proposed, "", "", "pia", Now.Date.AddDays(-7).AddHours(9))],
        };
        Assert.Equal(
            [MatterKind.Safety, MatterKind.Rainout, MatterKind.OpenPlace, MatterKind.Question, MatterKind.Proposal, MatterKind.OpenPlace, MatterKind.Lapsed],
            Agenda.Of(day).Select(m => m.Kind));
        // the same at any order of the records
        var turned = day with { Games = [.. day.Games.Reverse()], Places = [.. day.Places.Reverse()] };
        Assert.Equal(Agenda.Of(day), Agenda.Of(turned));
    }

    [Fact]
    public void Matters_of_one_moment_stand_by_what_they_are_about()
    {
        var day = Quiet with { Games = [Game("B", Now.AddHours(1)), Game("A", Now.AddHours(1))], Places = [new("B", "plate", null), new("A", "plate", null)] };
        Assert.Equal(["A", "B"], Agenda.Of(day).Select(m => m.About));
    }
}
