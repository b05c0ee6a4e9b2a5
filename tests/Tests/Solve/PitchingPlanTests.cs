using Umpirage.District.Pitchers;
using Umpirage.Solve;
using Umpirage.Tests.Pitchers;

namespace Umpirage.Tests.Solve;

/// <summary>A plan covers what can be covered, keeps the code's limits by the ledger's own word, and says what is near an edge.</summary>
public class PitchingPlanTests
{
    private static readonly DateOnly Monday = new(2026, 5, 18);

    private static ComingGame Game(string address, int day, bool certain = true, int hour = 18)
    {
        var code = Arms.Code(address, Monday.AddDays(day));
        return new(new($"G{day}-{hour}", code.Code.Game, code.Code.Division, hour * 60), Monday.AddDays(day), code, certain);
    }

    private static Starter Fresh(string player, string address, params Appearance[] lines) =>
        new(Ledger.Of(player, lines.Select(l => l with { Player = player }), key => new PitchedGame(key, Arms.Code(address).Code.Game, Arms.Code(address).Code.Division, 540)), Arms.Code(address));

    /// <summary>Every load in order, asked of the ledger itself.</summary>
    private static void Allowed(PitchingPlan plan, IReadOnlyList<Starter> pitchers)
    {
        foreach (var pitcher in pitchers)
        {
            var ledger = pitcher.Ledger;
            foreach (var game in plan.Games)
            {
                if (game.Loads.SingleOrDefault(l => l.Player == ledger.Player) is not { } load) continue;
                var before = Eligible.Of(ledger, game.Game.Code, pitcher.Own, new(game.Game.Day, game.Game.Game));
                Assert.Equal(MayPitch.Yes, before.Answer);
                Assert.All(before.Rooms.Where(r => r.Unit == plan.Unit && r.Left is not null), r => Assert.InRange(load.Amount, 1, r.Left!.Value));
                var innings = plan.Unit == Unit.Innings ? load.Amount : (load.Amount + 14) / 15;
                var pitches = plan.Unit == Unit.Pitches ? load.Amount : 15 * innings;
                ledger = ledger.With(game.Game.Game, game.Game.Day, "OWL", new(pitches, pitches - 1, innings, 0, 3 * innings));
            }
        }
    }

    [Fact]
    public void Three_games_in_a_week_are_covered_by_four_arms_within_the_limits()
    {
        const string code = "baseball/12U";
        Starter[] pitchers = [Fresh("a", code), Fresh("b", code), Fresh("c", code), Fresh("d", code)];
        var plan = PitchingPlanner.Plan("OWL", pitchers, [Game(code, 0), Game(code, 2), Game(code, 4)], new(Seconds: 60));
        // six innings at 15 pitches (common practice, no source)
        Assert.All(plan.Games, g => Assert.Equal((90, 0), (g.Demand, g.Missing)));
        Assert.Equal(Unit.Pitches, plan.Unit);
        Allowed(plan, pitchers);
    }

    [Fact]
    public void What_cannot_be_covered_is_said_with_the_rule()
    {
        const string code = "baseball/12U";
        // 66 pitches and more call for four days of rest, and 85 are the limit of a day (youth guideline table, about 2015, published)
        Starter[] pitchers = [Fresh("a", code), Fresh("b", code, Arms.Line(Monday.AddDays(-1), pitches: 80))];
        var plan = PitchingPlanner.Plan("OWL", pitchers, [Game(code, 0)], new(Seconds: 60));
        var game = Assert.Single(plan.Games);
        Assert.Equal((85, 5), (Assert.Single(game.Loads).Amount, game.Missing));
        Assert.Equal("at the limit of 85 a day", game.Loads[0].Edge);
        Assert.Contains("rest after pitching R2d", Assert.Single(game.Out).Why);
        Allowed(plan, pitchers);
    }

    [Fact]
    public void A_certain_game_comes_before_a_likely_one()
    {
        const string code = "baseball/12U";
        Starter[] pitchers = [Fresh("a", code), Fresh("b", code)];
        // two arms on two days running: whoever throws 66 or more is out for four days, and so on down the table
        var plan = PitchingPlanner.Plan("OWL", pitchers, [Game(code, 0, certain: false), Game(code, 1)], new(Seconds: 60));
        Assert.Equal(0, plan.Games[1].Missing);
        Assert.True(plan.Games[0].Missing > 0);
        Allowed(plan, pitchers);
    }

    [Fact]
    public void Innings_are_counted_where_the_code_counts_innings()
    {
        const string code = "softball/12U+community";
        Starter[] pitchers = [Fresh("a", code), Fresh("b", code)];
        var plan = PitchingPlanner.Plan("OWL", pitchers, [Game(code, 0, hour: 9), Game(code, 0, hour: 14), Game(code, 1)], new(Seconds: 60));
        Assert.Equal(Unit.Innings, plan.Unit);
        // seven innings on one day call for a day of rest (one community youth code, 2022): six and six keep both for the next day
        Assert.All(plan.Games, g => Assert.Equal(0, g.Missing));
        Assert.All(pitchers, p => Assert.InRange(plan.Games.Take(2).SelectMany(g => g.Loads).Where(l => l.Player == p.Ledger.Player).Sum(l => l.Amount), 0, 12));
        Allowed(plan, pitchers);
    }

    [Fact]
    public void The_same_question_has_the_same_answer()
    {
        const string code = "baseball/12U";
        Starter[] pitchers = [Fresh("a", code), Fresh("b", code), Fresh("c", code)];
        IReadOnlyList<ComingGame> games = [Game(code, 0), Game(code, 3)];
        string Told(PitchingPlan plan) => string.Join(" ", plan.Games.SelectMany(g => g.Loads.Select(l => $"{g.Game.Game.Key} {l.Player} {l.Amount}")));
        Assert.Equal(Told(PitchingPlanner.Plan("OWL", pitchers, games, new(Seconds: 60))), Told(PitchingPlanner.Plan("OWL", pitchers, games, new(Seconds: 60))));
    }
}
