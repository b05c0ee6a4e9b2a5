using System.IO.Compression;
using System.Text.Json;
using Umpirage.Store;

namespace Umpirage.Tests.Store;

/// <summary>What stands in a store, as the checksum of each table: the same on both databases.</summary>
internal static class Snapshot
{
    public static SortedDictionary<string, string> Of(OwnStore own)
    {
        var file = own.PathOf($"{Guid.NewGuid():N}.zip");
        using (var store = own.Open()) Backup.Write(store, file);
        var sums = In(file);
        File.Delete(file);
        return sums;
    }

    public static SortedDictionary<string, string> In(string backup)
    {
        using var zip = ZipFile.OpenRead(backup);
        using var list = zip.GetEntry("list.json")!.Open();
        using var read = JsonDocument.Parse(list);
        return new(read.RootElement.GetProperty("Tables").EnumerateArray().ToDictionary(t => t.GetProperty("Name").GetString()!, t =>
            $"{t.GetProperty("Rows")} rows, {t.GetProperty("Sha256")}"));
    }

    /// <summary>The rows of one table of a backup.</summary>
    public static string[] Rows(string backup, string table)
    {
        using var zip = ZipFile.OpenRead(backup);
        using var reader = new StreamReader(zip.GetEntry($"tables/{table}.jsonl")!.Open());
        return reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);
    }
}
