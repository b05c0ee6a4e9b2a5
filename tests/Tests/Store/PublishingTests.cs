using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.People;
using Umpirage.Solve.Crews;
using Umpirage.Store;
using Umpirage.Store.Files;

namespace Umpirage.Tests.Store;

/// <summary>What people were told of crews, what differs, who is to be told what, and crews that no search touches.</summary>
public class PublishingTests
{
    private static readonly DateOnly Monday = new(2026, 5, 11);
    private static readonly DateTime Now = Crews.Town.At(7);

    /// <summary>Two games on Saturday, Ann and Ben on the first, Ann alone on the second.</summary>
    private static OwnStore Town(Kept kept)
    {
        var own = OwnStore.Empty(kept);
        using var store = own.Open();
        var t = Crews.Town.Empty;
        Seed.Put(store,
        [
            .. t.Leagues, .. t.Divisions, .. t.Parks, .. t.Diamonds, .. t.Teams, .. t.People, .. t.Roles, .. t.Officials, .. t.Clearances, .. t.Certificates, .. t.Hours, .. t.Guardianships, .. t.Approvals,
            Crews.Town.Game("a", Crews.Town.At(9), "BB 11-12"), Crews.Town.Game("b", Crews.Town.At(14), "BB 11-12"),
            new Assignment("a", "plate", "ann"), new Assignment("a", "base", "ben"), new Assignment("b", "plate", "ann"), new Assignment("b", "base", null),
        ]);
        return own;
    }

    private static DistrictStore Open(OwnStore own)
    {
        var store = own.Open();
        store.Codes = () => Shelf.Codes;
        return store;
    }

    private static IReadOnlyList<PlaceChange> Pending(DistrictStore store) => [.. Publishing.Pending(CrewReader.Read(store), Monday, Now, DateTime.UtcNow).Where(c => c.Concerns)];

    private static string Told(DistrictStore store, DateTime at)
    {
        var records = CrewReader.Read(store);
        return string.Join('\n', CrewNotice.Of(records, [.. records.Published.Where(p => p.At == at)]).SelectMany(n => n.Lines.Select(l => $"{n.Person}: {l}")));
    }

