using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.Solve.Crews;
using Umpirage.Store;

namespace Umpirage.Tests.Store;

/// <summary>Found crews are written whole, or not at all when anything changed since, when safety bars them, or when nobody takes them.</summary>
public class CrewKeepingTests
{
    private static readonly DateOnly Monday = new(2026, 5, 18);

    private static DistrictStore Open(OwnStore own)
    {
        var store = own.Open();
        store.Codes = () => Shelf.Codes;
        return store;
    }

    private static CrewTask Task(DistrictStore store) =>
        CrewTask.Week(CrewPlan.Of(CrewReader.Read(store), UmpiresCodes.For(Shelf.Codes)), Monday, Umpirage.District.Demo.Oslemoor.Now) with { Seconds = 3 };

    private static IEnumerable<string> Seats(CrewPlan plan, CrewTask task) => task.Games.SelectMany(plan.CrewOf).Select(s => $"{s.Game.Key}/{s.Place}={s.Person.Key}").Order();

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void A_found_week_is_written_whole_and_only_once(Kept kept)
    {
        using var own = OwnStore.Oslemoor(kept);
        CrewTask task;
        CrewResult result;
        using (var store = Open(own))
        {
            task = Task(store);
            result = CrewSearch.Find(task);
            Assert.Empty(CrewKeeping.Keep(store, task.Plan, result.Plan, task.Games));
        }
        using var look = Open(own);
        var now = CrewPlan.Of(CrewReader.Read(look), UmpiresCodes.For(Shelf.Codes));
        Assert.Equal(Seats(result.Plan, task), Seats(now, task));
        Assert.True(Seats(now, task).Count() > 150);
        // the same plan again is refused: the crews are no longer those it was made for
        var before = Snapshot.Of(own);
        Assert.NotEmpty(CrewKeeping.Keep(look, task.Plan, result.Plan, task.Games));
        Assert.Equal(before, Snapshot.Of(own));
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void Nothing_is_written_when_a_crew_or_a_game_was_changed_meanwhile(Kept kept)
    {
        using var own = OwnStore.Oslemoor(kept);
        using var store = Open(own);
        var task = Task(store);
        var found = CrewSearch.Find(task with { Seconds = 1 }).Plan;
        var (one, two) = (task.Games[0], task.Games[1]);
        using (var other = own.Open())
        {
            other.Put(new Assignment(one.Key, "plate", "umpire-001"));
            other.Put(two.Game with { Start = two.Start.AddMinutes(30), Sequence = two.Game.Sequence + 1 });
            other.SaveChanges();
        }
        var before = Snapshot.Of(own);
        var faults = CrewKeeping.Keep(store, task.Plan, found, task.Games);
        Assert.Equal([$"{two.Key} was changed since; search again", $"the plate of {one.Key} was changed since: umpire-001 has it, and nobody had it when the search began; search again"], faults);
        Assert.Equal(before, Snapshot.Of(own));
    }

    [Fact]
    public void A_plan_against_safety_is_refused_whole()
    {
        using var own = OwnStore.Oslemoor(Kept.Sqlite);
        using var store = Open(own);
        var task = Task(store);
        var found = CrewSearch.Find(task with { Seconds = 1 }).Plan;
        var (game, minor) = (task.Games.First(g => g.Coordinator is null), found.Officials.First(p => p.IsMinor));
        var before = Snapshot.Of(own);
        Assert.Contains("adult coordinator", Assert.Single(CrewKeeping.Keep(store, task.Plan, found.With(game, CrewPlace.Plate, minor), task.Games)));
        Assert.Equal(before, Snapshot.Of(own));
    }

    /// <summary>
    /// Cancelled at any moment or out of time, a search hands back a plan that may be kept as it is: the store takes it whole, it breaks no safety rule and no
    /// rule, and it covers no less than the crews that stood.
    /// </summary>
    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void A_search_that_is_cancelled_or_runs_out_of_time_hands_back_a_plan_that_stands(Kept kept)
    {
        using var own = OwnStore.Oslemoor(kept);
        var filled = 0;
        foreach (var (after, seconds) in ((int, double)[])[(0, 3), (50, 3), (400, 3), (1000, 3), (2000, 3), (60000, 0.2)])
        {
            using var stop = new CancellationTokenSource(after);
            using var store = Open(own);
            var task = Task(store) with { Seconds = seconds };
            var result = CrewSearch.Find(task, stop.Token);
            Assert.Empty(CrewKeeping.Keep(store, task.Plan, result.Plan, task.Games));
            using var look = Open(own);
            var now = CrewPlan.Of(CrewReader.Read(look), UmpiresCodes.For(Shelf.Codes));
            Assert.Equal(Seats(result.Plan, task), Seats(now, task));
            Assert.DoesNotContain(CrewCheck.All(now, task.Games.Select(g => g.Key).ToHashSet()), b => b.Hold != Hold.Wish);
            var covered = Coverage.Of(now, [.. task.Games]).Filled;
            Assert.True(covered >= filled, $"stopped after {after} ms: {covered} places filled, {filled} were before");
            filled = covered;
        }
        Assert.True(filled > 150, $"{filled} places filled");
    }
}
