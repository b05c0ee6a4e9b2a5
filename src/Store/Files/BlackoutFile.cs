using Umpirage.District.Calendar;
using Umpirage.District.People;

namespace Umpirage.Store.Files;

public sealed class BlackoutFile : FileKind
{
    public override string Name => "blackouts";
    public override string About => "Days on which nothing is played: of the district, a league, a team, a park or a diamond.";
    public override IReadOnlyList<Column> Columns =>
    [
        new("kind", true, "district, league, team, park or diamond"), new("of", false, "its key; nothing for the district"), new("from", true, "2026-05-25"), new("until", true, "the last such day"), new("reason", true, "holiday, graduation, field work"),
    ];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var kind = row.Choice<BlackoutOf>("kind", k => k.ToString().ToLowerInvariant());
        var of = kind switch
        {
            BlackoutOf.District => row.Optional("of") ?? DistrictFacts.Only,
            BlackoutOf.League => row.Known("of", known.Leagues, "league"),
            BlackoutOf.Team => row.Known("of", known.Teams, "team"),
            BlackoutOf.Park => row.Known("of", known.Parks, "park"),
            _ => row.Known("of", known.Diamonds, "diamond"),
        };
        if (kind == BlackoutOf.District && of != DistrictFacts.Only) row.Fault("of", of, "nothing, or 'district'");
        var blackout = new Blackout(kind, of, row.Day("from"), row.Day("until"), row.Needed("reason"));
        if (blackout.Until < blackout.From && row.Fine("from", "until")) row.Fault("until", Written.Day(blackout.Until), $"not before {Written.Day(blackout.From)}");
        return [blackout];
    }

    public override string Owner(object record) => record is Blackout b ? $"{b.Kind}/{b.Of}/{Written.Day(b.From)}" : "";
    public override IEnumerable<object> Stored(DistrictStore store) => store.Blackouts;
    public override IEnumerable<string?[]> Write(DistrictStore store) =>
        store.Blackouts.AsEnumerable().OrderBy(b => b.From).ThenBy(b => b.Kind).ThenBy(b => b.Of, StringComparer.Ordinal).Select(b => new[]
        {
            b.Kind.ToString().ToLowerInvariant(), b.Kind == BlackoutOf.District ? null : b.Of, Written.Day(b.From), Written.Day(b.Until), b.Reason,
        });
}
