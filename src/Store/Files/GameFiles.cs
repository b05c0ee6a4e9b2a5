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
        new("diamond", true, "key of a diamond"), new("day", true, "2026-05-16"), new("start", true, "14:00"), new("status", true, "planned, moved, rained out, called off or played"),
    ];

    public static string StatusWord(GameStatus status) => status switch { GameStatus.RainedOut => "rained out", GameStatus.CalledOff => "called off", _ => status.ToString().ToLowerInvariant() };

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var key = row.Key("game");
        var game = new ScheduledGame(key, row.Known("division", known.Divisions, "division"), row.Known("visitor", known.Teams, "team"), row.Known("home", known.Teams, "team"),
            row.Known("diamond", known.Diamonds, "diamond"), row.Day("day").ToDateTime(row.Clock("start")), row.Choice<GameStatus>("status", StatusWord), 0);
        if (game.Home == game.Visitor && game.Home != "") row.Fault("home", game.Home, "another team than the visitor");
        // a calendar takes a game for changed only when its count of changes rises
        return key != "" && known.Store.Games.Find(key) is { } before ? [game with { Sequence = before with { Sequence = 0 } == game ? before.Sequence : before.Sequence + 1 }] : [game];
    }

    public override string Owner(object record) => ((ScheduledGame)record).Key;
    public override IEnumerable<object> Stored(DistrictStore store) => store.Games;
    public override IEnumerable<string?[]> Write(DistrictStore store) =>
        store.Games.AsEnumerable().OrderBy(g => g.Key, StringComparer.Ordinal).Select(g => new[]
        {
            g.Key, g.Division, g.Visitor, g.Home, g.Diamond, Written.Day(DateOnly.FromDateTime(g.Start)), Written.Clock(TimeOnly.FromDateTime(g.Start)), StatusWord(g.Status),
        });
}

public sealed class CrewFile : FileKind
{
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

public sealed class LogFile : FileKind
{
    public override string Name => "logs";
    public override string About => "Pitching logs: what one counter wrote of one pitcher in one game.";
    public override IReadOnlyList<Column> Columns =>
    [
        new("game", true, "key of a game"), new("player", true, "key of a player"), new("team", true, "key of a team"), new("counter", true, "who counted"), new("pitches", true, "0 to 300"),
        new("before last batter", true, "pitches before the first to the last batter"), new("innings", true, "innings in which a pitch was thrown"), new("innings caught", true, "innings at catcher"),
    ];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var log = new Appearance(row.Known("game", known.Games, "game"), row.Known("player", known.Players, "player"), row.Known("team", known.Teams, "team"), row.Needed("counter", "who counted"),
            row.Whole("pitches", 0, 300), row.Whole("before last batter", 0, 300), row.Whole("innings", 0, 30), row.Whole("innings caught", 0, 30));
        if (log.BeforeLastBatter > log.Pitches && row.Fine("pitches", "before last batter"))
            row.Fault("before last batter", log.BeforeLastBatter.ToString(CultureInfo.InvariantCulture), $"at most the {log.Pitches} pitches");
        return [log];
    }

    public override string Owner(object record) => record is Appearance a ? $"{a.Game}/{a.Player}/{a.Counter}" : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Appearances;
    public override IEnumerable<string?[]> Write(DistrictStore store) =>
        store.Appearances.AsEnumerable().OrderBy(a => a.Game, StringComparer.Ordinal).ThenBy(a => a.Player, StringComparer.Ordinal)
            .ThenBy(a => a.Counter, StringComparer.Ordinal).Select(a => new[]
        {
            a.Game, a.Player, a.Team, a.Counter, Text(a.Pitches), Text(a.BeforeLastBatter), Text(a.Innings), Text(a.InningsCaught),
        });

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
