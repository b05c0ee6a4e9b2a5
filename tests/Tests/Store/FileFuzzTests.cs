using System.Text;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Umpirage.Store;
using Umpirage.Store.Files;
using Umpirage.Store.Sqlite;

namespace Umpirage.Tests.Store;

/// <summary>A spoilt file is taken wholly or not at all, and whoever spoilt it is told where and what would be allowed.</summary>
public class FileFuzzTests(ITestOutputHelper output)
{
    private static DistrictStore Open(string file) =>
        new SqliteStore(new DbContextOptionsBuilder<SqliteStore>().UseSqlite($"Data Source={file};Foreign Keys=True;Pooling=False").Options) { Actor = "tester" };

    [Fact]
    public void Spoilt_files_raise_no_exception_and_are_taken_wholly_or_not_at_all()
    {
        using var own = OwnStore.OfHamlet(Kept.Sqlite);
        OwnStore.Rest(own.Place);
        using (var store = Open(own.Place.File!)) store.Database.ExecuteSqlRaw("PRAGMA journal_mode=DELETE");
        var atRest = File.ReadAllBytes(own.Place.File!);
        // a folder in memory, where there is one: what is tried here is the reading, not the disk
        var file = Directory.Exists("/dev/shm") ? $"/dev/shm/umpirage-{Guid.NewGuid():N}.db" : own.PathOf("fuzz.db");
        File.WriteAllBytes(file, atRest);
        List<byte[]> sound;
        using (var store = Open(file)) sound = [.. FileKind.All.Select(k => Encoding.UTF8.GetBytes(Export.Run(store, k)))];
        var (taken, refused, kinds) = (0, 0, new HashSet<string>());
        var clock = System.Diagnostics.Stopwatch.StartNew();
        try
        {
            var count = Folder.Count(1500, 10_000);
            for (var seed = 0; seed < count; seed++)
            {
                var kind = FileKind.All[seed % FileKind.All.Count];
                var bytes = Spoil.Of(new(seed), sound[seed % FileKind.All.Count], sound);
                if (One(file, kind, bytes, seed)) { taken++; kinds.Add(kind.Name); File.WriteAllBytes(file, atRest); }
                else { refused++; Assert.True(atRest.AsSpan().SequenceEqual(File.ReadAllBytes(file)), $"seed {seed}, {kind.Name}: refused, and yet the store is another"); }
            }
            output.WriteLine($"{taken} taken, {refused} refused in {clock.Elapsed.TotalSeconds:0.0} s");
            Assert.True(taken > count / 20 && refused > count / 5, $"{taken} taken, {refused} refused: that tries one side only");
            Assert.Empty(FileKind.All.Select(k => k.Name).Except(kinds));
        }
        finally { File.Delete(file); }
    }

    private static bool One(string file, FileKind kind, byte[] bytes, int seed)
    {
        var where = $"seed {seed}, {kind.Name}";
        using var store = Open(file);
        Imported imported;
        try { imported = Import.Run(store, kind, bytes, dryRun: false, kind is LayerFile or DivisionFile ? Shelf.Codes : null); }
        catch (Exception fault) { throw new InvalidOperationException($"{where}\n{Encoding.UTF8.GetString(bytes)[..Math.Min(2000, bytes.Length)]}", fault); }
        foreach (var fault in imported.Faults)
        {
            Assert.True(fault.Row >= 1 && fault.Allowed != "", $"{where}: {fault}");
            // a fault that only the database found is one that the reader should have told
            Assert.False(fault.Found.StartsWith("somebody else wrote"), $"{where}: {fault}");
        }
        if (!imported.Fine) return false;
        var all = imported.Added + imported.Changed + imported.Same;
        Assert.Equal(DataRows(bytes), all);
        using (var again = Open(file))
        {
            var trail = again.Trail.Count();
            var second = Import.Run(again, kind, bytes, dryRun: false, kind is LayerFile or DivisionFile ? Shelf.Codes : null);
            Assert.True(second is { Fine: true, Added: 0, Changed: 0, Removed: 0 } && second.Same == all,
                $"{where}, a second time: {second.InWords} {string.Join("; ", second.Faults.Take(2))}");
            var exported = Export.Run(again, kind);
            var third = Import.Run(again, kind, Encoding.UTF8.GetBytes(exported), dryRun: false, kind is LayerFile or DivisionFile ? Shelf.Codes : null);
            Assert.True(third is { Fine: true, Added: 0, Changed: 0, Removed: 0 }, $"{where}, its own export: {third.InWords} {string.Join("; ", third.Faults.Take(2))}");
            Assert.Equal(trail, again.Trail.Count());
        }
        return true;
    }

    /// <summary>Rows below the header that say anything, counted without the program's own reader: quotes are told by hand.</summary>
    private static int DataRows(byte[] bytes)
    {
        var text = Encoding.UTF8.GetString(bytes).TrimStart('\uFEFF');
        var (rows, quoted, any) = (0, false, false);
        foreach (var c in text + "\n")
        {
            if (c == '"') quoted = !quoted;
            if (!quoted && c is '\n' or '\r' && !quoted) { if (any) rows++; any = false; }
            else if (c is not (',' or '"') && !char.IsWhiteSpace(c)) any = true;
        }
        return Math.Max(0, rows - 1);
    }
}
