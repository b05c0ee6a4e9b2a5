using System.Globalization;
using Umpirage.District.Pitchers;

namespace Umpirage.Store.Files;

public sealed class LogFile : FileKind
{
    private const int MostPitches = 300, MostInnings = 30, OutsAnInning = 3;

    public override string Name => "logs";
    public override string About => "Pitching logs: what one counter wrote of one pitcher in one game. A row that differs from the one on record is kept as its correction; nothing is ever overwritten.";
    public override IReadOnlyList<Column> Columns =>
    [
        new("game", true, "key of a game"), new("player", true, "key of a player"), new("team", true, "key of a team"), new("counter", true, "who counted"), new("pitches", true, "0 to 300"),
        new("before last batter", true, "pitches before the first to the last batter"), new("innings", true, "innings in which a pitch was thrown"), new("innings caught", true, "innings at catcher"),
        new("outs", false, "outs made while pitching"), new("day", false, "the day of these pitches, when the game went on on another day"), new("entry", false, "1 for the first count, 2 for its correction; nothing takes the next"),
    ];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var game = row.Known("game", known.Games, "game");
        var day = row.Optional("day") is null ? null : (DateOnly?)row.Day("day");
        var log = new Appearance(game, row.Known("player", known.Players, "player"), row.Known("team", known.Teams, "team"), row.Needed("counter", "who counted"), day ?? default, 0,
            row.Whole("pitches", 0, MostPitches), row.Whole("before last batter", 0, MostPitches), row.Whole("innings", 0, MostInnings), row.Whole("innings caught", 0, MostInnings),
            row.Optional("outs") is null ? 0 : row.Whole("outs", 0, OutsAnInning * MostInnings));
        var entry = row.Optional("entry") is null ? 0 : row.Whole("entry", 1, 99);
        if (row.Fine("pitches", "before last batter") && log.BeforeLastBatter > log.Pitches) row.Fault("before last batter", Text(log.BeforeLastBatter), $"at most the {log.Pitches} pitches");
        if (row.Fine("pitches", "innings") && log.Innings > log.Pitches) row.Fault("innings", Text(log.Innings), $"at most {log.Pitches}: each inning has at least one of the {log.Pitches} pitches");
        if (row.Fine("innings", "outs") && log.Outs > OutsAnInning * log.Innings) row.Fault("outs", Text(log.Outs), $"at most three in each of the {log.Innings} innings");
        if (!row.Fine("game", "team", "day") || known.Store.Games.Find(game) is not { } played) return [log];
        if (log.Team != played.Home && log.Team != played.Visitor) row.Fault("team", log.Team, $"one of the game's teams, {played.Visitor} or {played.Home}");
        var first = DateOnly.FromDateTime(played.Start);
        log = log with { Day = day ?? first };
        if (log.Day < first) row.Fault("day", Written.Day(log.Day), $"not before the game's own day, {Written.Day(first)}");
        if (log.Day > known.Today) row.Fault(day is null ? "game" : "day", day is null ? $"{game}, {Written.Day(first)}" : Written.Day(log.Day), $"a day up to today, {Written.Day(known.Today)}");
        var lines = known.Logs[(log.Game, log.Player, log.Counter, log.Day)].ToList();
        if (entry > 0 && lines.FirstOrDefault(l => l.Entry == entry) is { } there && there != log with { Entry = entry })
            row.Fault("entry", Text(entry), $"an entry not yet taken: {entry} is on record with other figures, and no entry is ever changed; leave it empty for a correction");
        // what is on record already, word for word, is no correction
        return [log with { Entry = entry > 0 ? entry : lines.FirstOrDefault(l => l with { Entry = 0 } == log)?.Entry ?? lines.Count + 1 }];
    }

    public override string Owner(object record) => record is Appearance a ? $"{a.Game}/{a.Player}/{a.Counter}/{Written.Day(a.Day)}/{a.Entry}" : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Appearances;
    public override IEnumerable<string?[]> Write(DistrictStore store) =>
        store.Appearances.AsEnumerable().OrderBy(a => a.Game, StringComparer.Ordinal).ThenBy(a => a.Player, StringComparer.Ordinal).ThenBy(a => a.Counter, StringComparer.Ordinal)
            .ThenBy(a => a.Day).ThenBy(a => a.Entry).Select(a => new[]
        {
            a.Game, a.Player, a.Team, a.Counter, Text(a.Pitches), Text(a.BeforeLastBatter), Text(a.Innings), Text(a.InningsCaught), Text(a.Outs), Written.Day(a.Day), Text(a.Entry),
        });

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
