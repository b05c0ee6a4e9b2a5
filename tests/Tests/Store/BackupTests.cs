using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Nodes;
using Umpirage.Store;

namespace Umpirage.Tests.Store;

/// <summary>A backup brings everything back on either database, and one that is not as it was written is refused with its reason.</summary>
public class BackupTests
{
    [Theory]
    [InlineData(Kept.Sqlite, Kept.Sqlite), InlineData(Kept.Sqlite, Kept.Postgres), InlineData(Kept.Postgres, Kept.Sqlite), InlineData(Kept.Postgres, Kept.Postgres)]
    public void A_backup_of_the_demonstration_restores_every_row(Kept from, Kept into)
    {
        using var old = OwnStore.Oslemoor(from);
        using (var store = old.Open())
        {
            foreach (var record in Hamlet.Records().OfType<Umpirage.District.Options.LocalOption>()) store.Put(record);
            // where a server sorts as people do, these two change places
            foreach (var key in new[] { "Zedland", "abelton" }) store.Put(new Umpirage.District.People.League(key, key));
            store.Users.Add(new() { Id = Guid.Parse("00000000-0000-0000-0000-000000000007"), UserName = "ada", PasswordHash = "h", Person = "chief",
                LockoutEnd = DateTimeOffset.UnixEpoch.AddDays(20000) });
            store.Questions.Add(new("q-1", new DateTime(2026, 5, 16, 13, 0, 0, DateTimeKind.Utc), "chief", "Is she out?\n☂", "leaving early", "softball/12U", "{}", "{}", "",
                true));
            store.SaveChanges();
        }
        var file = old.PathOf("all.zip");
        long written;
        using (var store = old.Open()) written = Backup.Write(store, file);
        var before = Snapshot.In(file);
        Assert.True(written > 10_000);

        using var fresh = OwnStore.Empty(into);
        using (var store = fresh.Open())
        {
            var (records, faults) = Restore.Run(store, file);
            Assert.Empty(faults);
            Assert.Equal(written, records);
        }
        var second = fresh.PathOf("again.zip");
        using (var store = fresh.Open()) Backup.Write(store, second);
        var after = Snapshot.In(second);
        Assert.Equal(before.Where(t => t.Key != "Trail"), after.Where(t => t.Key != "Trail"));
        var trail = Snapshot.Rows(second, "Trail");
        Assert.Equal(Snapshot.Rows(file, "Trail"), trail[..^1]);
        Assert.Contains("restored", trail[^1]);

        // what the restored store writes next goes on behind what it was given
        using var goesOn = fresh.Open();
        goesOn.Put(new Umpirage.District.People.League("later", "Later League"));
        goesOn.SaveChanges();
        Assert.Equal(trail.Length + 1, goesOn.Trail.Count());
    }

    public static TheoryData<string, string> Damages() => new()
    {
        { "a flipped byte", "checksum differs" }, { "a missing table", "the table Games is missing" }, { "a table listed twice", "the table Games is missing" },
        { "another shape", "has the tables of 'Zeroth'" },
        { "no list", "this is no backup" }, { "a list without tables", "this is no backup" }, { "a list that is no JSON", "this is no backup" },
        { "no zip", "cannot be opened" }, { "an empty file", "cannot be opened" },
        { "no file", "cannot be opened" }, { "truncated", "cannot be opened" }, { "another column", "has other columns than here" },
        { "a column short", "has other columns than here" },
        { "a word for a number", "holds something this program cannot take" }, { "a cell short", "holds something this program cannot take" },
        { "a row that is no list", "holds something this program cannot take" },
        { "a team of no league", "holds something this program cannot take" },
    };

    [Theory, MemberData(nameof(Damages))]
    public void A_damaged_backup_is_refused_and_nothing_is_changed(string damage, string reason)
    {
        foreach (var kept in Environment.GetEnvironmentVariable("UMPIRAGE_TEST_POSTGRES") is { Length: > 0 } ? new[] { Kept.Sqlite, Kept.Postgres } : [Kept.Sqlite])
        {
            using var own = OwnStore.OfHamlet(kept);
            var file = own.PathOf("all.zip");
            using (var store = own.Open()) Backup.Write(store, file);
            Damage(damage, file);
            var before = Snapshot.Of(own);
            using (var store = own.Open())
            {
                var (records, faults) = Restore.Run(store, file);
                Assert.Equal(0, records);
                Assert.Contains(reason, string.Join("; ", faults));
            }
            Assert.Equal(before, Snapshot.Of(own));
        }
    }

