using System.Text;
using Umpirage.District.Options;
using Umpirage.District.People;
using Umpirage.Store;
using Umpirage.Store.Files;

namespace Umpirage.Tests.Store;

/// <summary>What is written as a file is read back as it was, on both databases.</summary>
public class RoundTripTests
{
    private static Dictionary<string, string> Exported(DistrictStore store) => FileKind.All.ToDictionary(k => k.Name, k => Export.Run(store, k));

    private static Imported Take(DistrictStore store, FileKind kind, string text) => Import.Run(store, kind, Encoding.UTF8.GetBytes(text), dryRun: false);

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void The_demonstration_exported_and_imported_into_an_empty_store_exports_the_same_bytes(Kept kept)
    {
        using var from = OwnStore.Oslemoor(kept);
        using var to = OwnStore.Empty(kept);
        using var source = from.Open();
        // the demonstration has no layers of its own; these end in a line end and were made within a second, as at the desk
        foreach (var option in Hamlet.Records().OfType<LocalOption>()) source.Put(option);
        source.SaveChanges();
        var first = Exported(source);
        Assert.All(first, f => Assert.True(f.Value.Count(c => c == '\n') > 1, $"{f.Key} has no rows"));

        using (var target = to.Open())
            foreach (var kind in FileKind.All)
            {
                var imported = Take(target, kind, first[kind.Name]);
                Assert.True(imported.Fine, $"{kind.Name}: {string.Join("; ", imported.Faults.Take(3))}");
                Assert.Equal((0, 0, 0), (imported.Changed, imported.Same, imported.Removed));
            }
        using (var target = to.Open()) Assert.Equal(first, Exported(target));

        using var again = to.Open();
        var trail = again.Trail.Count();
        foreach (var kind in FileKind.All)
        {
            var imported = Take(again, kind, first[kind.Name]);
            Assert.True(imported.Fine, $"{kind.Name}: {string.Join("; ", imported.Faults.Take(3))}");
            Assert.Equal((0, 0, 0), (imported.Added, imported.Changed, imported.Removed));
        }
        Assert.Equal(trail, again.Trail.Count());

        // and a store that reads its own export has nothing to change either
        var before = source.Trail.Count();
        Assert.All(FileKind.All, k => { var own = Take(source, k, first[k.Name]); Assert.True(own is { Fine: true, Added: 0, Changed: 0, Removed: 0 },
            $"{k.Name}: {own.InWords}"); });
        Assert.Equal(before, source.Trail.Count());
    }

    /// <summary>Evaluations of minors are on record, and none of them is in a file; reading the file back takes none of them away.</summary>
    [Fact]
    public void No_file_tells_the_steps_of_a_minor()
    {
        using var own = OwnStore.Oslemoor(Kept.Sqlite);
        using var store = own.Open();
        var minors = store.People.AsEnumerable().Where(p => p.IsMinor).Select(p => p.Key).ToHashSet();
        var theirs = store.Evaluations.AsEnumerable().Where(e => minors.Contains(e.Umpire)).Select(e => e.Key).ToList();
        Assert.NotEmpty(theirs);
        var kind = FileKind.Named("evaluations")!;
        var text = Export.Run(store, kind);
        Assert.DoesNotContain(text.Split("\r\n"), row => minors.Contains(row.Split(',')[0]));
        Assert.True(Take(store, kind, text).Fine);
        Assert.Equal(theirs.Order(), store.Evaluations.AsEnumerable().Where(e => minors.Contains(e.Umpire)).Select(e => e.Key).Order());
    }

