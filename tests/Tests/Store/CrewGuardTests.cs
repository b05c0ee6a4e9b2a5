using System.Text;
using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.People;
using Umpirage.Solve.Crews;
using Umpirage.Store;
using Umpirage.Store.Files;

namespace Umpirage.Tests.Store;

/// <summary>A crew that breaks a safety rule cannot be saved: not by a file, not by a page's save, not by a restore. Everything else is left alone.</summary>
public class CrewGuardTests
{
    private static OwnStore Town(Kept kept)
    {
        var own = OwnStore.Empty(kept);
        using var store = own.Open();
        var t = Crews.Town.Empty;
        Seed.Put(store,
        [
            .. t.Leagues, .. t.Divisions, .. t.Parks, .. t.Diamonds, .. t.Teams, .. t.People, .. t.Roles, .. t.Officials, .. t.Clearances, .. t.Certificates, .. t.Hours, .. t.Guardianships, .. t.Approvals,
            Crews.Town.Game("g", Crews.Town.At(17)), Crews.Town.Game("old", Crews.Town.At(17).AddDays(-7)), Crews.Town.Game("late", Crews.Town.At(20), diamond: "mill-2"), new Coordination("late", "eve"),
            new Assignment("g", "plate", null), new Assignment("g", "youth base", null), new Assignment("old", "youth base", null), new Assignment("late", "youth base", null),
        ]);
        return own;
    }

    private static DistrictStore Open(OwnStore own)
    {
        var store = own.Open();
        store.Codes = () => Shelf.Codes;
        return store;
    }

    private static Imported Take(DistrictStore store, string text, FileKind? kind = null) => Import.Run(store, kind ?? new CrewFile(), Encoding.UTF8.GetBytes(text), dryRun: false);

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void A_file_that_gives_a_minor_a_game_without_a_coordinator_is_refused_whole(Kept kept)
    {
        using var own = Town(kept);
        var before = Snapshot.Of(own);
        using (var store = Open(own))
        {
            var refused = Take(store, "game,place,person\ng,plate,ann\ng,youth base,dan\n");
            Assert.Equal([3, 3], refused.Faults.Select(f => f.Row));
            Assert.Equal("row 3, person: found 'dan'; allowed is for youth base of g nobody whom a safety rule bars: adult coordinator, no adult coordinator is named for the game (youth umpire programmes: a named adult at the game (common practice, no source))", refused.Faults[0].ToString());
            Assert.Equal("never with one adult alone", new CrewConstraintName(refused.Faults[1].Allowed).Name);
        }
        Assert.Equal(before, Snapshot.Of(own));
        using var again = Open(own);
        Assert.True(Take(again, "game,person\ng,eve\n", new CoordinatorFile()).Fine);
        Assert.True(Take(again, "game,place,person\ng,plate,ann\ng,youth base,dan\n").Fine);
        // and now the coordinator cannot be taken away from under the child by naming the umpire
        Assert.False(Take(again, "game,person\ng,ann\n", new CoordinatorFile()).Fine);
    }

    private sealed record CrewConstraintName(string Allowed)
    {
        public string Name => CrewConstraints.All.Single(c => Allowed.Contains(": " + c.Name + ",")).Name;
    }

    [Fact]
    public void A_save_is_refused_and_leaves_nothing()
    {
        using var own = Town(Kept.Sqlite);
        using (var store = Open(own))
        {
            store.Put(new Assignment("late", "youth base", "dan"));
            var bars = Assert.Throws<UnsafeCrewException>(() => store.SaveChanges()).Breaches;
            Assert.Equal("youth curfew", Assert.Single(bars).Constraint);
        }
        using (var look = own.Open()) Assert.Null(look.Assignments.Find("late", "youth base")!.Person);
        using var may = Open(own);
        // from 16 on a game may end at ten
        may.Put(new Assignment("late", "youth base", "cora"));
        may.SaveChanges();
        // nobody without clearances
        may.Put(new Assignment("g", "plate", "eve"));
        Assert.Contains(Assert.Throws<UnsafeCrewException>(() => may.SaveChanges()).Breaches, b => b.Constraint == "clearance");
    }

