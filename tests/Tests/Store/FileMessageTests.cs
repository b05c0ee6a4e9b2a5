using System.Text;
using Umpirage.Store.Files;

namespace Umpirage.Tests.Store;

/// <summary>
/// Files with one or several faults, and what each is told. The messages are on record in bad/messages.txt, to be read as a person would who made
/// the mistake. A file's kind is the first word of its name.
/// </summary>
public class FileMessageTests
{
    private static IEnumerable<(string Name, FileKind Kind, byte[] Bytes)> Bad() =>
        Shelf.Files(Folder.Of("tests", "Tests", "Store", "bad"), "*.csv").Select(f =>
            (Path.GetFileNameWithoutExtension(f), FileKind.Named(Path.GetFileName(f).Split('-', '.')[0])!, File.ReadAllBytes(f)));

    private static Codebook? Book(FileKind kind) => kind is LayerFile or DivisionFile ? Shelf.Codes : null;

    [Fact]
    public void Every_message_is_the_one_on_record()
    {
        using var own = OwnStore.OfHamlet(Kept.Sqlite);
        var text = new StringBuilder();
        foreach (var (name, kind, bytes) in Bad())
        {
            using var store = own.Open();
            var imported = Import.Run(store, kind, bytes, dryRun: false, Book(kind));
            text.AppendLine($"{name}: {imported.InWords}");
            foreach (var fault in imported.Faults.Take(8)) text.AppendLine($"  {fault}");
        }
        Golden.Golden.Compare(text.ToString(), "tests", "Tests", "Store", "bad", "messages.txt");
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void A_file_with_a_fault_changes_nothing_and_is_told_the_same_on_a_dry_run(Kept kept)
    {
        using var own = OwnStore.OfHamlet(kept);
        var before = Snapshot.Of(own);
        foreach (var (name, kind, bytes) in Bad())
        {
            using var store = own.Open();
            var dry = Import.Run(store, kind, bytes, dryRun: true, Book(kind));
            var real = Import.Run(store, kind, bytes, dryRun: false, Book(kind));
            Assert.False(real.Fine, name);
            Assert.Equal(dry.Faults, real.Faults);
            Assert.Equal((0, 0, 0, 0), (real.Added, real.Changed, real.Same, real.Removed));
            Assert.All(real.Faults, f => Assert.False(f.Found.StartsWith("somebody else wrote"), $"{name}: {f}"));
            store.SaveChanges();
        }
        Assert.Equal(before, Snapshot.Of(own));
    }

    [Fact]
    public void Every_kind_has_at_least_three_bad_files()
    {
        var count = Bad().GroupBy(b => b.Kind.Name).ToDictionary(g => g.Key, g => g.Count());
        Assert.All(FileKind.All, k => Assert.True(count.GetValueOrDefault(k.Name) >= 3, k.Name));
    }

    [Fact]
    public void All_faults_of_a_file_are_told_at_once()
    {
        using var own = OwnStore.OfHamlet(Kept.Sqlite);
        using var store = own.Open();
        // a fault for each of the four rows, two for the last; blank rows are counted as a spreadsheet counts them
        var faults = Import.Run(store, new DiamondFile(),
            "diamond,park,name,base path,lit\r\na/b,mill,A,60,yes\r\nc,moon,C,60,yes\r\n\r\nd,mill,,60,yes\r\n,,,,\r\ne,mill,E,9,perhaps\r\n"u8.ToArray(), dryRun: false).Faults;
        Assert.Equal([(2, "diamond"), (3, "park"), (5, "name"), (7, "base path"), (7, "lit")], faults.Select(f => (f.Row, f.Column)));
    }
}
