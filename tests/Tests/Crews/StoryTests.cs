using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.People;

namespace Umpirage.Tests.Crews;

/// <summary>Three moments of the demonstration's Saturday. Expected values are typed from the stories, workload policy W1 before them.</summary>
public class StoryTests
{
    /// <summary>At 61, two plates done, the second over at 13:35, asked for a third at 14:00; 94 F and 50 % give a heat index of 102.9 (Rothfusz regression).</summary>
    [Fact]
    public void A_third_game_today()
    {
        var plan = Demo.Plan(102.9);
        var (odile, game) = (plan.Person("umpire-f5")!, plan.Game("W06-BB910-10")!);
        var why = WhyNot.Of(plan, odile, game, "plate");
        Assert.False(why.May);
        Assert.Equal(["plates a day", "break between games"], why.Reasons.Select(r => r.Constraint));
        Assert.Contains("more than 2 games at the plate on one day", why.Reasons[0].Said);
        Assert.Contains("45 min", why.Reasons[1].Said);
        Assert.EndsWith(": 25 min", why.Reasons[1].Said);
        // no bar from the heat, and how near it is
        Assert.Equal("heat index 102.9 F: 0.1 below the danger band, which begins at 103", why.Heat);
        Assert.Equal(new InsteadAt(Position.Base, Town.At(14, 20)), why.Instead);
        // two legal plates, and an exchange where the partner takes the plate
        var legal = Subs.For(plan, game, "plate", new()).Where(s => s.Standing == Standby.Legal).Take(2).ToList();
        Assert.Equal(2, legal.Count);
        Assert.All(legal, s => Assert.Empty(New(plan, plan.With(game, "plate", s.Person))));
        Assert.All(Swap.For(plan, odile, game, "plate"), s => Assert.Empty(New(plan, plan.With(s.With.Game, s.With.Place, null).With(game, "plate", s.With.Person).With(s.With.Game, s.With.Place, odile))));
    }

    /// <summary>The trap: 102.9 is not 103. At 103 one plate is the most, and the second of the morning is one too many already.</summary>
    [Fact]
    public void A_tenth_more_and_the_heat_bars_the_second_plate()
    {
        var hot = Demo.Plan(103);
        Assert.Contains(CrewCheck.All(hot), b => b.Person == "umpire-f5" && b.Game == "W06-BB1112-01" && b.Constraint == "plates a day" && b.Said.Contains("heat index 103.0 F"));
    }

    private static readonly Dictionary<string, int> Away = new() { ["umpire-f9-p"] = 14, ["umpire-f9-q"] = 5, ["umpire-f9-r"] = 9, ["umpire-f9-s"] = 22, ["umpire-f9-t"] = 6, ["umpire-f9-u"] = 11 };

    /// <summary>Nobody is there at 17:40 for 18:00. P comes for the plate, S for the bases at 18:02; not Q, R and T; U stands by from 18:10.</summary>
    [Fact]
    public void Nobody_here_at_twenty_to_six()
    {
        var plan = Demo.Plan();
        var call = CallUp.Of(plan, plan.Game("S-F9")!, new(Town.At(17, 40), Away, Away.Keys));
        Assert.Equal([("plate", "umpire-f9-p", Town.At(17, 54)), ("base", "umpire-f9-s", Town.At(18, 2))], call.Called.Select(c => (c.Place, c.Who.Person.Key, c.Who.Arrives!.Value)));
        Assert.Empty(call.StillOpen);
        Assert.Equal(Town.At(18, 2), call.OneUmpireUntil);
        Assert.Null(call.StartsLate);
        // P: the third game and the second plate of the day, nothing later
        var p = call.Called[0].Who.Person;
        Assert.Equal((2, 1), (plan.DayOf(p, Town.Saturday).Count, plan.DayOf(p, Town.Saturday).Count(g => g.IsPlate)));
        Assert.Empty(call.Called[0].Who.Later);
        var u = Assert.Single(call.Backups);
        Assert.Equal(("umpire-f9-u", Town.At(18, 10)), (u.Person.Key, u.Arrives));
        Assert.Equal(["break between games"], u.Reasons.Select(r => r.Constraint));
        var no = call.Rejected.ToDictionary(s => s.Person.Key, s => s.Reasons.Select(r => r.Constraint).ToList());
        Assert.Equal(["umpire-f9-q", "umpire-f9-r", "umpire-f9-t"], no.Keys.Order());
        Assert.Equal(["age gap", "adult coordinator", "never with one adult alone", "certificate"], no["umpire-f9-q"]);
        Assert.Equal(["interest"], no["umpire-f9-r"]);
        Assert.Equal(["clearance"], no["umpire-f9-t"]);
        Assert.Equal("background check ran out 2026-05-14", call.Rejected.Single(s => s.Person.Key == "umpire-f9-t").Reasons[0].Said);
    }