    /// <summary>Between the search and the save the coordinator was withdrawn: what was right when it was found is not saved.</summary>
    [Fact]
    public void A_plan_that_was_safe_when_it_was_found_and_no_longer_is_is_refused_whole()
    {
        using var own = Town(Kept.Sqlite);
        using (var first = Open(own)) { first.Put(new Coordination("g", "eve")); first.SaveChanges(); }
        using (var store = Open(own))
        {
            var plan = CrewPlan.Of(CrewReader.Read(store), UmpiresCodes.For(Shelf.Codes));
            List<CrewGame> games = [plan.Game("g")!];
            var found = CrewSearch.Find(new(plan, games, Seconds: 5, Workers: 1)).Plan;
            Assert.Contains(found.CrewOf(games[0]), s => s.Person.IsMinor);
            using (var meanwhile = Open(own)) { meanwhile.Coordinations.Remove(meanwhile.Coordinations.Find("g")!); meanwhile.SaveChanges(); }
            foreach (var place in found.Assignments(games)) store.Put(place);
            Assert.Contains(Assert.Throws<UnsafeCrewException>(() => store.SaveChanges()).Breaches, b => b.Constraint == "adult coordinator");
        }
        using var look = own.Open();
        Assert.All(look.Assignments.Where(a => a.Game == "g").ToList(), a => Assert.Null(a.Person));
    }

    [Fact]
    public void What_is_over_is_left_as_it_was()
    {
        using var own = Town(Kept.Sqlite);
        using var store = Open(own);
        store.Put(new Assignment("old", "youth base", "dan"));
        store.SaveChanges();
        Assert.Equal("dan", store.Assignments.Find("old", "youth base")!.Person);
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void A_game_moved_from_under_its_crew_opens_the_place(Kept kept)
    {
        using var own = Town(kept);
        using (var store = Open(own))
        {
            store.Put(new Coordination("g", "eve"));
            store.Put(new Assignment("g", "youth base", "dan"));
            store.SaveChanges();
            store.Put(store.Games.Find("g")! with { Start = Crews.Town.At(20, 30), Status = GameStatus.Moved, Sequence = 1 });
            store.SaveChanges();
        }
        using var look = own.Open();
        Assert.Null(look.Assignments.Find("g", "youth base")!.Person);
        Assert.Contains(look.Trail.ToList(), t => t.What == "Assignment" && t.Deed == "changed" && t.After!.Contains("\"Person\":null"));
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void A_restore_opens_what_safety_rules_bar_and_keeps_the_rest(Kept kept)
    {
        using var own = Town(kept);
        var file = own.PathOf("backup.zip");
        using (var store = own.Open())
        {
            // a store without the codes at hand holds nothing against them: so an unsafe plan can get into a backup
            foreach (var seat in new[] { new Assignment("g", "plate", "ann"), new Assignment("g", "youth base", "dan"), new Assignment("old", "youth base", "dan") }) store.Put(seat);
            store.SaveChanges();
            Backup.Write(store, file);
        }
        using (var store = Open(own))
        {
            var (records, faults) = Restore.Run(store, file);
            Assert.Empty(faults);
            Assert.True(records > 0);
        }
        using var look = own.Open();
        Assert.Equal(("ann", (string?)null, "dan"), (look.Assignments.Find("g", "plate")!.Person, look.Assignments.Find("g", "youth base")!.Person, look.Assignments.Find("old", "youth base")!.Person));
        Assert.EndsWith("1 places opened that safety rules bar", look.Trail.Where(t => t.Deed == "restored").AsEnumerable().Last().After);
    }

    [Fact]
    public void Everybody_who_opens_a_store_for_people_hands_the_codes_over()
    {
        foreach (var file in new[] { Folder.Of("src", "Cli", "DistrictOf.cs"), Folder.Of("src", "Web", "Desk.cs") }) Assert.Contains("store.Codes = ", File.ReadAllText(file));
    }
}
