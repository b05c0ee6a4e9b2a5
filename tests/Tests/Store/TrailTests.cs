using System.Text;
using Microsoft.AspNetCore.Identity;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using Umpirage.District.Calendar;
using Umpirage.District.People;
using Umpirage.Store;
using Umpirage.Store.Files;

namespace Umpirage.Tests.Store;

/// <summary>Every write leaves a line in the trail, and nobody takes one back.</summary>
public class TrailTests
{
    private static List<TrailEntry> New(OwnStore own, Action<DistrictStore> deed)
    {
        using var store = own.Open();
        var last = store.Trail.Max(t => (long?)t.Number) ?? 0;
        deed(store);
        using var look = own.Open();
        return [.. look.Trail.AsNoTracking().Where(t => t.Number > last).OrderBy(t => t.Number)];
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void Every_write_tells_who_what_before_and_after(Kept kept)
    {
        using var own = OwnStore.OfHamlet(kept);
        var started = DateTime.UtcNow.AddSeconds(-1);

        var added = Assert.Single(New(own, s => { s.Put(new League("new", "New League")); s.SaveChanges(); }));
        Assert.Equal(("tester", "League", "new", "added", null), (added.By, added.What, added.Key, added.Deed, added.Before));
        Assert.Contains("\"Name\":\"New League\"", added.After);
        Assert.InRange(added.At, started, DateTime.UtcNow.AddSeconds(1));

        var changed = Assert.Single(New(own, s => { s.Actor = "somebody else"; s.Put(new League("new", "Newer League")); s.SaveChanges(); }));
        Assert.Equal(("somebody else", "League", "new", "changed"), (changed.By, changed.What, changed.Key, changed.Deed));
        Assert.Contains("New League", changed.Before);
        Assert.Contains("Newer League", changed.After);

        var removed = Assert.Single(New(own, s => { s.Remove(s.Leagues.Find("new")!); s.SaveChanges(); }));
        Assert.Equal(("League", "new", "removed", null), (removed.What, removed.Key, removed.Deed, removed.After));
        Assert.Contains("Newer League", removed.Before);

        Assert.Empty(New(own, s => { s.Put(new League("tarnholt", "Tarnholt League")); s.SaveChanges(); }));
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public async Task A_save_that_does_not_wait_leaves_the_same_trail(Kept kept)
    {
        using var own = OwnStore.OfHamlet(kept);
        await using (var store = own.Open()) { store.Put(new League("new", "New League")); await store.SaveChangesAsync(); }
        using var look = own.Open();
        Assert.Single(look.Trail.Where(t => t.What == "League" && t.Key == "new").ToList());
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void An_import_leaves_an_entry_for_each_record_it_touches(Kept kept)
    {
        using var own = OwnStore.OfHamlet(kept);
        var text = "person,given name,age band,league,roles,grade,games a week,since\r\n" +
            "umpire-1,Ben,adult,tarnholt,umpire,plate,3,2019\r\nnew-1,Hal,adult,,umpire; trainer,,,\r\n";
        var entries = New(own, s => Assert.True(Import.Run(s, new PersonFile(), Encoding.UTF8.GetBytes(text), dryRun: false).Fine));
        Assert.Equal(
            ["Official umpire-1 changed", "Person new-1 added", "Person umpire-1 changed", "RoleHeld new-1/Trainer// added", "RoleHeld new-1/Umpire// added"],
            entries.Select(e => $"{e.What} {e.Key} {e.Deed}").Order(StringComparer.Ordinal));
        Assert.All(entries, e => Assert.Equal((e.Deed == "added", true, "tester"), (e.Before is null, e.After is not null, e.By)));
        Assert.Contains("200 555 0100", entries.Single(e => e.Key == "umpire-1" && e.What == "Person").Before);

        Assert.Empty(New(own, s => Import.Run(s, new PersonFile(), "person,given name,age band\r\nx,,adult\r\n"u8.ToArray(), dryRun: false)));
        Assert.Empty(New(own, s => Import.Run(s, new LeagueFile(), "league,name\r\nx,X\r\n"u8.ToArray(), dryRun: true)));
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void Whoever_fills_or_restores_a_store_is_on_its_trail(Kept kept)
    {
        using var own = OwnStore.Empty(kept);
        var seeded = New(own, s => Seed.Put(s, Hamlet.Records()));
        Assert.Equal(Hamlet.Records().Select(r => r.GetType().Name).Distinct().Order(), seeded.Select(e => e.What).Order());
        Assert.All(seeded, e => Assert.Equal(("tester", "added"), (e.By, e.Deed)));
        var file = own.PathOf("all.zip");
        using (var store = own.Open()) Backup.Write(store, file);
        var restored = Assert.Single(New(own, s => Assert.Empty(Restore.Run(s, file).Faults)));
        Assert.Equal(("tester", "Backup", "all.zip", "restored"), (restored.By, restored.What, restored.Key, restored.Deed));
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void A_game_that_goes_takes_its_crew_along_and_the_trail_says_so(Kept kept)
    {
        using var own = OwnStore.OfHamlet(kept);
        var entries = New(own, s => { s.Remove(s.Games.Find("G-1")!); s.SaveChanges(); });
        Assert.Equal(["AskedSwap swap-1 removed", "Assignment G-1/base removed", "Assignment G-1/plate removed", "ScheduledGame G-1 removed"], entries.Select(e => $"{e.What} {e.Key} {e.Deed}")
            .Order(StringComparer.Ordinal));
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void A_save_that_fails_leaves_no_trail_and_a_second_try_leaves_one(Kept kept)
    {
        using var own = OwnStore.OfHamlet(kept);
        var entries = New(own, s =>
        {
            s.Put(new Team("LOST-1", "Lost Owls", "nowhere", "SB 12U"));
            Assert.Throws<DbUpdateException>(() => s.SaveChanges());
            s.Put(new League("nowhere", "Nowhere League"));
            s.SaveChanges();
        });
        Assert.Equal(["League nowhere added", "Team LOST-1 added"], entries.Select(e => $"{e.What} {e.Key} {e.Deed}").Order(StringComparer.Ordinal));
    }

    public static TheoryData<Kept, string> Attempts() => new()
    {
        { Kept.Sqlite, """UPDATE "Trail" SET "By" = 'nobody'""" }, { Kept.Sqlite, """DELETE FROM "Trail" WHERE "Number" = 1""" }, { Kept.Sqlite, """DELETE FROM "Trail" """ },
        { Kept.Sqlite, """INSERT OR REPLACE INTO "Trail" ("Number", "At", "By", "What", "Key", "Deed") SELECT "Number", "At", 'nobody', "What", "Key", "Deed" FROM "Trail" """ },
        { Kept.Sqlite, """INSERT INTO "Trail" SELECT * FROM "Trail" WHERE true ON CONFLICT ("Number") DO UPDATE SET "By" = 'nobody'""" },
        { Kept.Postgres, """UPDATE "Trail" SET "By" = 'nobody'""" }, { Kept.Postgres, """DELETE FROM "Trail" WHERE "Number" = 1""" }, { Kept.Postgres, """TRUNCATE "Trail" """ },
        { Kept.Postgres, """INSERT INTO "Trail" OVERRIDING SYSTEM VALUE SELECT * FROM "Trail" ON CONFLICT ("Number") DO UPDATE SET "By" = 'nobody'""" },
        { Kept.Postgres, """MERGE INTO "Trail" t USING "Trail" o ON t."Number" = o."Number" WHEN MATCHED THEN DELETE""" },
    };

    [Theory, MemberData(nameof(Attempts))]
    public void The_database_itself_refuses_to_change_the_trail(Kept kept, string sql)
    {
        using var own = OwnStore.OfHamlet(kept);
        var before = Snapshot.Of(own);
        using (System.Data.Common.DbConnection connection = kept == Kept.Sqlite ? new SqliteConnection(own.Place.Connection) : new NpgsqlConnection(own.Place.Postgres))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = sql;
            var refused = Assert.ThrowsAny<System.Data.Common.DbException>(() => command.ExecuteNonQuery());
            Assert.Contains("the trail is only ever added to", refused.Message);
        }
        Assert.Equal(before, Snapshot.Of(own));
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void After_a_restore_the_trail_is_held_as_before(Kept kept)
    {
        using var own = OwnStore.OfHamlet(kept);
        var file = own.PathOf("all.zip");
        using (var store = own.Open()) { Backup.Write(store, file); Assert.Empty(Restore.Run(store, file).Faults); }
        foreach (var sql in Attempts().Where(a => a.Data.Item1 == kept).Select(a => a.Data.Item2))
            using (var store = own.Open())
                Assert.ThrowsAny<System.Data.Common.DbException>(() => store.Database.ExecuteSqlRaw(sql));
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void The_program_refuses_too_before_it_comes_to_that(Kept kept)
    {
        using var own = OwnStore.OfHamlet(kept);
        using var store = own.Open();
        store.Remove(store.Trail.First());
        Assert.Throws<InvalidOperationException>(() => store.SaveChanges());
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void Secrets_of_accounts_never_stand_in_the_trail(Kept kept)
    {
        using var own = OwnStore.OfHamlet(kept);
        var id = Guid.NewGuid();
        var entries = New(own, s =>
        {
            var account = new Account
            {
                Id = id, UserName = "ada", Person = "chief", PasswordHash = "SECRET-hash", SecurityStamp = "SECRET-stamp", ConcurrencyStamp = "SECRET-concurrency",
                Email = "SECRET@mail.example", PhoneNumber = "SECRET-phone",
            };
            s.Users.Add(account);
            s.SaveChanges();
            s.UserTokens.Add(new() { UserId = id, LoginProvider = "own", Name = "authenticator", Value = "SECRET-token" });
            s.UserClaims.Add(new() { UserId = id, ClaimType = "SECRET-claim", ClaimValue = "SECRET-value" });
            s.UserLogins.Add(new() { UserId = id, LoginProvider = "own", ProviderKey = "holder-7", ProviderDisplayName = "SECRET-name" });
            if (s.Model.FindEntityType(typeof(IdentityUserPasskey<Guid>)) is not null)
                s.Set<IdentityUserPasskey<Guid>>().Add(new() { UserId = id, CredentialId = [1, 2],
                    Data = new() { PublicKey = "SECRET-key"u8.ToArray(), Name = "SECRET", AttestationObject = [], ClientDataJson = [] } });
            s.SaveChanges();
            account.PasswordHash = "SECRET-hash-2";
            s.SaveChanges();
            s.Users.Remove(account);
            s.SaveChanges();
        });
        Assert.Equal(["added", "changed", "removed"], entries.Where(e => e.What == "Account").Select(e => e.Deed));
        Assert.True(entries.Count >= 7);
        Assert.All(entries, e => Assert.DoesNotContain("SECRET", $"{e.By} {e.What} {e.Key} {e.Deed} {e.Before} {e.After}", StringComparison.OrdinalIgnoreCase));
        Assert.All(entries, e => Assert.DoesNotContain(Convert.ToHexString("SECRET"u8), $"{e.Key} {e.Before} {e.After}"));
    }
}
