namespace Umpirage.Tests.Codes;

/// <summary>Checking one layer finds what checking everything finds of it and of the sheets it touches.</summary>
public class LayerAloneTests
{
    private const string Faulty = """
        Layer: Farrowgate
        kind: league
        on: Oslemoor
        title: Farrowgate League softball options (2026)

        Sheet: run limit in an inning
        Set run limit
          softball from 2026-01-01 = many | Farrowgate options 2026, 1 | our own

        Sheet: double first base
        Set nothing of the kind
          softball = yes | Farrowgate options 2026, 2 | our own

        Sheet: time limit
        Set no new inning after
          softball from 2026-01-01 = 95 min | Farrowgate options 2026, 3 | our own
        nonsense
        """;

    [Fact]
    public void It_finds_the_same_as_checking_everything()
    {
        var book = Codebook.Read(("roster.txt", Shelf.RosterText),
            Shelf.Files(Folder.Of("codes"), "*.sheet").Concat(Shelf.Files(Folder.Of("codes"), "*.layer")).Select(f => new SourceText(Path.GetFileName(f), File.ReadAllText(f))).Append(new("faulty.layer", Faulty)));
        var all = Checker.Check(book);
        foreach (var layer in book.Layers)
        {
            var touched = layer.Changes.Select(c => book.Sheet(c.Sheet)?.File).Concat(layer.Additions.Select(a => book.Sheet(a.Sheet)?.File)).Append(layer.File).ToHashSet();
            var alone = Checker.Check(book, layer);
            Assert.Equal(all.Where(f => f.File == layer.File), alone.Where(f => f.File == layer.File));
            Assert.All(all.Where(f => touched.Contains(f.File)), f => Assert.Contains(f, alone));
            Assert.All(alone, f => Assert.Contains(f, all));
        }
        Assert.True(Checker.Check(book, book.Layer("Farrowgate")!).Count >= 3);
    }
}
