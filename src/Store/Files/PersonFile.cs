using Umpirage.District.People;
using Umpirage.Rules.Ground;

namespace Umpirage.Store.Files;

public sealed class PersonFile : FileKind
{
    public override string Name => "people";
    public override string About => "Persons, what they do, and who answers for a minor. A minor has no phone and no mail.";

    public override IReadOnlyList<Column> Columns =>
    [
        new("person", true, "a key"), new("given name", true, "first name"), new("family name", false, "last name"),
        new("age band", true, Words.Or([.. Enum.GetValues<AgeBand>().Select(b => b.Words())])), new("adult on", false, "for a minor: the day of coming of age, 2027-03-01"),
        new("league", false, "key of a league"), new("phone", false, "adults only"), new("mail", false, "adults only"),
        new("roles", false, "parted by semicolons: umpire; president of tarnholt; manager of TAR-SB12-1"), new("guardians", false, "for a minor: keys of adults, parted by semicolons"),
        new("grade", false, "umpires only: trainee, base, plate or crew chief"), new("games a week", false, "umpires only: games offered"), new("since", false, "umpires only: first year"),
    ];

    private static readonly (string Word, Role Role)[] RoleWords =
        [.. Enum.GetValues<Role>().Select(r => (RoleWord(r), r))];

    public static string RoleWord(Role role) => role switch { Role.YouthUmpire => "youth umpire", Role.SafetyOfficer => "safety officer", _ => role.ToString().ToLowerInvariant() };

    public static string GradeWord(Grade grade) => grade == Grade.CrewChief ? "crew chief" : grade.ToString().ToLowerInvariant();

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var key = row.Key("person");
        // of a band that cannot be read nothing follows: neither what a minor may not have nor what an adult may not
        var read = AgeBands.Read(row.Text("age band"));
        var band = read ?? AgeBand.Adult;
        if (read is null) row.Choice<AgeBand>("age band", b => b.Words());
        var league = row.Optional("league");
        if (league is not null) row.Known("league", league, known.Leagues, "league");
        var wrong = new List<FieldFault>();
        var person = Person.Of(key == "" ? "?" : key, row.Text("given name"), row.Text("family name"), band, read is null ? null : row.OptionalDay("adult on"), league,
            row.Optional("phone"), row.Optional("mail"), wrong);
        row.Add(wrong);
        var records = new List<object>();
        if (person is not null) records.Add(person);
        foreach (var word in row.Several("roles")) if (ReadRole(row, known, key, word) is { } role) records.Add(role);
        foreach (var guardian in row.Several("guardians"))
        {
            row.Known("guardians", guardian, known.People, "person");
            if (read is not null && !band.IsMinor()) row.Fault("guardians", guardian, "nothing for an adult");
            if (guardian == key || known.Minors.Contains(guardian)) row.Fault("guardians", guardian, "an adult");
            records.Add(new Guardianship(key, guardian));
        }
        var roles = records.OfType<RoleHeld>().ToList();
        if (band.IsMinor())
        {
            if (known.Guardians.Contains(key)) row.Fault("age band", band.Words(), "an adult's: this person is somebody's guardian");
            if (roles.Count > 0 && !records.OfType<Guardianship>().Any()) row.Fault("guardians", "", "at least one adult for a minor who holds a role");
            foreach (var role in roles.Where(r => r.Role is not (Role.YouthUmpire or Role.Scorekeeper))) row.Fault("roles", RoleWord(role.Role), "youth umpire or scorekeeper for a minor");
        }
        else if (read is not null && roles.Any(r => r.Role == Role.YouthUmpire)) row.Fault("roles", "youth umpire", "umpire for an adult");
        if (row.Text("grade") != "" || row.Text("games a week") != "" || row.Text("since") != "")
        {
            if (!roles.Any(r => r.Role is Role.Umpire or Role.YouthUmpire)) row.Fault("grade", row.Text("grade"), "nothing for somebody who is no umpire");
            records.Add(new Official(key, row.Choice<Grade>("grade", GradeWord), row.Decimal("games a week", 0, 20), row.Whole("since", 1940, 2100)));
        }
        return records;
    }

    private static RoleHeld? ReadRole(Row row, Known known, string person, string text)
    {
        var parts = text.Split(" of ", 2, StringSplitOptions.TrimEntries);
        var of = parts.Length > 1 ? parts[1] : "";
        if (RoleWords.FirstOrDefault(w => Words.Same(w.Word, parts[0])) is not { Word: not null } word) { row.Fault("roles", text, Words.Or([.. RoleWords.Select(w => w.Word)])); return null; }
        var (needsLeague, needsTeam) = (word.Role is Role.President or Role.SafetyOfficer, word.Role is Role.Manager);
        if ((needsLeague || needsTeam) && of == "") row.Fault("roles", text, $"{word.Word} of the key of a {(needsTeam ? "team" : "league")}");
        else if (needsLeague) row.Known("roles", of, known.Leagues, "league");
        else if (needsTeam) row.Known("roles", of, known.Teams, "team");
        else if (of != "") row.Fault("roles", text, $"{word.Word} without 'of'");
        return new(person, word.Role, needsLeague ? of : "", needsTeam ? of : "");
    }

    public override string Owner(object record) => record switch
    {
        Person p => p.Key, RoleHeld r => r.Person, Guardianship g => g.Child, Official o => o.Person, _ => "",
    };

    public override IEnumerable<object> Stored(DistrictStore store) => [.. store.People, .. store.Roles, .. store.Guardianships, .. store.Officials];

    public override IEnumerable<string?[]> Write(DistrictStore store)
    {
        var roles = store.Roles.AsEnumerable().ToLookup(r => r.Person);
        var guardians = store.Guardianships.AsEnumerable().ToLookup(g => g.Child);
        var officials = store.Officials.ToDictionary(o => o.Person);
        foreach (var p in store.People.AsEnumerable().OrderBy(p => p.Key, StringComparer.Ordinal))
        {
            var official = officials.GetValueOrDefault(p.Key);
            yield return
            [
                p.Key, p.Given, p.Family, p.Band.Words(), p.AdultOn is { } day ? Written.Day(day) : "", p.League, p.Phone, p.Mail,
                string.Join("; ", roles[p.Key].Select(r => RoleWord(r.Role) + (r.League + r.Team is { Length: > 0 } of ? " of " + of : "")).Order(StringComparer.Ordinal)),
                string.Join("; ", guardians[p.Key].Select(g => g.Guardian).Order(StringComparer.Ordinal)),
                official is null ? "" : GradeWord(official.Grade), official is null ? "" : Written.Number(official.GamesAWeek), official?.Since.ToString(System.Globalization.CultureInfo.InvariantCulture),
            ];
        }
    }
}
