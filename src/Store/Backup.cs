using System.Data;
using System.Data.Common;
using System.Globalization;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Storage;

namespace Umpirage.Store;

/// <summary>
/// A backup is a zip of one file of JSON lines a table, and a list with the checksum of each. It holds everything, accounts and trail too, and
/// goes from SQLite to PostgreSQL and back: keep it where only the chief can read it.
/// </summary>
public static class Backup
{
    internal const string ListName = "list.json";

    internal sealed record TableEntry(string Name, IReadOnlyList<string> Columns, long Rows, string Sha256);
    internal sealed record Contents(string Format, string Shape, DateTime MadeAt, IReadOnlyList<TableEntry> Tables)
    {
        public const string Known = "Umpirage backup 1";
    }

    /// <summary>Writes all tables as they stood at one moment; the file appears whole or not at all. Returns the number of records.</summary>
    public static long Write(DistrictStore store, string file)
    {
        var half = file + ".part";
        long all = 0;
        using (var transaction = store.Database.BeginTransaction(store.Database.IsNpgsql() ? IsolationLevel.RepeatableRead : IsolationLevel.Serializable))
        using (var zip = new ZipArchive(File.Create(half), ZipArchiveMode.Create))
        {
            var entries = new List<TableEntry>();
            foreach (var table in Tables(store))
            {
                using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
                long rows = 0;
                using (var text = zip.CreateEntry(Entry(table), CompressionLevel.Fastest).Open())
                    foreach (var line in Lines(store, table))
                    {
                        text.Write(line);
                        hash.AppendData(line);
                        rows++;
                    }
                entries.Add(new(table.Name, [.. table.Columns.Select(c => c.Name)], rows, Convert.ToHexString(hash.GetHashAndReset())));
                all += rows;
            }
            using var list = zip.CreateEntry(ListName).Open();
            JsonSerializer.Serialize(list, new Contents(Contents.Known, ShapeOf(store), DateTime.UtcNow, entries));
        }
        File.Move(half, file, overwrite: true);
        return all;
    }

    internal static string Entry(ITable table) => $"tables/{table.Name}.jsonl";

    /// <summary>The tables, each after those it refers to.</summary>
    internal static IReadOnlyList<ITable> Tables(DistrictStore store)
    {
        // the list of migrations belongs to the database, not to the district
        var open = store.GetService<IDesignTimeModel>().Model.GetRelationalModel().Tables.OrderBy(t => t.Name, StringComparer.Ordinal).ToList();
        var done = new List<ITable>();
        while (open.Count > 0)
        {
            var next = open.First(t => t.ForeignKeyConstraints.All(f => f.PrincipalTable == t || done.Contains(f.PrincipalTable)));
            done.Add(next);
            open.Remove(next);
        }
        return done;
    }

    /// <summary>The name of the newest migration without its time: the same on both databases.</summary>
    internal static string ShapeOf(DistrictStore store) => store.Database.GetMigrations().Last().Split('_', 2)[1];

    private static IEnumerable<byte[]> Lines(DistrictStore store, ITable table)
    {
        var columns = table.Columns.ToList();
        var order = string.Join(", ", table.PrimaryKey!.Columns.Select(c => Ordered(store, c)));
        using var command = Sql.Command(store, $"SELECT {string.Join(", ", columns.Select(c => Sql.Quoted(c.Name)))} FROM {Sql.Quoted(table.Name)} ORDER BY {order}");
        using var reader = command.ExecuteReader();
        while (reader.Read())
        {
            var values = columns.Select((c, i) => reader.IsDBNull(i) ? null : Value(reader, i, c)).ToArray();
            yield return Encoding.UTF8.GetBytes(JsonSerializer.Serialize(values) + "\n");
        }
    }

    /// <summary>Both databases give the rows in the same order, whatever language a server sorts in.</summary>
    private static string Ordered(DistrictStore store, IColumn column) =>
        Sql.Quoted(column.Name) + (column.ProviderClrType == typeof(string) && store.Database.IsNpgsql() ? " COLLATE \"C\"" : "");

    private static object Value(DbDataReader reader, int i, IColumn column)
    {
        var type = Nullable.GetUnderlyingType(column.ProviderClrType) ?? column.ProviderClrType;
        if (type == typeof(string)) return reader.GetString(i);
        if (type == typeof(int)) return reader.GetInt32(i);
        if (type == typeof(long)) return reader.GetInt64(i);
        if (type == typeof(bool)) return reader.GetBoolean(i);
        if (type == typeof(double)) return reader.GetDouble(i);
        if (type == typeof(Guid)) return reader.GetGuid(i);
        if (type == typeof(byte[])) return reader.GetFieldValue<byte[]>(i);
        if (type == typeof(DateOnly)) return reader.GetFieldValue<DateOnly>(i);
        if (type == typeof(TimeOnly)) return reader.GetFieldValue<TimeOnly>(i);
        if (type == typeof(DateTime)) return reader.GetDateTime(i).ToString("yyyy-MM-ddTHH:mm:ss.ffffff", CultureInfo.InvariantCulture);
        if (type == typeof(DateTimeOffset)) return reader.GetFieldValue<DateTimeOffset>(i).ToUniversalTime().ToString("yyyy-MM-ddTHH:mm:ss.ffffffZ", CultureInfo.InvariantCulture);
        throw new NotSupportedException($"{column.Table.Name}.{column.Name} is a {type.Name}");
    }
}
