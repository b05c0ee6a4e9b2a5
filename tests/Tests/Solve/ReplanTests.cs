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
}
