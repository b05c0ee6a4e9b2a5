using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.People;

namespace Umpirage.Tests.Crews;

/// <summary>Substitutes, forecast, fairness and visits on small plans.</summary>
public class AnswerTests
{
    private static ScheduledGame Twelve(string key, DateTime start, string diamond = "mill-1") => Town.Game(key, start, "BB 11-12", diamond);

    [Fact]
    public void Who_sits_elsewhere_could_be_moved_and_it_is_told_what_falls_open()
    {
        var plan = Town.Plan(Town.With([Twelve("a", Town.At(9)), Twelve("b", Town.At(9), "mill-2")], ("b", "base", "ann")));
        var ann = Subs.For(plan, plan.Game("a")!, "plate", new()).Single(s => s.Person.Key == "ann");
        Assert.Equal(Standby.Moved, ann.Standing);
        Assert.Equal(("b", "base"), (ann.Opens[0].Game.Key, ann.Opens[0].Place));
        // from one diamond of the park to the next: five minutes (common practice, no source)
        Assert.Equal(5, ann.Minutes);
        // once the other game has begun she cannot be taken off it
        Assert.Equal(Standby.Backup, Subs.For(plan, plan.Game("a")!, "plate", new(Town.At(9, 5))).Single(s => s.Person.Key == "ann").Standing);
    }

    [Fact]
    public void A_yes_gives_no_reason_and_a_no_gives_all()
    {
        var plan = Town.Plan(Town.With([Town.Game("g", Town.At(20))]));
        Assert.True(WhyNot.Of(plan, plan.Person("ben")!, plan.Game("g")!, "plate").May);
        var dan = WhyNot.Of(plan, plan.Person("dan")!, plan.Game("g")!, "plate");
        Assert.Equal(["adult coordinator", "youth curfew"], dan.Reasons.Select(r => r.Constraint));
        Assert.Null(dan.Instead);
        // somebody who is no umpire at all is told so
        Assert.Contains("no umpire: no grade on record", WhyNot.Of(plan, plan.Person("eve")!, plan.Game("g")!, "plate").Reasons.Select(r => r.Said));
    }

    [Fact]
    public void Giving_a_place_may_break_another_of_the_same_day()
    {
        var plan = Town.Plan(Town.With([Twelve("a", Town.At(8)), Twelve("b", Town.At(11)), Twelve("c", Town.At(14)), Twelve("d", Town.At(17))], ("b", "base", "ann"), ("c", "base", "ann"), ("d", "base", "ann")));
        var reason = Assert.Single(WhyNot.Of(plan, plan.Person("ann")!, plan.Game("a")!, "base").Reasons);
        Assert.Equal(("d", "games a day"), (reason.Game, reason.Constraint));
    }

    [Fact]
    public void The_forecast_tells_what_a_day_move_would_fill()
    {
        // two games at once on Saturday and none on Sunday: two umpires, both free on both days
        var records = Town.With([Twelve("a", Town.At(9)), Twelve("b", Town.At(9), "mill-2")]) with { Officials = [new("ann", Grade.Plate, 2, 2010), new("ben", Grade.Plate, 2, 2010)] };
        var forecast = Forecast.Of(Town.Plan(records), new(2026, 5, 11));
        Assert.Equal((4, 2, 2), (forecast.Required, forecast.Filled, forecast.Short));
        Assert.Empty(forecast.Moves);
        // with a game on Sunday already there is a night to move to
        var sunday = Forecast.Of(Town.Plan(records with { Games = [.. records.Games, Town.Game("s", Town.At(9).AddDays(1))] }), new(2026, 5, 11));
        Assert.Equal((5, 3), (sunday.Required, sunday.Filled));
        var move = sunday.Moves[0];
        Assert.Equal((Town.Saturday, Town.Saturday.AddDays(1), 1), (move.From, move.To, move.Gains));
        Assert.Equal((5, 3), (sunday.Leagues[0].Required, sunday.Leagues[0].TwoGameVolunteers));
    }

    [Fact]
    public void Shares_are_games_over_games_offered()
    {
        var plan = Town.Plan(Town.With([Twelve("a", Town.At(9)), Twelve("b", Town.At(12))], ("a", "plate", "ben"), ("b", "base", "ben"), ("a", "base", "ann")));
        var fairness = Fairness.Of(plan, new(2026, 5, 11), new(2026, 5, 17));
        var ben = fairness.Shares.Single(s => s.Person.Key == "ben");
        Assert.Equal((2, 1, 3.0, 2.0 / 3), (ben.Games, ben.Plates, ben.Offered, ben.Share));
        // shares 0, 0, 1/3, 2/3: mean a quarter, variance (1/16 + 1/16 + 1/144 + 25/144) / 4
        Assert.Equal(0.25, fairness.Mean, 12);
        Assert.Equal(Math.Sqrt((1.0 / 16 + 1.0 / 16 + 1.0 / 144 + 25.0 / 144) / 4), fairness.Spread, 12);
    }

    [Fact]
    public void Who_was_not_seen_longest_comes_first_with_the_next_chance_to_watch()
    {
        var games = new[] { Twelve("a", Town.At(9).AddDays(-8)), Twelve("b", Town.At(9).AddDays(-1)), Twelve("c", Town.At(9).AddDays(7)) };
        var records = Town.With(games, ("a", "plate", "ann"), ("b", "plate", "ann"), ("c", "plate", "ann"), ("a", "base", "ben"), ("b", "base", "ben")) with
        {
            Visits = [new("ann", Position.Plate, new(2026, 5, 10), "ben")], Roles = [new("ben", Role.Trainer, "", "")],
        };
        var unseen = Unseen.Of(Town.Plan(records), Town.Saturday.ToDateTime(default));
        Assert.Equal([("ben", Position.Base, 2, (DateOnly?)null), ("ann", Position.Plate, 1, new DateOnly(2026, 5, 10))], unseen.Take(2).Select(u => (u.Person.Key, u.Position, u.Games, u.LastSeen)));
        Assert.Equal(("c", "ben"), (unseen[1].Next!.Key, unseen[1].By.Single().Key));
        // whose child plays in the game does not watch it
        var tied = records with { Interests = [new("ben", InterestOf.Team, games[2].Home, "child plays there")] };
        Assert.Empty(Unseen.Of(Town.Plan(tied), Town.Saturday.ToDateTime(default))[1].By);
    }

    /// <summary>A tenth of a degree of latitude: 11.12 km on a sphere of 6371.0088 km (IUGG mean radius).</summary>
    [Fact]
    public void Kilometres_are_great_circle() => Assert.Equal(6371.0088 * 0.1 * Math.PI / 180, Earth.Kilometres(41.4, -88.1, 41.5, -88.1), 6);
}
