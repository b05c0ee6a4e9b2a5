using Microsoft.EntityFrameworkCore;
using Umpirage.District.Crews;

namespace Umpirage.Store;

/// <summary>Reads everything that bears on crews.</summary>
public static class CrewReader
{
    /// <summary>As it is in the database, with what was published, what is frozen and who was watched.</summary>
    /// <param name="heat">Heat index by day, degrees Fahrenheit, as somebody typed it; it is not kept.</param>
    public static CrewRecords Read(DistrictStore store, IReadOnlyDictionary<DateOnly, double>? heat = null)
    {
        var visits = store.Visits.AsNoTracking().AsEnumerable().Concat(store.Evaluations.AsNoTracking().AsEnumerable().Select(e => e.Visit)).Distinct();
        return Kept(store) with { Visits = [.. visits], Published = [.. store.Published.AsNoTracking()], Frozen = [.. store.Frozen.AsNoTracking()], Heat = heat ?? new Dictionary<DateOnly, double>() };
    }

    /// <summary>What a crew is checked by, as it is in the database.</summary>
    internal static CrewRecords Kept(DistrictStore store) => Of(new InDatabase(store));

    /// <summary>What a crew is checked by, as it would be after what is about to be saved.</summary>
    internal static CrewRecords Pending(DistrictStore store) => Of(new AboutToBe(store));

    private static CrewRecords Of(Source from) => new()
    {
        Leagues = from.All(s => s.Leagues), Divisions = from.All(s => s.Divisions), Teams = from.All(s => s.Teams), Parks = from.All(s => s.Parks), Diamonds = from.All(s => s.Diamonds),
        People = from.All(s => s.People), Roles = from.All(s => s.Roles), Officials = from.All(s => s.Officials), Clearances = from.All(s => s.Clearances), Certificates = from.All(s => s.Certificates),
        Hours = from.All(s => s.Availabilities), Aways = from.All(s => s.Aways), Guardianships = from.All(s => s.Guardianships), Approvals = from.All(s => s.Approvals), Interests = from.All(s => s.Interests),
        Pairings = from.All(s => s.Pairings), Homes = from.All(s => s.Homes), Games = from.All(s => s.Games), Assignments = from.All(s => s.Assignments),
        Coordinations = from.All(s => s.Coordinations), Endings = from.All(s => s.Endings), Elsewhere = from.All(s => s.Elsewhere),
    };

    private abstract class Source(DistrictStore store)
    {
        protected DistrictStore Store => store;
        public abstract IReadOnlyList<T> All<T>(Func<DistrictStore, DbSet<T>> set) where T : class;
    }

    private sealed class InDatabase(DistrictStore store) : Source(store)
    {
        public override IReadOnlyList<T> All<T>(Func<DistrictStore, DbSet<T>> set) => [.. set(Store).AsNoTracking()];
    }

    private sealed class AboutToBe(DistrictStore store) : Source(store)
    {
        public override IReadOnlyList<T> All<T>(Func<DistrictStore, DbSet<T>> set)
        {
            // what is not tracked stands as it is in the database; of what is tracked the present values count
            var tracked = Store.ChangeTracker.Entries<T>().ToList();
            var key = Store.Model.FindEntityType(typeof(T))!.FindPrimaryKey()!.Properties;
            string Key(object record) => string.Join('\n', key.Select(p => p.PropertyInfo!.GetValue(record)));
            var seen = tracked.Where(e => e.State != EntityState.Detached).Select(e => Key(e.Entity)).ToHashSet();
            return [.. set(Store).AsNoTracking().AsEnumerable().Where(r => !seen.Contains(Key(r))), .. tracked.Where(e => e.State is not (EntityState.Deleted or EntityState.Detached)).Select(e => e.Entity)];
        }
    }
}
