using System.Data.Common;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Storage;

namespace Umpirage.Store;

#pragma warning disable EF1002 // the names put into these commands are those of the program's own tables
/// <summary>Puts a backup in the place of what is on record: wholly, in one transaction, or not at all.</summary>
public static class Restore
{
    /// <summary>Returns the number of records, or the reasons why nothing was done.</summary>
    public static (long Records, IReadOnlyList<string> Faults) Run(DistrictStore store, string file)
    {
        ZipArchive zip;
        try { zip = ZipFile.OpenRead(file); }
        catch (Exception fault) when (fault is InvalidDataException or IOException or UnauthorizedAccessException) { return (0, [$"{file} cannot be opened as a backup: {fault.Message}"]); }
        using (zip)
        {
            var faults = new List<string>();
            var tables = Backup.Tables(store);
            if (Checked(store, zip, tables, faults) is not { } list) return (0, faults);
            using var transaction = store.Database.BeginTransaction();
            LetGo(store);
            foreach (var table in tables.Reverse()) store.Database.ExecuteSqlRaw($"DELETE FROM {Sql.Quoted(table.Name)}");
            var records = 0L;
            foreach (var table in tables)
            {
                // a checksum tells that nothing was lost on the way, not that what was written makes sense
                try { records += Fill(store, zip, table, list.Tables.Single(t => t.Name == table.Name).Columns); }
                catch (Exception fault) when (fault is DbException or JsonException or FormatException or InvalidOperationException or InvalidCastException or OverflowException)
                {
                    return (0, [$"the table {table.Name} holds something this program cannot take: {fault.Message}"]);
                }
            }
            Hold(store, tables);
            var opened = CrewGuard.OpenUnsafe(store);
            store.Trail.Add(new() { At = DateTime.UtcNow, By = store.Actor, What = "Backup", Key = Path.GetFileName(file), Deed = "restored", After = $"made {list.MadeAt:yyyy-MM-dd HH:mm} UTC, {records} records{(opened.Count == 0 ? "" : $", {opened.Count} places opened that safety rules bar")}" });
            store.SaveChanges();
            transaction.Commit();
            return (records, []);
        }
    }

    private static Backup.Contents? Checked(DistrictStore store, ZipArchive zip, IReadOnlyList<ITable> tables, List<string> faults)
    {
        Backup.Contents? list = null;
        try
        {
            using var text = zip.GetEntry(Backup.ListName)?.Open();
            if (text is not null) list = JsonSerializer.Deserialize<Backup.Contents>(text);
        }
        catch (Exception fault) when (fault is JsonException or InvalidDataException) { }
        if (list is not { Format: Backup.Contents.Known, Tables: not null } || list.Tables.Any(t => t is not { Columns: not null, Name: not null }))
        {
            faults.Add($"this is no backup: it has no readable {Backup.ListName}");
            return null;
        }
        if (list.Shape != Backup.ShapeOf(store)) { faults.Add($"the backup has the tables of '{list.Shape}', this program those of '{Backup.ShapeOf(store)}'; use the program it was made with"); return null; }
        foreach (var table in tables)
        {
            List<Backup.TableEntry> entries = [.. list.Tables.Where(t => t.Name == table.Name)];
            if (entries is not [var entry] || zip.GetEntry(Backup.Entry(table)) is not { } part) { faults.Add($"the table {table.Name} is missing"); continue; }
            if (!entry.Columns.Order(StringComparer.Ordinal).SequenceEqual(table.Columns.Select(c => c.Name).Order(StringComparer.Ordinal)))
            {
                faults.Add($"the table {table.Name} has other columns than here: {string.Join(", ", entry.Columns)}");
                continue;
            }
            try
            {
                using var text = part.Open();
                if (Convert.ToHexString(SHA256.HashData(text)) != entry.Sha256) faults.Add($"the table {table.Name} is not as it was written: its checksum differs");
            }
            catch (InvalidDataException) { faults.Add($"the table {table.Name} cannot be unpacked"); }
        }
        return faults.Count > 0 ? null : list;
    }

    private static long Fill(DistrictStore store, ZipArchive zip, ITable table, IReadOnlyList<string> names)
    {
        var columns = names.Select(n => table.FindColumn(n)!).ToList();
        using var command = Sql.Insert(store, table.Name, names);
        using var reader = new StreamReader(zip.GetEntry(Backup.Entry(table))!.Open());
        var rows = 0L;
        while (reader.ReadLine() is { } line)
        {
            if (JsonSerializer.Deserialize<JsonElement[]>(line) is not { } cells || cells.Length != columns.Count)
                throw new FormatException($"row {rows + 1} has not {columns.Count} cells");
            command.Parameters.Clear();
            for (var i = 0; i < columns.Count; i++)
                command.Parameters.Add(Parameter(command, columns[i], "@p" + i, Value(cells[i], columns[i])));
            command.ExecuteNonQuery();
            rows++;
        }
        return rows;
    }

    /// <summary>A backup holds what the database holds; a mapping wants what the program holds.</summary>
    private static DbParameter Parameter(DbCommand command, IColumn column, string name, object? value)
    {
        var mapping = column.StoreTypeMapping;
        return mapping.CreateParameter(command, name, value is not null && mapping.Converter is { } converter ? converter.ConvertFromProvider(value) : value, column.IsNullable);
    }

    private static object? Value(JsonElement cell, IColumn column)
    {
        if (cell.ValueKind == JsonValueKind.Null) return null;
        var type = Nullable.GetUnderlyingType(column.ProviderClrType) ?? column.ProviderClrType;
        if (type != typeof(DateTime)) return cell.Deserialize(type);
        return DateTime.SpecifyKind(cell.GetDateTime(), column.StoreType.Contains("with time zone", StringComparison.Ordinal) ? DateTimeKind.Utc : DateTimeKind.Unspecified);
    }

    /// <summary>For the length of the transaction nothing holds the trail.</summary>
    private static void LetGo(DistrictStore store)
    {
        if (store.Database.IsNpgsql()) store.Database.ExecuteSqlRaw("""ALTER TABLE "Trail" DISABLE TRIGGER USER""");
        else foreach (var drop in AppendOnly.SqliteTriggers.Keys) store.Database.ExecuteSqlRaw($"DROP TRIGGER IF EXISTS {Sql.Quoted(drop)}");
    }

    private static void Hold(DistrictStore store, IReadOnlyList<ITable> tables)
    {
        if (!store.Database.IsNpgsql())
        {
            foreach (var make in AppendOnly.SqliteTriggers.Values) store.Database.ExecuteSqlRaw(make);
            return;
        }
        store.Database.ExecuteSqlRaw("""ALTER TABLE "Trail" ENABLE TRIGGER USER""");
        // numbers given by the database go on after the highest restored
        foreach (var table in tables)
            foreach (var column in table.Columns.Where(c => c.PropertyMappings.Any(p => p.Property.ValueGenerated == ValueGenerated.OnAdd && p.Property.IsPrimaryKey() && c.ProviderClrType is { } t && (t == typeof(long) || t == typeof(int)))))
                store.Database.ExecuteSqlRaw($"""SELECT setval(pg_get_serial_sequence('"{table.Name}"', '{column.Name}'), COALESCE((SELECT MAX("{column.Name}") FROM "{table.Name}"), 0) + 1, false)""");
    }
}