    [Fact]
    public void Both_databases_export_the_same_bytes()
    {
        using var file = OwnStore.Oslemoor(Kept.Sqlite);
        using var server = OwnStore.Oslemoor(Kept.Postgres);
        using var one = file.Open();
        using var other = server.Open();
        // where a server sorts as people do, these two change places
        foreach (var store in new[] { one, other })
        {
            foreach (var key in new[] { "Zedland", "abelton" }) store.Put(new League(key, key));
            store.SaveChanges();
        }
        Assert.Equal(Exported(one), Exported(other));
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void Names_that_a_spreadsheet_would_run_come_out_guarded_and_come_back_as_they_were(Kept kept)
    {
        string[] names =
        [
            "=1+1", "=cmd|' /C calc'!A0", "@SUM(A1)", "+1+cmd", "-2+3+cmd|' /C calc'!D2", "+1 555 0100", "-", "'=1+1", "''=1", "'quoted'", "''", "-5", "+7", "a,b",
            "say \"no\"", "café ☂", "1e5", "0x1F",
        ];
        using var own = OwnStore.Empty(kept);
        using var store = own.Open();
        for (var i = 0; i < names.Length; i++) store.Put(new League($"l-{i:00}", names[i]));
        store.SaveChanges();
        var text = Export.Run(store, new LeagueFile());
        var cells = new List<string>();
        using (var reader = new CsvHelper.CsvParser(new StringReader(text), System.Globalization.CultureInfo.InvariantCulture))
            for (reader.Read(); reader.Read();) cells.Add(reader.Record![1]);
        // a spreadsheet runs a cell that begins so, unless it is a plain number
        Assert.All(cells, c => Assert.True("=@\t\r+-".IndexOf(c[0]) < 0 || int.TryParse(c, out _), c));

        using var empty = OwnStore.Empty(kept);
        using var target = empty.Open();
        Assert.True(Take(target, new LeagueFile(), text).Fine);
        Assert.Equal(names, target.Leagues.OrderBy(l => l.Key).Select(l => l.Name).ToArray());
        Assert.Equal(text, Export.Run(target, new LeagueFile()));
    }

    [Fact]
    public void A_place_is_kept_as_finely_as_it_is_written()
    {
        using var own = OwnStore.Empty(Kept.Sqlite);
        using var store = own.Open();
        const string text = "park,name,latitude,longitude\r\nmill,Mill,41.43921234567,-88.24540009999\r\n";
        Assert.True(Take(store, new ParkFile(), text).Fine);
        var written = Export.Run(store, new ParkFile());
        Assert.Equal("park,name,latitude,longitude\r\nmill,Mill,41.439212,-88.2454\r\n", written);
        Assert.Equal((0, 1), Take(store, new ParkFile(), written) is var same ? (same.Changed, same.Same) : default);
        Assert.Equal((0, 1), Take(store, new ParkFile(), text) is var once ? (once.Changed, once.Same) : default);
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void A_row_that_says_less_of_its_own_takes_away_what_it_no_longer_says(Kept kept)
    {
        using var own = OwnStore.OfHamlet(kept);
        using var store = own.Open();
        var text = Export.Run(store, new PersonFile()).Replace("manager of TAR-1; president of tarnholt", "president of tarnholt");
        Assert.Equal((0, 1, 1), Take(store, new PersonFile(), text) is var done ? (done.Added, done.Changed, done.Removed) : default);
        Assert.Equal(Role.President, Assert.Single(store.Roles.Where(r => r.Person == "other").ToList()).Role);
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void A_dry_run_tells_the_counts_and_changes_nothing(Kept kept)
    {
        using var own = OwnStore.OfHamlet(kept);
        using var store = own.Open();
        var before = Snapshot.Of(own);
        var text = "league,name\r\ntarnholt,Tarnholt Mill League\r\nnew,New League\r\nwrenfall,Wrenfall League\r\n";
        var would = Import.Run(store, new LeagueFile(), Encoding.UTF8.GetBytes(text), dryRun: true);
        Assert.Equal((true, 1, 1, 1), (would.Fine, would.Added, would.Changed, would.Same));
        store.SaveChanges();
        Assert.Equal(before, Snapshot.Of(own));
        Assert.Equal((1, 1, 1), Take(store, new LeagueFile(), text) is var did ? (did.Added, did.Changed, did.Same) : default);
        Assert.NotEqual(before, Snapshot.Of(own));
    }

    [Fact]
    public async Task Two_who_import_at_the_same_moment_are_told_or_done_but_never_half()
    {
        using var own = OwnStore.OfHamlet(Kept.Postgres);
        var told = 0;
        for (var round = 0; round < 10; round++)
        {
            var texts = Enumerable.Range(0, 4).Select(w => "league,name\r\n" + string.Concat(Enumerable.Range(0, 20).Select(i => $"r{round}-{i},by {w}\r\n"))).ToList();
            var results = await Task.WhenAll(texts.Select(t => Task.Run(() => { using var store = own.Open(); return Take(store, new LeagueFile(), t); })));
            Assert.Contains(results, r => r.Fine);
            told += results.Count(r => !r.Fine);
            Assert.All(results.Where(r => !r.Fine), r => Assert.Contains("to try again", Assert.Single(r.Faults).Allowed));
            using var look = own.Open();
            Assert.Single(look.Leagues.Where(l => l.Key.StartsWith($"r{round}-")).Select(l => l.Name).Distinct().ToList());
        }
        Assert.True(told > 0, "nobody was in another's way: the test tries nothing");
    }
}
