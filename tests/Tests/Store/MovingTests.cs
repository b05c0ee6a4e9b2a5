using Microsoft.EntityFrameworkCore;
using Umpirage.District.Calendar;
using Umpirage.Store;

namespace Umpirage.Tests.Store;

/// <summary>A plan of moved games is written whole and taken back whole.</summary>
public class MovingTests
{
    private static Replan Plan(DistrictStore store)
    {
        var games = store.Games.AsNoTracking().ToDictionary(g => g.Key);
        return new([new(games["G-1"], games["G-1"] with { Diamond = "common-1", Start = new(2026, 5, 18, 17, 45, 0), Status = GameStatus.Moved }, true, "rain", 0)],
            [new(games["G-2"], new(2026, 5, 17), new(2026, 5, 30), 0, [])], 1, true, 0, 1, [], TimeSpan.Zero);
    }

    private static readonly Blackout Rain = new(BlackoutOf.District, "district", new(2026, 5, 16), new(2026, 5, 16), "rain");

    [Theory]
    [InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void A_plan_is_kept_and_taken_back_exactly(Kept kept)
    {
        using var own = OwnStore.OfHamlet(kept);
        List<ScheduledGame> before;
        string plan, back;
        using (var store = own.Open()) before = [.. store.Games.AsNoTracking().OrderBy(g => g.Key)];
        using (var store = own.Open())
        {
            (plan, var faults) = Moving.Keep(store, Plan(store), [Rain]);
            Assert.Empty(faults);
        }
        using (var store = own.Open())
        {
            var games = store.Games.AsNoTracking().ToDictionary(g => g.Key);
            Assert.Equal(before[0] with { Diamond = "common-1", Start = new(2026, 5, 18, 17, 45, 0), Status = GameStatus.Moved, Sequence = 1 }, games["G-1"]);
            Assert.Equal(before[1] with { Status = GameStatus.RainedOut, Sequence = 4 }, games["G-2"]);
            Assert.Equal(2, store.Moves.Count(m => m.Plan == plan && m.By == "tester"));
            Assert.Equal($"rain (plan {plan})", store.Blackouts.Single(b => b.Kind == BlackoutOf.District).Reason);
            (back, var faults) = Moving.TakeBack(store, plan);
            Assert.Empty(faults);
        }
        using (var store = own.Open())
        {
            // everything is as it was, but that the changes are counted: a calendar has to see the way back too
            Assert.Equal(before.Select(g => g.Key is "G-1" or "G-2" ? g with { Sequence = g.Sequence + 2 } : g), store.Games.AsNoTracking().OrderBy(g => g.Key));
            Assert.DoesNotContain(store.Blackouts.ToList(), b => b.Kind == BlackoutOf.District);
            Assert.All(store.Moves.Where(m => m.Plan == back), m => Assert.Equal(plan, m.TakesBack));
            Assert.Equal(4, store.Moves.Count());
            Assert.Contains($"taken back already, by '{back}'", Assert.Single(Moving.TakeBack(store, plan).Faults));
            // the way back can be taken back itself
            Assert.Empty(Moving.TakeBack(store, back).Faults);
            Assert.Equal("common-1", store.Games.AsNoTracking().Single(g => g.Key == "G-1").Diamond);
        }
    }

    [Fact]
    public void Nothing_is_written_when_a_game_was_changed_meanwhile()
    {
        using var own = OwnStore.OfHamlet(Kept.Sqlite);
        using var store = own.Open();
        var plan = Plan(store);
        using (var other = own.Open())
        {
            other.Put(other.Games.AsNoTracking().Single(g => g.Key == "G-2") with { Start = new(2026, 5, 16, 12, 0, 0) });
            other.SaveChanges();
        }
        var (_, faults) = Moving.Keep(store, plan, [Rain]);
        Assert.Equal("G-2 was changed since: it is moved at 2026-05-16 12:00 on common-1; make the plan anew", Assert.Single(faults));
        Assert.Empty(store.Moves);
        Assert.Equal(0, store.Games.AsNoTracking().Single(g => g.Key == "G-1").Sequence);
        Assert.DoesNotContain(store.Blackouts.ToList(), b => b.Kind == BlackoutOf.District);
        Assert.Equal("there is no plan 'x'; there is none", Assert.Single(Moving.TakeBack(store, "x").Faults));
    }

    [Fact]
    public void A_plan_whose_game_was_moved_since_is_not_taken_back()
    {
        using var own = OwnStore.OfHamlet(Kept.Sqlite);
        using var store = own.Open();
        var (plan, _) = Moving.Keep(store, Plan(store), []);
        store.Put(store.Games.AsNoTracking().Single(g => g.Key == "G-1") with { Start = new(2026, 5, 19, 17, 45, 0) });
        store.SaveChanges();
        var (_, faults) = Moving.TakeBack(store, plan);
        Assert.Equal("G-1 was changed since: it is moved at 2026-05-19 17:45 on common-1, and the plan left it moved at 2026-05-18 17:45 on common-1", Assert.Single(faults));
        Assert.Equal(2, store.Moves.Count());
    }
}
