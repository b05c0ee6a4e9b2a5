using System.Globalization;
using Umpirage.District.Calendar;
using Umpirage.District.Pitchers;

namespace Umpirage.Store.Files;

public sealed class GameFile : FileKind
{
    public override string Name => "games";
    public override string About => "The schedule, in the district's own clock time.";
    public override IReadOnlyList<Column> Columns =>
    [
        new("game", true, "its key"), new("division", true, "key of a division"), new("visitor", true, "key of a team"), new("home", true, "key of a team"),
        new("diamond", true, "key of a diamond"), new("day", true, "2026-05-16"), new("start", true, "14:00"), new("status", true, "planned, moved, rained out, called off, played or suspended"),
        new("rest of", false, "key of the suspended game that this one finishes"),
    ];

    public static string StatusWord(GameStatus status) => status switch { GameStatus.RainedOut => "rained out", GameStatus.CalledOff => "called off", _ => status.ToString().ToLowerInvariant() };

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var key = row.Key("game");
        var game = new ScheduledGame(key, row.Known("division", known.Divisions, "division"), row.Known("visitor", known.Teams, "team"), row.Known("home", known.Teams, "team"),
            row.Known("diamond", known.Diamonds, "diamond"), row.Day("day").ToDateTime(row.Clock("start")), row.Choice<GameStatus>("status", StatusWord), 0, row.Optional("rest of"));
        if (game.RestOf is { } suspended) row.Known("rest of", suspended, known.Games, "game");
        if (game.RestOf == game.Key && game.RestOf is not null) row.Fault("rest of", game.RestOf, "another game than this one");
        if (game.Home == game.Visitor && game.Home != "") row.Fault("home", game.Home, "another team than the visitor");
        // a calendar takes a game for changed only when its count of changes rises
        return key != "" && known.Store.Games.Find(key) is { } before ? [game with { Sequence = before with { Sequence = 0 } == game ? before.Sequence : before.Sequence + 1 }] : [game];
    }

    public override string Owner(object record) => ((ScheduledGame)record).Key;
    public override IEnumerable<object> Stored(DistrictStore store) => store.Games;
    public override IEnumerable<string?[]> Write(DistrictStore store) =>
        store.Games.AsEnumerable().OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => new[]
        {
            g.Key, g.Division, g.Visitor, g.Home, g.Diamond, Written.Day(DateOnly.FromDateTime(g.Start)), Written.Clock(TimeOnly.FromDateTime(g.Start)), StatusWord(g.Status), g.RestOf,
        });
}

public sealed class CrewFile : FileKind
{
    public override bool SetsCrews => true;
    public override string Name => "crews";
    public override string About => "Who umpires which game; an empty person is a place still open.";
    public override IReadOnlyList<Column> Columns => [new("game", true, "key of a game"), new("place", true, "plate, base, base 2, base 3 or youth base"), new("person", false, "key of a person")];

    private static readonly string[] Places = ["plate", "base", "base 2", "base 3", "youth base"];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var person = row.Optional("person");
        if (person is not null) row.Known("person", person, known.People, "person");
        return [new Assignment(row.Known("game", known.Games, "game"), row.Choice("place", [.. Places.Select(p => (p, p))]), person)];
    }

    public override string Owner(object record) => record is Assignment a ? $"{a.Game}/{a.Place}" : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Assignments;
    public override IEnumerable<string?[]> Write(DistrictStore store) =>
        store.Assignments.AsEnumerable().OrderBy(a => a.Game, StringComparer.Ordinal).ThenBy(a => a.Place, StringComparer.Ordinal).Select(a => new[] { a.Game, a.Place, a.Person });
}

public sealed class PlayerFile : FileKind
{
    public override string Name => "players";
    public override string About => "Players and their teams; one who plays on several has a row for each. Given name and an initial, nothing else.";
    public override IReadOnlyList<Column> Columns => [new("player", true, "a key"), new("name", true, "given name and an initial, as Mara T."), new("team", true, "key of a team"), new("jersey", true, "0 to 99")];
    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var key = row.Key("player");
        var name = row.Needed("name", "given name and an initial, as Mara T.");
        if (name != "" && name.Split(' ') is not [_, [_, '.']]) row.Fault("name", name, "given name and an initial, as Mara T.");
        return [new Player(key, name), new RosterPlace(key, row.Known("team", known.Teams, "team"), row.Whole("jersey", 0, 99))];
    }

    public override string Owner(object record) => record switch { RosterPlace r => $"{r.Player}/{r.Team}", Player p => p.Key, _ => "" };
    public override IEnumerable<object> Stored(DistrictStore store) => [.. store.Players, .. store.RosterPlaces];
    public override IEnumerable<string?[]> Write(DistrictStore store)
    {
        var names = store.Players.ToDictionary(p => p.Key, p => p.Name);
        return store.RosterPlaces.AsEnumerable().OrderBy(r => r.Player, StringComparer.Ordinal).ThenBy(r => r.Team, StringComparer.Ordinal)
            .Select(r => new[] { r.Player, names[r.Player], r.Team, r.Jersey.ToString(CultureInfo.InvariantCulture) });
    }
}