    /// <summary>A 14-year-old on the bases: with a named adult who is no coach; without one, not. And the next game is beside a mentor.</summary>
    [Fact]
    public void A_youth_umpire_has_an_adult_at_the_game_and_then_a_mentor()
    {
        var plan = Demo.Plan();
        var game = plan.Game("W06-BB910-12")!;
        Assert.Equal("coordinator-f12", game.Coordinator!.Key);
        Assert.DoesNotContain(CrewCheck.All(plan), b => b.Person == "youth-f12" && b.Hold == Hold.Safety);
        var without = CrewPlan.Of(Demo.Records with { Coordinations = [.. Demo.Records.Coordinations.Where(c => c.Game != game.Key)] }, Town.Codes);
        Assert.Equal("no adult coordinator is named for the game", CrewCheck.All(without).First(b => b.Person == "youth-f12" && b.Hold == Hold.Safety).Said);
        // from the day after on only beside umpire-001
        var after = CrewPlan.Of(Demo.Records with { Pairings = [.. Demo.Records.Pairings, new("youth-f12", "umpire-001", PairingKind.Mentor, new(2026, 5, 17), new(2026, 6, 30))] }, Town.Codes);
        var next = after.Games.First(g => g.Day == new DateOnly(2026, 5, 23) && g.Division.Key == "BB 9-10" && g.Coordinator is not null && g.End.Hour < 20);
        Assert.Contains(WhyNot.Of(after, after.Person("youth-f12")!, next, "youth base").Reasons, r => r.Constraint == "mentor");
        Assert.DoesNotContain(WhyNot.Of(after.With(next, "plate", after.Person("umpire-001")), after.Person("youth-f12")!, next, "youth base").Reasons, r => r.Constraint == "mentor");
    }

    /// <summary>Warn the head coach, then the person leaves, then whoever may ends the game; report and welfare check within 24 h (youth umpire programmes | common practice).</summary>
    [Fact]
    public void What_the_coordinator_does_stands_in_the_code()
    {
        var youth = Demo.Plan().Game("W06-BB910-12")!.Code.Youth;
        Assert.Equal("the adult coordinator", youth.DealtWithBy);
        Assert.Equal(["warn the head coach", "have the person removed", "ask who may to suspend or forfeit"], youth.Ladder.Select(s => s.Step));
        Assert.All(youth.Ladder, s => Assert.NotNull(s.How));
        Assert.Equal(("does not go on with this crew", "call for help", "the home league's official"), (youth.Without.Step, youth.Caution.Step, youth.WhoMayEnd));
        Assert.Equal((24.0, 24.0, true), (youth.ReportHours, youth.WelfareHours, youth.ThenBesideAMentor));
    }

    private static IEnumerable<Breach> New(CrewPlan before, CrewPlan after) => CrewCheck.All(after).Where(b => b.Hold != Hold.Wish).Except(CrewCheck.All(before));
}
