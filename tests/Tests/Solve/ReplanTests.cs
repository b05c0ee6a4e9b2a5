using Umpirage.District.Calendar;
using Umpirage.District.Demo;
using Umpirage.Solve;
using Umpirage.Tests.Calendar;
using static Umpirage.Tests.Calendar.Tiny;

namespace Umpirage.Tests.Solve;

public class ReplanTests(ITestOutputHelper output)
{
    private static Schedule After(Schedule before, Replan plan) => new Schedule(before.Surroundings.Closed([WetNight.Rain]), before.All).With([.. plan.Moves.Select(m => m.To), .. plan.Without.Select(w => w.Game with { Status = GameStatus.RainedOut })]);

    [Fact]
    public void A_wet_night_of_27_games_finds_27_new_places_and_moves_nothing_else()
    {
        var season = WetNight.Season();
        var asked = WetNight.Asked(season);
        Assert.Equal(27, asked.MustMove.Count);
        var plan = Replanner.Plan(asked, new(Seconds: 60));
        output.WriteLine($"{plan.Moves.Count} moved, at least {plan.AtLeast}, proven {plan.Proven}, {plan.Rounds} rounds, {plan.Took.TotalSeconds:0.0} s, {plan.Moves.Sum(m => m.DaysLater)} days, {plan.Wishes.Count} wishes");
        Assert.Empty(plan.Without);
        Assert.Equal(asked.MustMove.Select(g => g.Key).Order(), plan.Moves.Select(m => m.From.Key).Order());
        Assert.Equal((27, 27, true), (plan.Moves.Count, plan.AtLeast, plan.Proven));
        // the checker, not the solver, says that nothing hard is broken but the two faults the season has on purpose
        Assert.Equal(["W08-BB1314-01", "W08-SB10U-13"], Checking.Of(After(season, plan)).Where(v => v.Hard).Select(v => v.About[0].Key).Order());
        foreach (var move in plan.Moves)
        {
            var window = asked.Window(move.From);
            Assert.InRange(move.To.Day, window.From, window.Until);
            Assert.NotEqual(WetNight.Thursday, move.To.Day);
        }
        var again = Replanner.Plan(WetNight.Asked(WetNight.Season()), new(Seconds: 60));
        Assert.Equal(plan.Moves, again.Moves);
    }

    /// <summary>Played games that make nine o'clock a usual start on Saturdays on the one diamond of 80 ft.</summary>
    private static ScheduledGame[] Past => [.. new[] { -21, -28, -35 }.Select(d => Game($"u{d}", Base14, "EF", "mill-3", At(9, days: d), GameStatus.Played))];

    private static readonly Blackout Mud = new(BlackoutOf.Park, "mill", new(2026, 5, 16), new(2026, 5, 16), "mud");

    [Fact]
    public void A_game_goes_to_the_first_place_of_its_window()
    {
        var asked = Replanning.Of(new(World(), [.. Past, Game("1", Base14, "AB", "mill-3", At(9))]), [Mud], At(6), []);
        var move = Assert.Single(Replanner.Plan(asked, new()).Moves);
        Assert.Equal((At(9, days: 7), "mill-3", GameStatus.Moved, "mud"), (move.To.Start, move.To.Diamond, move.To.Status, move.Reason));
    }

    [Fact]
    public void Another_game_makes_room_only_when_there_is_no_other_place()
    {
        var asked = Replanning.Of(new(World(), [.. Past, Game("1", Base14, "AB", "mill-3", At(9)), Game("2", Base14, "CD", "mill-3", At(9, days: 7)), Game("3", Base14, "EF", "mill-3", At(9, days: 14))]), [Mud], At(6), []);
        var plan = Replanner.Plan(asked, new());
        Assert.Empty(plan.Without);
        Assert.Equal((2, 2, true), (plan.Moves.Count, plan.AtLeast, plan.Proven));
        Assert.Equal(["mud", "makes room"], plan.Moves.OrderBy(m => m.From.Key).Select(m => m.Reason));
        Assert.Empty(asked.NewlyBroken(asked.Schedule.With([.. plan.Moves.Select(m => m.To)])));
    }

