using Umpirage.District.People;

namespace Umpirage.Store.Files;

public sealed class ClearanceFile : FileKind
{
    public override string Name => "clearances";
    public override string About => "Background checks, courses and the like: only that they were shown and until when, never what they say.";
    public override IReadOnlyList<Column> Columns =>
        [new("person", true, "key of a person"), new("requirement", true, "what was shown"), new("from", true, "first day"), new("until", true, "last day"), new("verified by", true, "who saw it")];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var clearance = new Clearance(row.Known("person", known.People, "person"), row.Needed("requirement", "what was shown"), row.Day("from"), row.Day("until"),
            row.Needed("verified by", "who saw it"));
        if (clearance.Until < clearance.From && row.Fine("from", "until")) row.Fault("until", Written.Day(clearance.Until), "a day not before 'from'");
        return [clearance];
    }

    public override string Owner(object record) => record is Clearance c ? $"{c.Person}/{c.Requirement}/{c.From}" : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Clearances;
    public override IEnumerable<string?[]> Write(DistrictStore store) =>
        store.Clearances.AsEnumerable().OrderBy(c => c.Person, StringComparer.Ordinal).ThenBy(c => c.Requirement, StringComparer.Ordinal).ThenBy(c => c.From)
            .Select(c => new[] { c.Person, c.Requirement, Written.Day(c.From), Written.Day(c.Until), c.VerifiedBy });
}

public sealed class CertificateFile : FileKind
{
    public override string Name => "certificates";
    public override string About => "What umpires were tested for.";
    public override IReadOnlyList<Column> Columns =>
        [new("person", true, "key of a person"), new("game", true, "softball or baseball"), new("division", true, "the highest division, by key"), new("position", true, "plate or base"), new("from", true, "first day"), new("until", true, "last day")];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var certificate = new Certificate(row.Known("person", known.People, "person"), row.Choice("game", ("softball", "softball"), ("baseball", "baseball")),
            row.Known("division", known.Divisions, "division"), row.Choice<Position>("position", p => p.ToString().ToLowerInvariant()), row.Day("from"), row.Day("until"));
        if (certificate.Until < certificate.From && row.Fine("from", "until")) row.Fault("until", Written.Day(certificate.Until), "a day not before 'from'");
        return [certificate];
    }

    public override string Owner(object record) => record is Certificate c ? $"{c.Person}/{c.Game}/{c.Division}/{c.Position}/{c.From}" : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Certificates;
    public override IEnumerable<string?[]> Write(DistrictStore store) =>
        store.Certificates.AsEnumerable().OrderBy(c => c.Person, StringComparer.Ordinal).ThenBy(c => c.Game, StringComparer.Ordinal)
            .ThenBy(c => c.Division, StringComparer.Ordinal).ThenBy(c => c.From).ThenBy(c => c.Position)
            .Select(c => new[] { c.Person, c.Game, c.Division, c.Position.ToString().ToLowerInvariant(), Written.Day(c.From), Written.Day(c.Until) });
}

public sealed class AvailabilityFile : FileKind
{
    public override string Name => "availability";
    public override string About => "Weekly hours at which umpires can work.";
    public override IReadOnlyList<Column> Columns => [new("person", true, "key of a person"), new("day", true, "day of the week"), new("from", true, "17:30"), new("until", true, "21:00")];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var hours = new Availability(row.Known("person", known.People, "person"), row.Choice<DayOfWeek>("day", d => d.ToString()), row.Clock("from"), row.Clock("until"));
        if (hours.Until <= hours.From && row.Fine("from", "until")) row.Fault("until", Written.Clock(hours.Until), "a time after 'from'");
        return [hours];
    }

    public override string Owner(object record) => record is Availability a ? $"{a.Person}/{a.Day}/{a.From}" : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Availabilities;
    public override IEnumerable<string?[]> Write(DistrictStore store) =>
        store.Availabilities.AsEnumerable().OrderBy(a => a.Person, StringComparer.Ordinal).ThenBy(a => a.Day).ThenBy(a => a.From).Select(a => new[] { a.Person, a.Day.ToString(), Written.Clock(a.From), Written.Clock(a.Until) });
}

public sealed class AwayFile : FileKind
{
    public override string Name => "away";
    public override string About => "Days on which umpires cannot come, whatever their weekly hours; reasons are not kept.";
    public override IReadOnlyList<Column> Columns => [new("person", true, "key of a person"), new("from", true, "first day"), new("until", true, "last day")];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var away = new Away(row.Known("person", known.People, "person"), row.Day("from"), row.Day("until"));
        if (away.Until < away.From && row.Fine("from", "until")) row.Fault("until", Written.Day(away.Until), "a day not before 'from'");
        return [away];
    }

    public override string Owner(object record) => record is Away a ? $"{a.Person}/{Written.Day(a.From)}" : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Aways;
    public override IEnumerable<string?[]> Write(DistrictStore store) =>
        store.Aways.AsEnumerable().OrderBy(a => a.Person, StringComparer.Ordinal).ThenBy(a => a.From).Select(a => new[] { a.Person, Written.Day(a.From), Written.Day(a.Until) });
}
