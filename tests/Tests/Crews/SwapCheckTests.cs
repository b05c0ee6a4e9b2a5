using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.People;

namespace Umpirage.Tests.Crews;

/// <summary>Swaps on small plans: what they break, what has changed since they were asked, and who learns why.</summary>
public class SwapCheckTests
{
    private static readonly DateTime Morning = Town.At(7);

    private static ScheduledGame Twelve(string key, DateTime start, string diamond = "mill-1") => Town.Game(key, start, "BB 11-12", diamond);

    private static AskedSwap Asked(string person, string game, string place, string other, string? otherGame = null, string? otherPlace = null) =>
        new("s", person, game, place, other, otherGame, otherPlace, default, SwapState.Asked);

    [Fact]
    public void An_exchange_inside_one_crew_breaks_nothing()
    {
        var plan = Town.Plan(Town.With([Twelve("a", Town.At(9))], ("a", "plate", "ann"), ("a", "base", "ben")));
        var check = SwapCheck.Of(plan, Asked("ann", "a", "plate", "ben", "a", "base"), Morning);
        Assert.True(check.May);
        Assert.Empty(check.Wishes);
    }

    [Fact]
    public void Both_sides_are_looked_at_and_every_reason_is_told()
    {
        // Ann would have two games at once; Ben's third plate is one too many (workload policy W1: two plates a day)
        var plan = Town.Plan(Town.With([Twelve("a", Town.At(8)), Twelve("b", Town.At(11)), Twelve("c", Town.At(14)), Twelve("d", Town.At(11), "mill-2")],
            ("a", "plate", "ben"), ("b", "plate", "ben"), ("c", "plate", "ann"), ("d", "base", "ann")));
        var check = SwapCheck.Of(plan, Asked("ann", "c", "plate", "ben"), Morning);
        Assert.Equal([("ben", "plates a day")], check.Reasons.Select(r => (r.Person, r.Constraint)));
        var back = SwapCheck.Of(plan, Asked("ann", "c", "plate", "ben", "b", "plate"), Morning);
        Assert.Equal(["ann one game at a time"], back.Reasons.Select(r => $"{r.Person} {r.Constraint}").Distinct());
        Assert.False(back.May);
    }

    [Fact]
    public void A_swap_that_lost_its_ground_says_why()
    {
        var records = Town.With([Twelve("a", Town.At(9)), Twelve("b", Town.At(12)), Twelve("over", Town.At(9), "mill-2") with { Status = GameStatus.RainedOut }], ("a", "plate", "ann"), ("b", "plate", "ben"), ("over", "plate", "ann"));
        var plan = Town.Plan(records);
        string[] Stale(AskedSwap swap, DateTime? now = null) => [.. SwapCheck.Of(plan, swap, now ?? Morning).Stale];
        Assert.Empty(Stale(Asked("ann", "a", "plate", "ben", "b", "plate")));
        Assert.Equal("Ann Lark does not have the plate of Sat 16 May 12:00, BB 11-12, south BB 11-12 at north BB 11-12, Mill 1; somebody else has it", Assert.Single(Stale(Asked("ann", "b", "plate", "ben"))));
        Assert.EndsWith("; it is open", Assert.Single(Stale(Asked("ann", "a", "base", "ben"))));
        Assert.Equal("Sat 16 May 09:00, BB 11-12, south BB 11-12 at north BB 11-12, Mill 1 began at 9:00", Assert.Single(Stale(Asked("ann", "a", "plate", "ben"), Town.At(9))));
        Assert.Equal("the game over is not to be played", Assert.Single(Stale(Asked("ann", "over", "plate", "ben"))));
        Assert.Equal(["the game x is not to be played", "a swap names both the game and the place that come back, or neither", "'eve' is no umpire on record"], Stale(Asked("ann", "x", "plate", "eve", "b")));
        Assert.Equal(["nobody swaps with themselves"], Stale(Asked("ann", "a", "plate", "ann")));
    }

    [Fact]
    public void A_minor_takes_no_place_without_a_coordinator()
    {
        var plan = Town.Plan(Town.With([Town.Game("a", Town.At(9))], ("a", "plate", "ann")));
        var check = SwapCheck.Of(plan, Asked("ann", "a", "plate", "dan"), Morning);
        Assert.Contains("adult coordinator", check.Reasons.Select(r => r.Constraint));
        Assert.All(check.Reasons, r => Assert.Equal("dan", r.Person));
    }

    [Fact]
    public void An_umpire_reads_no_reasons_of_others_and_never_who_asked_to_be_kept_apart()
    {
        var records = Town.With([Twelve("a", Town.At(9)), Twelve("b", Town.At(12))], ("a", "plate", "ben"), ("b", "plate", "ann")) with { Pairings = [new("ben", "ann", PairingKind.Apart, Town.Saturday, Town.Saturday)] };
        var plan = Town.Plan(records);
        var apart = WhyNot.Of(plan, plan.Person("ann")!, plan.Game("a")!, "base");
        var told = apart.Reasons.Select(r => CrewWords.OwnReason(r, ["ann"])).ToList();
        Assert.NotEmpty(told);
        Assert.All(told, t => Assert.DoesNotContain("Ben", t));
        Assert.All(told, t => Assert.DoesNotContain("apart", t));
        var busy = Town.Plan(Town.With([Twelve("a", Town.At(9)), Twelve("b", Town.At(9), "mill-2")], ("a", "plate", "ann")));
        var cap = WhyNot.Of(busy, busy.Person("ann")!, busy.Game("b")!, "plate");
        Assert.Contains("one game at a time: on plate of a at 09:00 until 11:00", cap.Reasons.Select(r => CrewWords.OwnReason(r, ["ann"])));
    }
}