    /// <summary>Publications lie at least a second apart: what is told together has the same second.</summary>
    private static DateTime Publish(DistrictStore store)
    {
        Thread.Sleep(1100);
        var (at, faults) = Publishing.Publish(store, Monday, Now);
        Assert.Empty(faults);
        return at;
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void Each_is_told_what_is_new_for_them_and_nothing_else(Kept kept)
    {
        using var own = Town(kept);
        using (var store = Open(own))
        {
            Assert.Equal(3, Pending(store).Count);
            Assert.Equal("""
                ann: You have the plate: Sat 16 May 9:00, Mill 1, BB 11-12, south BB 11-12 at north BB 11-12, with Ben (base).
                ann: You have the plate: Sat 16 May 14:00, Mill 1, BB 11-12, south BB 11-12 at north BB 11-12.
                ben: You have the base: Sat 16 May 9:00, Mill 1, BB 11-12, south BB 11-12 at north BB 11-12, with Ann (plate).
                """.ReplaceLineEndings("\n"), Told(store, Publish(store)));
            Assert.Empty(Pending(store));
            Assert.Equal("nothing differs from what was published", Assert.Single(Publishing.Publish(store, Monday, Now).Faults));
            // Ben comes to the second game, and leaves the first
            store.Put(new Assignment("a", "base", null));
            store.Put(new Assignment("b", "base", "ben"));
            store.SaveChanges();
            Assert.Equal([("a", "base", "ben", null), ("b", "base", null, "ben")], Pending(store).Select(c => (c.Game, c.Place, c.From, c.To)));
            Assert.Equal("""
                ann: Your plate stands, the crew changes: Sat 16 May 9:00, Mill 1, BB 11-12, south BB 11-12 at north BB 11-12, alone.
                ann: Your plate stands, the crew changes: Sat 16 May 14:00, Mill 1, BB 11-12, south BB 11-12 at north BB 11-12, with Ben (base).
                ben: You no longer have the base: Sat 16 May 9:00, Mill 1, BB 11-12, south BB 11-12 at north BB 11-12.
                ben: You have the base: Sat 16 May 14:00, Mill 1, BB 11-12, south BB 11-12 at north BB 11-12, with Ann (plate).
                """.ReplaceLineEndings("\n"), Told(store, Publish(store)));
            // one game is moved, the other called off
            store.Put(store.Games.Find("b")! with { Start = Crews.Town.At(15), Status = GameStatus.Moved });
            store.Put(store.Games.Find("a")! with { Status = GameStatus.CalledOff });
            store.SaveChanges();
            Assert.Equal("""
                ann: You no longer have the plate: Sat 16 May 9:00, Mill 1, BB 11-12, south BB 11-12 at north BB 11-12 (the game is not played then).
                ann: Moved: the plate of Sat 16 May 14:00, Mill 1, BB 11-12, south BB 11-12 at north BB 11-12 is now Sat 16 May 15:00, Mill 1.
                ben: Moved: the base of Sat 16 May 14:00, Mill 1, BB 11-12, south BB 11-12 at north BB 11-12 is now Sat 16 May 15:00, Mill 1.
                """.ReplaceLineEndings("\n"), Told(store, Publish(store)));
            Assert.Empty(Pending(store));
            // nothing that was told is ever taken out
            // the base of the game called off was open before, so it has no third line
            Assert.Equal([4, 2, 3], store.Published.AsEnumerable().GroupBy(p => p.At).OrderBy(g => g.Key).Select(g => g.Count()));
        }
        var file = own.PathOf("backup.zip");
        using (var store = Open(own)) Backup.Write(store, file);
        var before = Snapshot.Of(own);
        using (var store = Open(own)) Assert.Empty(Restore.Run(store, file).Faults);
        Assert.Equal(before["Published"], Snapshot.Of(own)["Published"]);
    }

    [Fact]
    public void A_letter_about_a_minor_goes_to_the_guardian_with_a_second_adult()
    {
        var dan = Crews.Town.Minor("dan", AgeBand.From13To15);
        var gil = Person.Of("gil", "Gil", "Lark", AgeBand.Adult, null, "east", null, "gil@east.example", [])!;
        var (chief, eve) = (Person.Of("chief", "Ada", "Holm", AgeBand.Adult, null, null, null, "ada@east.example", [])!, Person.Of("eve", "Eve", "Lark", AgeBand.Adult, null, null, null, "eve@east.example", [])!);
        var letter = Letter.For([dan], chief, eve, _ => [gil], [])!;
        Assert.Equal(["gil"], letter.To.Select(p => p.Key));
        Assert.Equal(["eve"], letter.Copy.Select(p => p.Key));
        Assert.StartsWith("To the guardians of Dan L.: the crews were published; for Dan this is new:", CrewNotice.Text(dan, ["x"]));
        Assert.Null(Letter.For([dan], chief, null, _ => [gil], []));
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void Crews_against_safety_are_not_published(Kept kept)
    {
        using var own = Town(kept);
        // a store without the codes at hand holds nothing against them
        using (var store = own.Open())
        {
            store.Put(new Assignment("b", "base", "dan"));
            store.SaveChanges();
        }
        var before = Snapshot.Of(own);
        using (var store = Open(own)) Assert.Contains(Publishing.Publish(store, Monday, Now).Faults, f => f.StartsWith("not published, a safety rule bars it: base of b: adult coordinator", StringComparison.Ordinal));
        Assert.Equal(before, Snapshot.Of(own));
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void A_search_changes_what_was_told_as_little_as_it_can_and_leaves_frozen_crews(Kept kept)
    {
        using var own = Town(kept);
        using var store = Open(own);
        Publish(store);
        // by hand Ann and Ben change places, and nobody was told yet
        store.Put(new Assignment("a", "plate", "ben"));
        store.Put(new Assignment("a", "base", "ann"));
        store.SaveChanges();
        CrewTask Task() => CrewTask.Week(CrewPlan.Of(CrewReader.Read(store), UmpiresCodes.For(Shelf.Codes)), Monday, Now) with { Seconds = 10, Workers = 1 };
        string Crew(CrewResult found, string game) => string.Join(", ", found.Plan.CrewOf(found.Plan.Game(game)!).OrderByDescending(s => s.Place).Select(s => $"{s.Place} {s.Person.Key}"));
        var result = CrewSearch.Find(Task());
        Assert.Equal(("plate ann, base ben", 0), (Crew(result, "a"), result.Stages.Single(s => s.Priority == "changes to what is published").Value));
        Assert.StartsWith("there is no game 'x';", Assert.Single(Publishing.Freeze(store, ["a", "x"], freeze: true)));
        Assert.Empty(store.Frozen);
        Assert.Empty(Publishing.Freeze(store, ["a"], freeze: true));
        var frozen = Task();
        Assert.Equal(["b"], frozen.Games.Select(g => g.Key));
        Assert.Equal("plate ben, base ann", Crew(CrewSearch.Find(frozen), "a"));
        // what was found before it was frozen is not written any more
        Assert.Contains("a was frozen since; search again", CrewKeeping.Keep(store, result.Plan, result.Plan, [.. result.Plan.Games]));
        Assert.Empty(Publishing.Freeze(store, ["a", "a"], freeze: false));
        Assert.Equal(2, Task().Games.Count);
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void A_calendar_of_ones_own_holds_what_was_published_and_nothing_else(Kept kept)
    {
        using var own = Town(kept);
        using var store = Open(own);
        store.Put(new DistrictFacts(DistrictFacts.Only, "Town", "America/Chicago", 41.4, -88.1));
        store.SaveChanges();
        Assert.DoesNotContain("VEVENT", CalendarFile.OfUmpire(store, "ben"));
        Publish(store);
        store.Put(new Assignment("b", "base", "ben"));
        store.SaveChanges();
        string[] Lines() => CalendarFile.OfUmpire(store, "ben").Replace("\r\n ", "").Split("\r\n");
        Assert.Single(Lines(), l => l == "BEGIN:VEVENT");
        Assert.Contains("SUMMARY:base\\, BB 11-12: south BB 11-12 at north BB 11-12", Lines());
        Assert.Contains("DESCRIPTION:With Ann (plate)", Lines());
        Assert.DoesNotContain(Lines(), l => l.Contains("Ben") || l.Contains("Lark"));
        // told of the second game, and that the first is no longer his
        store.Put(new Assignment("a", "base", null));
        store.SaveChanges();
        Publish(store);
        Assert.Equal(["STATUS:CANCELLED", "STATUS:CONFIRMED"], Lines().Where(l => l.StartsWith("STATUS")).Order());
        Assert.Equal(["SEQUENCE:2", "SEQUENCE:2"], Lines().Where(l => l.StartsWith("SEQUENCE")));
        Assert.DoesNotContain("VEVENT", CalendarFile.OfUmpire(store, "dan"));
    }
}
