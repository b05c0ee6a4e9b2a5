using System.Globalization;
using Umpirage.District.People;

namespace Umpirage.Store.Files;

internal static class Written
{
    /// <summary>A number is kept as finely as it is written.</summary>
    public const int Places = 6;

    public static string Number(double number) => number.ToString("0.######", CultureInfo.InvariantCulture);
    public static string Day(DateOnly day) => Rules.Ground.CodeAddress.Day(day);
    public static string Clock(TimeOnly time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);
    public const string InstantForm = "yyyy-MM-dd HH:mm:ss";
    public static string Instant(DateTime utc) => utc.ToString(InstantForm, CultureInfo.InvariantCulture);
    public static string Yes(bool yes) => yes ? "yes" : "no";
}

public sealed class LeagueFile : FileKind
{
    public override string Name => "leagues";
    public override string About => "The leagues of the district.";
    public override IReadOnlyList<Column> Columns => [new("league", true, "its key, as tarnholt"), new("name", true, "its name")];
    public override IReadOnlyList<object> Read(Row row, Known known) => [new League(row.Key("league"), row.Needed("name", "the league's name"))];
    public override string Owner(object record) => ((League)record).Key;
    public override IEnumerable<object> Stored(DistrictStore store) => store.Leagues;
    public override IEnumerable<string?[]> Write(DistrictStore store) =>
        store.Leagues.AsEnumerable().OrderBy(l => l.Key, StringComparer.Ordinal).Select(l => new[] { l.Key, l.Name });
}

public sealed class DivisionFile : FileKind
{
    public override string Name => "divisions";
    public override string About => "Divisions as the leagues call them, with the rule code each is played under.";
    public override IReadOnlyList<Column> Columns =>
        [new("division", true, "its key, as the leagues call it"), new("code", true, "the address of its rule code: game/division+layer"), new("crew", true, "umpires required, 0 to 4"), new("youth base", true, "yes or no: a youth umpire may be added")];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var code = row.Needed("code", Rules.Ground.CodeAddress.Form);
        if (known.Book is { } book && code != "") Rules.Plays.Casebook.Code(book, code, DateOnly.FromDateTime(DateTime.Today),
            fault => row.Fault("code", code, $"the address of a rule code ({fault})"));
        return [new Division(row.Key("division"), code, row.Whole("crew", 0, 4), row.Yes("youth base"))];
    }

    public override string Owner(object record) => ((Division)record).Key;
    public override IEnumerable<object> Stored(DistrictStore store) => store.Divisions;
    public override IEnumerable<string?[]> Write(DistrictStore store) =>
        store.Divisions.AsEnumerable().OrderBy(d => d.Key, StringComparer.Ordinal).Select(d =>
            new[] { d.Key, d.Code, d.Crew.ToString(CultureInfo.InvariantCulture), Written.Yes(d.YouthBase) });
}

public sealed class TeamFile : FileKind
{
    public override string Name => "teams";
    public override string About => "Teams of the leagues.";
    public override IReadOnlyList<Column> Columns => [new("team", true, "its key"), new("name", true, "its name"), new("league", true, "key of its league"), new("division", true, "key of its division")];
    public override IReadOnlyList<object> Read(Row row, Known known) =>
        [new Team(row.Key("team"), row.Needed("name", "the team's name"), row.Known("league", known.Leagues, "league"), row.Known("division", known.Divisions, "division"))];
    public override string Owner(object record) => ((Team)record).Key;
    public override IEnumerable<object> Stored(DistrictStore store) => store.Teams;
    public override IEnumerable<string?[]> Write(DistrictStore store) =>
        store.Teams.AsEnumerable().OrderBy(t => t.Key, StringComparer.Ordinal).Select(t => new[] { t.Key, t.Name, t.League, t.Division });
}

public sealed class ParkFile : FileKind
{
    public override string Name => "parks";
    public override string About => "Parks and where they lie.";
    public override IReadOnlyList<Column> Columns => [new("park", true, "its key"), new("name", true, "its name"), new("latitude", true, "degrees north"), new("longitude", true, "degrees east")];
    public override IReadOnlyList<object> Read(Row row, Known known) => [new Park(row.Key("park"), row.Needed("name", "the park's name"), row.Decimal("latitude", -90, 90), row.Decimal("longitude", -180, 180))];
    public override string Owner(object record) => ((Park)record).Key;
    public override IEnumerable<object> Stored(DistrictStore store) => store.Parks;
    public override IEnumerable<string?[]> Write(DistrictStore store) =>
        store.Parks.AsEnumerable().OrderBy(p => p.Key, StringComparer.Ordinal).Select(p => new[] { p.Key, p.Name, Written.Number(p.Latitude), Written.Number(p.Longitude) });
}

public sealed class DiamondFile : FileKind
{
    public override string Name => "diamonds";
    public override string About => "Diamonds of the parks.";
    public override IReadOnlyList<Column> Columns =>
        [new("diamond", true, "its key"), new("park", true, "key of its park"), new("name", true, "its name"), new("base path", true, "feet between the bases"), new("lit", true, "yes or no"), new("bearing", false, "degrees from true north in which second lies from home, 0 to 360; nothing where it is not known")];
    public override IReadOnlyList<object> Read(Row row, Known known) =>
        [new Diamond(row.Key("diamond"), row.Known("park", known.Parks, "park"), row.Needed("name", "the diamond's name"), row.Whole("base path", 30, 100), row.Yes("lit"), row.Text("bearing") == "" ? null : row.Decimal("bearing", 0, 360))];
    public override string Owner(object record) => ((Diamond)record).Key;
    public override IEnumerable<object> Stored(DistrictStore store) => store.Diamonds;
    public override IEnumerable<string?[]> Write(DistrictStore store) =>
        store.Diamonds.AsEnumerable().OrderBy(d => d.Key, StringComparer.Ordinal).Select(d =>
            new[] { d.Key, d.Park, d.Name, d.BasePath.ToString(CultureInfo.InvariantCulture), Written.Yes(d.Lit), d.Bearing is { } bearing ? Written.Number(bearing) : "" });
}
