using System.Data;
using System.Data.Common;
using Microsoft.EntityFrameworkCore;
using Umpirage.Rules.Codes;

namespace Umpirage.Store.Files;

/// <summary>What an import did, or would do; with faults it did nothing.</summary>
public sealed record Imported(int Added, int Changed, int Same, int Removed, IReadOnlyList<FileFault> Faults)
{
    public bool Fine => Faults.Count == 0;

    /// <summary>The faults without their rows, for what was typed into a form; what is wrong in several rows alike is told once.</summary>
    public IReadOnlyList<District.People.FieldFault> InFields => [.. Faults.Select(f => new District.People.FieldFault(f.Column, f.Found, f.Allowed)).Distinct()];

    public string InWords => Fine ? $"{Added} added, {Changed} changed, {Same} the same{(Removed > 0 ? $", {Removed} removed" : "")}" : $"nothing imported: {Faults.Count} {(Faults.Count == 1 ? "fault" : "faults")}";
}

/// <summary>Takes a file in: all of it or nothing. A second time changes nothing.</summary>
public static class Import
{
    /// <param name="book">When given, codes and layers are held against it.</param>
    public static Imported Run(DistrictStore store, FileKind kind, byte[] bytes, bool dryRun, Codebook? book = null)
    {
        var faults = new List<FileFault>();
        return Rows(store, kind, CsvText.Read(bytes, kind.Columns, faults), faults, dryRun, book);
    }

    /// <summary>Takes rows that were typed, by the rules of their file; all of them or none.</summary>
    public static Imported Typed(DistrictStore store, FileKind kind, params IReadOnlyList<IReadOnlyDictionary<string, string>> rows) =>
        Rows(store, kind, [.. rows.Select((cells, i) => new FileRow(i + 1, cells))], [], dryRun: false, null);

    internal static Imported Rows(DistrictStore store, FileKind kind, List<FileRow> rows, List<FileFault> faults, bool dryRun, Codebook? book)
    {
        if (faults.Count > 0) return new(0, 0, 0, 0, faults);
        try
        {
            // the lock is taken before the first look, so that nobody writes between the look and the deed
            using var transaction = store.Database.BeginTransaction(IsolationLevel.Serializable);
            var result = Within(store, kind, rows, faults, book);
            if (!result.Fine || dryRun) { store.ChangeTracker.Clear(); return result; }
            store.SaveChanges();
            transaction.Commit();
            return result;
        }
        // on a server a clash or a lost connection comes wrapped as something that may pass
        catch (Exception fault) when (fault is DbUpdateException or DbException or InvalidOperationException { InnerException: DbUpdateException or DbException })
        {
            store.ChangeTracker.Clear();
            return new(0, 0, 0, 0, [new(1, "", "somebody else wrote at the same moment", $"to try again; nothing was changed ({(fault.InnerException ?? fault).Message})")]);
        }
    }

    private static Imported Within(DistrictStore store, FileKind kind, List<FileRow> rows, List<FileFault> faults, Codebook? book)
    {
        var stored = kind.Stored(store).ToList();
        var known = new Known(store, kind, rows, book);
        var byOwner = stored.ToLookup(kind.Owner);
        var byKey = stored.ToDictionary(r => KeyOf(store, r));
        var seen = new Dictionary<string, int>();
        var (added, changed, same, removed) = (0, 0, 0, 0);
        var wanted = new Dictionary<string, object>();
        for (var i = 0; i < rows.Count; i++)
        {
            var row = new Row(rows[i].Number, rows[i].Cells, faults);
            var before = faults.Count;
            var records = kind.Read(row, known);
            if (faults.Count > before || records.Count == 0) { if (faults.Count > 1000) break; continue; }
            var owner = kind.Owner(records[^1]);
            if (seen.TryGetValue(owner, out var first)) { row.Fault(kind.Columns[0].Header, owner, $"each once; row {first} says it already"); continue; }
            seen[owner] = row.Number;
            var (news, olds) = (0, 0);
            foreach (var record in records)
            {
                var key = KeyOf(store, record);
                if (wanted.TryGetValue(key, out var other) && !other.Equals(record))
                    row.Fault(kind.Columns[0].Header, key[(key.IndexOf('/') + 1)..], "the same said of it as in the rows before");
                wanted[key] = record;
                if (!byKey.TryGetValue(key, out var old)) news++;
                else if (!old.Equals(record)) olds++;
            }
            var gone = byOwner[owner].Where(o => !wanted.ContainsKey(KeyOf(store, o))).ToList();
            foreach (var record in gone) { store.Remove(record); removed++; }
            var main = KeyOf(store, records[0]);
            if (!byKey.ContainsKey(main)) added++;
            else if (news + olds + gone.Count > 0) changed++;
            else same++;
        }
        if (faults.Count > 0) return new(0, 0, 0, 0, faults);
        foreach (var (key, record) in wanted)
        {
            if (!byKey.TryGetValue(key, out var old)) store.Add(record);
            else if (!old.Equals(record)) store.Entry(old).CurrentValues.SetValues(record);
        }
        if (kind.SetsCrews)
            foreach (var breach in CrewGuard.Of(store))
            {
                var row = seen.GetValueOrDefault($"{breach.Game}/{breach.Place}", seen.GetValueOrDefault(breach.Game, 1));
                faults.Add(new(row, "person", breach.Person, $"for {breach.Place} of {breach.Game} nobody whom a safety rule bars: {breach.Constraint}, {breach.InWords}"));
            }
        return faults.Count > 0 ? new(0, 0, 0, 0, faults) : new(added, changed, same, removed, []);
    }

    private static string KeyOf(DistrictStore store, object record) =>
        record.GetType().Name + "/" + string.Join('/', store.Model.FindEntityType(record.GetType())!.FindPrimaryKey()!.Properties.Select(p => p.PropertyInfo!.GetValue(record)));
}

/// <summary>Writes what is on record as a file that can be read back.</summary>
public static class Export
{
    public static string Run(DistrictStore store, FileKind kind) => CsvText.Write(kind.Columns, kind.Write(store));
}
