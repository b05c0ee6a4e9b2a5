using Microsoft.EntityFrameworkCore;
using Umpirage.District.Calendar;
using Umpirage.District.Crews;

namespace Umpirage.Store;

/// <summary>A crew that breaks a safety rule was about to be saved. Nothing was.</summary>
public sealed class UnsafeCrewException(IReadOnlyList<Breach> breaches)
    : InvalidOperationException($"not saved, a safety rule bars it: {string.Join("; ", breaches.Take(5).Select(b => $"{b.Place} of {b.Game}: {b.Constraint}, {b.InWords}"))}")
{
    public IReadOnlyList<Breach> Breaches { get; } = breaches;
}

/// <summary>
/// No way leads around the safety rules of crews: whatever is saved is recounted by the same check that judges every plan. Games that are over are
/// left as they were.
/// </summary>
public static class CrewGuard
{
    /// <summary>Safety breaches in coming games that saving now would bring; those on record already are for the agenda to tell.</summary>
    /// <exception cref="InvalidDataException">The rule code cannot be used, so that nothing can be told.</exception>
    public static IReadOnlyList<Breach> Of(DistrictStore store)
    {
        if (store.Codes is null) return [];
        store.ChangeTracker.DetectChanges();
        var codes = UmpiresCodes.For(store.Codes());
        var before = Breaches(store, CrewReader.Kept(store), codes).ToHashSet();
        return [.. Breaches(store, CrewReader.Pending(store), codes).Where(b => !before.Contains(b))];
    }

    private static IEnumerable<Breach> Breaches(DistrictStore store, CrewRecords records, UmpiresCodes codes)
    {
        var coming = records with { Games = [.. records.Games.Where(g => DateOnly.FromDateTime(g.Start) >= store.Today)] };
        // a game of today that is over counts in its umpires' day, and is itself left as it was
        var plan = CrewPlan.Of(coming, codes);
        return CrewCheck.All(plan).Where(b => b.Hold == Hold.Safety && plan.Game(b.Game)!.Game.IsAhead);
    }

    /// <summary>Before anything is saved: a place given against a safety rule is refused; where a game was moved from under its crew, the place opens.</summary>
    internal static void Keep(DistrictStore store)
    {
        if (store.Codes is null) return;
        store.ChangeTracker.DetectChanges();
        var moved = store.ChangeTracker.Entries<ScheduledGame>().Where(e => e.State == EntityState.Modified).Select(e => e.Entity.Key).ToHashSet();
        var given = store.ChangeTracker.Entries<Assignment>().Where(e => e.State is EntityState.Added or EntityState.Modified && e.Entity.Person is not null).Select(e => (e.Entity.Game, e.Entity.Place)).ToHashSet();
        var named = store.ChangeTracker.Entries<Coordination>().Any(e => e.State is EntityState.Added or EntityState.Modified or EntityState.Deleted);
        if (moved.Count == 0 && given.Count == 0 && !named) return;
        var breaches = Of(store);
        if (moved.Count > 0 && breaches.Count > 0)
        {
            foreach (var breach in breaches.Where(b => moved.Contains(b.Game) && !given.Contains((b.Game, b.Place))).DistinctBy(b => (b.Game, b.Place))) Open(store, breach);
            breaches = Of(store);
        }
        if (breaches.Count > 0) throw new UnsafeCrewException(breaches);
    }

    /// <summary>After a restore: places of coming games that a safety rule bars are opened, so that the rest of a backup is not lost with them. Returns what was opened.</summary>
    internal static IReadOnlyList<Breach> OpenUnsafe(DistrictStore store)
    {
        if (store.Codes is null) return [];
        var all = new List<Breach>();
        var codes = UmpiresCodes.For(store.Codes());
        // opening one place never bars another, but a minor's partner may change: looked at until nothing is left
        for (var round = 0; round < 10; round++)
        {
            var breaches = Breaches(store, CrewReader.Pending(store), codes).DistinctBy(b => (b.Game, b.Place)).ToList();
            if (breaches.Count == 0) break;
            foreach (var breach in breaches) Open(store, breach);
            all.AddRange(breaches);
        }
        return all;
    }

    private static void Open(DistrictStore store, Breach breach)
    {
        if (store.Assignments.Find(breach.Game, breach.Place) is { } place) store.Entry(place).CurrentValues.SetValues(place with { Person = null });
    }
}
