using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.People;
using Umpirage.Store;

namespace Umpirage.Tests.Store;

/// <summary>What umpires see of crews: of games ahead what was published, of games that began what is on record.</summary>
public class CrewSightTests
{
    private static readonly DateTime Now = Crews.Town.At(10), Told = new(2026, 5, 10, 0, 0, 0, DateTimeKind.Utc);

    /// <summary>Game a has begun and was never published; b was published with Ann and has Ben since; c is a draft.</summary>
    private static OwnStore Town(Kept kept)
    {
        var own = OwnStore.Empty(kept);
        using var store = own.Open();
        var t = Crews.Town.Empty;
        Seed.Put(store,
        [
            .. t.Leagues, .. t.Divisions, .. t.Parks, .. t.Diamonds, .. t.Teams, .. t.People, .. t.Roles, .. t.Officials,
            Crews.Town.Game("a", Crews.Town.At(9)), Crews.Town.Game("b", Crews.Town.At(12)), Crews.Town.Game("c", Crews.Town.At(15)),
            new Assignment("a", "plate", "ben"), new Assignment("b", "plate", "ben"), new Assignment("c", "plate", "ann"),
            new PublishedPlace("b", "plate", Told, "ann", "mill-1", Crews.Town.At(12)),
        ]);
        return own;
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void Drafts_are_for_those_who_set_crews(Kept kept)
    {
        using var own = Town(kept);
        using var store = own.Open();
        var games = store.Games.ToList();
        var person = store.People.Find("ann")!;
        string Seen(Role role)
        {
            var sight = CrewSight.Of(new Viewer(person, [new RoleHeld("ann", role, "", "")], []), Now);
            string Text(IEnumerable<Assignment> places) => string.Join(", ", places.Where(p => p.Person is not null).OrderBy(p => p.Game, StringComparer.Ordinal).Select(p => $"{p.Game} {p.Person}"));
            var records = CrewReader.Read(store);
            // the places of a few games and those of all records are the same
            Assert.Equal(Text(sight.Of(store, games)), Text(sight.Of(records).Assignments));
            return $"{Text(sight.Of(store, games))}; {string.Join(' ', games.Select(g => sight.Sees(records)(g) ? g.Key : "-").Order(StringComparer.Ordinal))}";
        }
        foreach (var role in (Role[])[Role.Chief, Role.Assigner]) Assert.Equal("a ben, b ben, c ann; a b c", Seen(role));
        foreach (var role in Enum.GetValues<Role>().Except([Role.Chief, Role.Assigner])) Assert.Equal("a ben, b ann; - a b", Seen(role));
    }
}
