using System.Data;
using System.Data.Common;
using Microsoft.EntityFrameworkCore;

namespace Umpirage.Store;

/// <summary>All of a deed in one transaction, or nothing of it and the reasons why.</summary>
internal static class Whole
{
    /// <param name="deed">Changes records and names what speaks against it; its text is handed back when all is kept.</param>
    public static (string, IReadOnlyList<string>) Of(DistrictStore store, Func<List<string>, string> deed)
    {
        var faults = new List<string>();
        try
        {
            // the lock is taken before the first look, so that nobody writes between the look and the deed
            using var transaction = store.Database.BeginTransaction(IsolationLevel.Serializable);
            var key = deed(faults);
            if (faults.Count > 0) { store.ChangeTracker.Clear(); return ("", faults); }
            store.SaveChanges();
            transaction.Commit();
            return (key, faults);
        }
        catch (UnsafeCrewException unsafely)
        {
            store.ChangeTracker.Clear();
            return ("", [unsafely.Message]);
        }
        catch (Exception fault) when (fault is DbUpdateException or DbException or InvalidOperationException { InnerException: DbUpdateException or DbException })
        {
            store.ChangeTracker.Clear();
            return ("", [$"somebody else wrote at the same moment; nothing was changed, try again ({(fault.InnerException ?? fault).Message})"]);
        }
    }
}