    private static void Damage(string how, string file)
    {
        var bytes = File.ReadAllBytes(file);
        switch (how)
        {
            case "no zip": File.WriteAllText(file, "league,name\r\n"); break;
            case "an empty file": File.WriteAllBytes(file, []); break;
            case "no file": File.Delete(file); break;
            case "truncated": File.WriteAllBytes(file, bytes[..(bytes.Length * 2 / 3)]); break;
            case "no list": Edit(file, zip => zip.GetEntry("list.json")!.Delete()); break;
            case "a list that is no JSON": Edit(file, zip => Replace(zip, "list.json", _ => "{")); break;
            case "a list without tables": Edit(file, zip => Listed(zip, list => list.Remove("Tables"))); break;
            case "another shape": Edit(file, zip => Listed(zip, list => list["Shape"] = "Zeroth")); break;
            case "a missing table": Edit(file, zip => zip.GetEntry("tables/Games.jsonl")!.Delete()); break;
            case "a table listed twice": Edit(file, zip => Listed(zip, list => list["Tables"]!.AsArray().Add(Table(list, "Games").DeepClone()))); break;
            case "a flipped byte": Edit(file, zip => Replace(zip, "tables/Games.jsonl", t => t.Replace("G-1", "G-0"))); break;
            case "another column": Edit(file, zip => Listed(zip, list => Table(list, "Games")["Columns"]![0] = "Colour")); break;
            case "a column short": Edit(file, zip => Listed(zip, list => Table(list, "Games")["Columns"]!.AsArray().RemoveAt(0))); break;
            // these are wrong though their checksums are right
            case "a word for a number": Forge(file, "Diamonds", t => t.Replace("60", "\"sixty\"")); break;
            case "a cell short": Forge(file, "Leagues", t => t.Replace("\"tarnholt\",", "")); break;
            case "a row that is no list": Forge(file, "Leagues", t => t + "{}\n"); break;
            case "a team of no league": Forge(file, "Leagues", t => t.Split('\n')[1] + "\n"); break;
            default: throw new ArgumentException(how);
        }
    }

    private static void Edit(string file, Action<ZipArchive> deed)
    {
        using var zip = ZipFile.Open(file, ZipArchiveMode.Update);
        deed(zip);
    }

    private static string Replace(ZipArchive zip, string name, Func<string, string> change)
    {
        string text;
        using (var reader = new StreamReader(zip.GetEntry(name)!.Open())) text = reader.ReadToEnd();
        var changed = change(text);
        if (changed == text) throw new InvalidOperationException($"{name} is as it was");
        zip.GetEntry(name)!.Delete();
        using var writer = new StreamWriter(zip.CreateEntry(name).Open());
        writer.Write(changed);
        return changed;
    }

    private static void Listed(ZipArchive zip, Action<JsonObject> change) => Replace(zip, "list.json", text =>
    {
        var list = JsonNode.Parse(text)!.AsObject();
        change(list);
        return list.ToJsonString();
    });

    private static JsonNode Table(JsonObject list, string name) => list["Tables"]!.AsArray().Single(t => (string)t!["Name"]! == name)!;

    private static void Forge(string file, string table, Func<string, string> change) => Edit(file, zip =>
    {
        var text = Replace(zip, $"tables/{table}.jsonl", change);
        Listed(zip, list => Table(list, table)["Sha256"] = Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(text))));
    });

    [Fact]
    public void Whatever_byte_is_flipped_the_store_is_as_before_or_wholly_restored()
    {
        using var own = OwnStore.OfHamlet(Kept.Sqlite);
        var file = own.PathOf("all.zip");
        using (var store = own.Open()) Backup.Write(store, file);
        var sound = File.ReadAllBytes(file);
        var wanted = Snapshot.In(file).Where(t => t.Key != "Trail").ToList();
        using (var store = own.Open()) { store.Put(new Umpirage.District.People.League("tarnholt", "Another name")); store.SaveChanges(); }
        var kept = Snapshot.Of(own);
        OwnStore.Rest(own.Place);
        var atRest = File.ReadAllBytes(own.Place.File!);
        var random = new Random(1);
        var (refused, restored) = (0, 0);
        for (var i = 0; i < Folder.Count(150, 3000); i++)
        {
            var spoilt = (byte[])sound.Clone();
            spoilt[random.Next(spoilt.Length)] ^= (byte)(1 << random.Next(8));
            // every tenth is cut short instead
            File.WriteAllBytes(file, i % 10 == 0 ? sound[..random.Next(sound.Length)] : spoilt);
            using (var store = own.Open())
            {
                var (records, faults) = Restore.Run(store, file);
                if (records == 0) { Assert.NotEmpty(faults); refused++; }
                else restored++;
                if (records == 0) { Assert.Equal(kept, Snapshot.Of(own)); continue; }
            }
            Assert.Equal(wanted, Snapshot.Of(own).Where(t => t.Key != "Trail"));
            OwnStore.Rest(own.Place);
            File.WriteAllBytes(own.Place.File!, atRest);
        }
        Assert.True(refused > restored, $"{refused} refused, {restored} restored");
    }
}
