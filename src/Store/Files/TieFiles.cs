using Umpirage.District.People;

namespace Umpirage.Store.Files;

public sealed class ApprovalFile : FileKind
{
    public override string Name => "approvals";
    public override string About => "Guardians' word that a minor may umpire, with its days.";
    public override IReadOnlyList<Column> Columns => [new("child", true, "key of a minor"), new("guardian", true, "key of a guardian of that minor"), new("from", true, "first day"), new("until", true, "last day")];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var child = row.Known("child", known.People, "person");
        var guardian = row.Known("guardian", known.People, "person");
        if (row.Fine("child") && !known.Minors.Contains(child)) row.Fault("child", child, "a minor");
        if (row.Fine("child", "guardian") && !known.GuardiansOf[child].Contains(guardian))
            row.Fault("guardian", guardian, known.GuardiansOf[child].Any() ? $"a guardian of {child} on record: {Rules.Ground.Words.Or([.. known.GuardiansOf[child]])}" : $"a guardian of {child}; none is on record yet");
        var approval = new Approval(child, guardian, row.Day("from"), row.Day("until"));
        if (approval.Until < approval.From && row.Fine("from", "until")) row.Fault("until", Written.Day(approval.Until), "a day not before 'from'");
        return [approval];
    }

    public override string Owner(object record) => record is Approval a ? $"{a.Child}/{a.Guardian}/{Written.Day(a.From)}" : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Approvals;
    public override IEnumerable<string?[]> Write(DistrictStore store) => store.Approvals.AsEnumerable().OrderBy(a => a.Child, StringComparer.Ordinal).ThenBy(a => a.Guardian, StringComparer.Ordinal).ThenBy(a => a.From)
        .Select(a => new[] { a.Child, a.Guardian, Written.Day(a.From), Written.Day(a.Until) });
}

public sealed class InterestFile : FileKind
{
    public override string Name => "interests";
    public override string About => "What ties somebody to a team or a league beyond umpiring: a child who plays there, kin, a post.";
    public override IReadOnlyList<Column> Columns => [new("person", true, "key of a person"), new("kind", true, "team or league"), new("of", true, "its key"), new("why", true, "child plays there, kin, post")];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var kind = row.Choice<InterestOf>("kind", k => k.ToString().ToLowerInvariant());
        return [new Interest(row.Known("person", known.People, "person"), kind, kind == InterestOf.Team ? row.Known("of", known.Teams, "team") : row.Known("of", known.Leagues, "league"), row.Needed("why", "a few words: child plays there, kin, post"))];
    }

    public override string Owner(object record) => record is Interest i ? $"{i.Person}/{i.Kind}/{i.Of}" : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Interests;
    public override IEnumerable<string?[]> Write(DistrictStore store) => store.Interests.AsEnumerable().OrderBy(i => i.Person, StringComparer.Ordinal).ThenBy(i => i.Kind).ThenBy(i => i.Of, StringComparer.Ordinal)
        .Select(i => new[] { i.Person, i.Kind.ToString().ToLowerInvariant(), i.Of, i.Why });
}

public sealed class PairingFile : FileKind
{
    public override string Name => "pairings";
    public override string About => "Who is not to be put together, and who works only beside a mentor; reasons are not kept.";
    public override IReadOnlyList<Column> Columns =>
        [new("person", true, "key of a person"), new("other", true, "key of another"), new("kind", true, "apart, or mentor when the other is the mentor"), new("from", true, "first day"), new("until", true, "last day")];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var pairing = new Pairing(row.Known("person", known.People, "person"), row.Known("other", known.People, "person"), row.Choice<PairingKind>("kind", k => k.ToString().ToLowerInvariant()), row.Day("from"), row.Day("until"));
        if (pairing.Person == pairing.Other && row.Fine("person", "other")) row.Fault("other", pairing.Other, "somebody else");
        if (pairing.Kind == PairingKind.Mentor && row.Fine("other", "kind") && known.Minors.Contains(pairing.Other)) row.Fault("other", pairing.Other, "an adult as mentor");
        if (pairing.Until < pairing.From && row.Fine("from", "until")) row.Fault("until", Written.Day(pairing.Until), "a day not before 'from'");
        return [pairing];
    }

    public override string Owner(object record) => record is Pairing p ? $"{p.Person}/{p.Other}/{p.Kind}/{Written.Day(p.From)}" : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Pairings;
    public override IEnumerable<string?[]> Write(DistrictStore store) => store.Pairings.AsEnumerable().OrderBy(p => p.Person, StringComparer.Ordinal).ThenBy(p => p.Other, StringComparer.Ordinal).ThenBy(p => p.Kind).ThenBy(p => p.From)
        .Select(p => new[] { p.Person, p.Other, p.Kind.ToString().ToLowerInvariant(), Written.Day(p.From), Written.Day(p.Until) });
}

public sealed class HomeFile : FileKind
{
    public override string Name => "homes";
    public override string About => "About where adults set out from, no finer than a kilometre; of minors no such place is kept.";
    public override IReadOnlyList<Column> Columns => [new("person", true, "key of an adult"), new("latitude", true, "degrees north, two places"), new("longitude", true, "degrees east, two places")];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var person = row.Known("person", known.People, "person");
        if (row.Fine("person") && known.Minors.Contains(person)) row.Fault("person", person, "an adult: where a minor lives is not kept");
        return [new HomePlace(person, Math.Round(row.Decimal("latitude", -90, 90), HomePlace.Places), Math.Round(row.Decimal("longitude", -180, 180), HomePlace.Places))];
    }

    public override string Owner(object record) => record is HomePlace h ? h.Person : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Homes;
    public override IEnumerable<string?[]> Write(DistrictStore store) => store.Homes.AsEnumerable().OrderBy(h => h.Person, StringComparer.Ordinal).Select(h => new[] { h.Person, Written.Number(h.Latitude), Written.Number(h.Longitude) });
}

public sealed class VisitFile : FileKind
{
    public override string Name => "visits";
    public override string About => "Who was watched at work, in which position, when and by whom; not what was seen.";
    public override IReadOnlyList<Column> Columns => [new("person", true, "key of the umpire"), new("position", true, "plate or base"), new("on", true, "the day"), new("by", true, "key of an adult who watched")];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var visit = new Visit(row.Known("person", known.People, "person"), row.Choice<Position>("position", p => p.ToString().ToLowerInvariant()), row.Day("on"), row.Known("by", known.People, "person"));
        if (row.Fine("by") && known.Minors.Contains(visit.By)) row.Fault("by", visit.By, "an adult");
        if (row.Fine("person", "by") && visit.By == visit.Person) row.Fault("by", visit.By, "somebody else than the umpire");
        if (row.Fine("on") && visit.On > known.Today) row.Fault("on", Written.Day(visit.On), $"a day up to {Written.Day(known.Today)}");
        return [visit];
    }

    public override string Owner(object record) => record is Visit v ? $"{v.Person}/{v.Position}/{Written.Day(v.On)}/{v.By}" : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Visits;
    public override IEnumerable<string?[]> Write(DistrictStore store) => store.Visits.AsEnumerable().OrderBy(v => v.Person, StringComparer.Ordinal).ThenBy(v => v.On).ThenBy(v => v.Position).ThenBy(v => v.By, StringComparer.Ordinal)
        .Select(v => new[] { v.Person, v.Position.ToString().ToLowerInvariant(), Written.Day(v.On), v.By });
}
