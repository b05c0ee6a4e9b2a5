using Umpirage.District.Calendar;

namespace Umpirage.Store.Files;

public sealed class CoordinatorFile : FileKind
{
    public override bool SetsCrews => true;
    public override string Name => "coordinators";
    public override string About => "The adult named for a game with a minor in its crew.";
    public override IReadOnlyList<Column> Columns => [new("game", true, "key of a game"), new("person", true, "key of an adult")];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var person = row.Known("person", known.People, "person");
        if (row.Fine("person") && known.Minors.Contains(person)) row.Fault("person", person, "an adult");
        return [new Coordination(row.Known("game", known.Games, "game"), person)];
    }

    public override string Owner(object record) => record is Coordination c ? c.Game : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Coordinations;
    public override IEnumerable<string?[]> Write(DistrictStore store) => store.Coordinations.AsEnumerable().OrderBy(c => c.Game, StringComparer.Ordinal).Select(c => new[] { c.Game, c.Person });
}

public sealed class EndingFile : FileKind
{
    public override string Name => "endings";
    public override string About => "When games were over, or are said to be over, in the district's own clock time.";
    public override IReadOnlyList<Column> Columns => [new("game", true, "key of a game"), new("day", true, "2026-05-16"), new("over", true, "13:35")];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var over = new GameOver(row.Known("game", known.Games, "game"), row.Day("day").ToDateTime(row.Clock("over")));
        if (row.Fine("game", "day", "over") && known.Store.Games.Find(over.Game) is { } game && (over.At <= game.Start || over.At > game.Start.AddDays(1)))
            row.Fault("over", $"{Written.Day(DateOnly.FromDateTime(over.At))} {Written.Clock(TimeOnly.FromDateTime(over.At))}", $"a time within a day after the start, {Written.Day(DateOnly.FromDateTime(game.Start))} {Written.Clock(TimeOnly.FromDateTime(game.Start))}");
        return [over];
    }

    public override string Owner(object record) => record is GameOver o ? o.Game : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Endings;
    public override IEnumerable<string?[]> Write(DistrictStore store) => store.Endings.AsEnumerable().OrderBy(o => o.Game, StringComparer.Ordinal)
        .Select(o => new[] { o.Game, Written.Day(DateOnly.FromDateTime(o.At)), Written.Clock(TimeOnly.FromDateTime(o.At)) });
}

public sealed class ElsewhereFile : FileKind
{
    public override string Name => "elsewhere";
    public override string About => "Games that umpires work outside the district, as they said it; they count for the day.";
    public override IReadOnlyList<Column> Columns =>
        [new("person", true, "key of a person"), new("day", true, "2026-05-16"), new("start", true, "09:00"), new("until", true, "11:00"), new("place", true, "plate or base")];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var (day, start, until) = (row.Day("day"), row.Clock("start"), row.Clock("until"));
        var game = new ElsewhereGame(row.Known("person", known.People, "person"), day.ToDateTime(start), day.ToDateTime(until), row.Choice("place", ("plate", "plate"), ("base", "base")));
        if (until <= start && row.Fine("start", "until")) row.Fault("until", Written.Clock(until), "a time after 'start'");
        return [game];
    }

    public override string Owner(object record) => record is ElsewhereGame e ? $"{e.Person}/{e.Start:yyyy-MM-dd HH:mm}" : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Elsewhere;
    public override IEnumerable<string?[]> Write(DistrictStore store) => store.Elsewhere.AsEnumerable().OrderBy(e => e.Person, StringComparer.Ordinal).ThenBy(e => e.Start).Select(e => new[]
    {
        e.Person, Written.Day(DateOnly.FromDateTime(e.Start)), Written.Clock(TimeOnly.FromDateTime(e.Start)), Written.Clock(TimeOnly.FromDateTime(e.Until)), e.Place,
    });
}