    [Fact]
    public void A_game_without_any_place_is_named_with_what_stands_against_it()
    {
        Blackout always = new(BlackoutOf.Park, "mill", new(2026, 5, 16), new(2026, 6, 30), "new fence");
        var plan = Replanner.Plan(Replanning.Of(new(World(), [.. Past, Game("1", Base14, "AB", "mill-3", At(9))]), [always], At(6), []), new());
        Assert.Empty(plan.Moves);
        var none = Assert.Single(plan.Without);
        // a make-up within 14 days (common practice, no source): two Saturdays with one slot each
        Assert.Equal(("1", 2, new DateOnly(2026, 5, 17), new DateOnly(2026, 5, 30)), (none.Game.Key, none.Slots, none.From, none.Until));
        Assert.Equal([("no game on a closed day", 2)], none.Why);
    }

    [Fact]
    public void What_the_solver_does_not_know_the_checker_tells_it()
    {
        // three games of one team, three free slots on the next Saturday: a third game on one day is not allowed at 12U (one community youth code, 2022, common practice, no source)
        ScheduledGame[] past = [.. new[] { 9, 12, 15 }.SelectMany(h => new[] { -21, -28, -35 }.Select(d => Game($"u{h}{d}", Soft12, "EF", "common-1", At(h, days: d), GameStatus.Played)))];
        Blackout wet = new(BlackoutOf.District, "district", new(2026, 5, 15), new(2026, 5, 16), "rain");
        Blackout others = new(BlackoutOf.Park, "mill", new(2026, 5, 17), new(2026, 6, 30), "new fence");
        var asked = Replanning.Of(new(World(closed: [others]), [.. past, Game("1", Soft12, "AB", "common-1", At(9)), Game("2", Soft12, "AC", "common-1", At(12)), Game("3", Soft12, "AD", "mill-1", At(17, days: -1))]), [wet], At(6, days: -1), []);
        var plan = Replanner.Plan(asked, new());
        Assert.Empty(plan.Without);
        Assert.True(plan.Rounds > 1);
        Assert.Equal(2, plan.Moves.Count(m => m.To.Day == new DateOnly(2026, 5, 23)));
        Assert.Empty(asked.NewlyBroken(asked.Schedule.With([.. plan.Moves.Select(m => m.To)])));
    }

    [Fact]
    public void When_it_is_stopped_the_last_good_plan_stands()
    {
        using var stop = new CancellationTokenSource();
        stop.Cancel();
        var asked = Replanning.Of(new(World(), [.. Past, Game("1", Base14, "AB", "mill-3", At(9))]), [Mud], At(6), []);
        var plan = Replanner.Plan(asked, new(), stop.Token);
        Assert.Single(plan.Moves);
        Assert.False(plan.Proven);
    }

    [Theory]
    // 2 hours' notice, half the fee when late, the whole when the crew had come: league practice, no source
    [InlineData(6, 0, null), InlineData(7, 0, null), InlineData(7, 1, "half the fee"), InlineData(8, 29, "half the fee"), InlineData(8, 30, "the whole fee"), InlineData(9, 0, "the whole fee")]
    public void Fees_go_by_the_notice(int hour, int minute, string? owed)
    {
        var asked = Replanning.Of(new(World(), [.. Past, Game("1", Base14, "AB", "mill-3", At(9))]), [Mud], At(hour, minute), []);
        var plan = Replanner.Plan(asked, new());
        var young = Umpirage.District.People.Person.Of("y", "Finn", "Lark", Umpirage.District.People.AgeBand.From13To15, new(2029, 1, 1), null, null, null, [])!;
        var after = CallingOff.Of(asked.Schedule, plan, [new("1", "plate", "u"), new("1", "base", "y"), new("1", "base 2", null)], new Dictionary<string, Umpirage.District.People.Person> { ["y"] = young },
            [new("m", Umpirage.District.People.Role.Manager, "", "A-BB 13-14")], [new("y", "mother")], [new("u", DayOfWeek.Saturday, new(9, 0), new(11, 0))], At(hour, minute));
        Assert.Equal(owed is null ? [] : new[] { ("base", "y", owed), ("plate", "u", owed) }, after.Fees.Select(f => (f.Place, f.Person, f.Share)));
        // nobody writes to a minor
        Assert.Equal(["m", "mother", "u"], Assert.Single(after.Notices).Tell);
        Assert.Equal([("y", false), ("u", true)], after.ToAsk.Select(a => (a.Person, a.FreeThen)));
    }
}
