using System.Text.Encodings.Web;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Umpirage.District.Calendar;
using Umpirage.District.People;

namespace Umpirage.Store;

/// <summary>Turns what is about to be saved into trail entries.</summary>
internal static class TrailWriter
{
    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Returns the entries it adds to what is saved.</summary>
    public static IReadOnlyList<TrailEntry> Write(DistrictStore store)
    {
        store.ChangeTracker.DetectChanges();
        Dependents(store);
        var written = new List<TrailEntry>();
        var at = DateTime.UtcNow;
        foreach (var entry in store.ChangeTracker.Entries().ToList())
        {
            if (entry.Entity is TrailEntry)
            {
                if (entry.State is EntityState.Modified or EntityState.Deleted) throw new InvalidOperationException("the trail is only ever added to");
                continue;
            }
            if (entry.State is not (EntityState.Added or EntityState.Modified or EntityState.Deleted)) continue;
            if (entry.State == EntityState.Modified && entry.Properties.All(p => !p.IsModified || Equals(p.OriginalValue, p.CurrentValue))) { entry.State = EntityState.Unchanged; continue; }
            written.Add(new()
            {
                At = at, By = store.Actor, What = entry.Metadata.ClrType.Name, Key = KeyOf(entry),
                Deed = entry.State switch { EntityState.Added => "added", EntityState.Deleted => "removed", _ => "changed" },
                Before = entry.State == EntityState.Added ? null : Values(entry, p => p.OriginalValue),
                After = entry.State == EntityState.Deleted ? null : Values(entry, p => p.CurrentValue),
            });
        }
        store.Trail.AddRange(written);
        return written;
    }

    /// <summary>The crew of a game goes with it, and so do swaps of its places; the database would remove it unseen.</summary>
    private static void Dependents(DistrictStore store)
    {
        List<string> gone = [.. store.ChangeTracker.Entries<ScheduledGame>().Where(e => e.State == EntityState.Deleted).Select(e => e.Entity.Key)];
        if (gone.Count == 0) return;
        store.RemoveRange(store.Assignments.Where(a => gone.Contains(a.Game)));
        store.RemoveRange(store.Swaps.Where(s => gone.Contains(s.Game) || (s.OtherGame != null && gone.Contains(s.OtherGame))));
    }

    private static string KeyOf(EntityEntry entry) => string.Join('/', entry.Metadata.FindPrimaryKey()!.Properties.Select(p => Word(entry.Property(p.Name).CurrentValue)));

    /// <summary>Only records of the district are told in full; an account's tables hold secrets.</summary>
    private static string? Values(EntityEntry entry, Func<PropertyEntry, object?> value) =>
        entry.Metadata.ClrType.Assembly != typeof(Person).Assembly ? null
        : JsonSerializer.Serialize(entry.Properties.ToDictionary(p => p.Metadata.Name, p => Word(value(p))), Plain);

    private static string? Word(object? value) => value switch
    {
        null => null,
        DateOnly d => d.ToString("yyyy-MM-dd"),
        TimeOnly t => t.ToString("HH:mm"),
        DateTime t => t.ToString("yyyy-MM-ddTHH:mm:ss"),
        byte[] bytes => Convert.ToHexString(bytes),
        _ => value.ToString(),
    };
}
