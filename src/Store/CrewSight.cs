using Microsoft.EntityFrameworkCore;
using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.People;

namespace Umpirage.Store;

/// <summary>How far somebody sees crews: who sets them as they stand on record, everybody else those of games ahead only as they were published.</summary>
/// <param name="Now">The district's clock; nothing for who sets crews.</param>
public sealed record CrewSight(DateTime? Now)
{
    public static CrewSight All { get; } = new((DateTime?)null);

    public static CrewSight Of(Viewer viewer, DateTime now) => viewer.May(Deed.SetCrews) ? All : new(now);

    /// <summary>Whether anything of a game's crew may be seen, be it that a place is open.</summary>
    public Func<ScheduledGame, bool> Sees(CrewRecords records)
    {
        if (Now is not { } now) return _ => true;
        var told = Published.Of(records.Published);
        return game => game.Start <= now || told.Has(game.Key);
    }

    public CrewRecords Of(CrewRecords records) =>
        Now is { } now ? records with { Assignments = [.. Published.Of(records.Published).Known(records.Games, records.Assignments, now)] } : records;

    /// <summary>The places of these games.</summary>
    public IReadOnlyList<Assignment> Of(DistrictStore store, IReadOnlyCollection<ScheduledGame> games)
    {
        List<string> keys = [.. games.Select(g => g.Key)];
        var onRecord = store.Assignments.AsNoTracking().Where(a => keys.Contains(a.Game));
        return Now is { } now ? [.. Published.Of(store.Published.AsNoTracking().Where(p => keys.Contains(p.Game))).Known(games, onRecord, now)] : [.. onRecord];
    }
}
