using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Migrations;
using Umpirage.Store;

namespace Umpirage.Tests.Store;

/// <summary>A store written by an earlier version comes along with its records.</summary>
public class MigrationTests
{
    [Theory]
    [InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void A_log_of_the_first_version_belongs_to_its_games_own_day(Kept kept)
    {
        using var own = OwnStore.Bare(kept);
        using (var before = own.Open())
        {
            before.GetService<IMigrator>().Migrate("First");
            foreach (var sql in (string[])
            [
                """INSERT INTO "Leagues" ("Key", "Name") VALUES ('tarnholt', 'Tarnholt League')""",
                """INSERT INTO "Divisions" ("Key", "Code", "Crew", "YouthBase") VALUES ('SB', 'softball/12U', 2, TRUE)""",
                """INSERT INTO "Teams" ("Key", "Name", "League", "Division") VALUES ('A', 'Owls', 'tarnholt', 'SB'), ('B', 'Terns', 'tarnholt', 'SB')""",
                """INSERT INTO "Parks" ("Key", "Name", "Latitude", "Longitude") VALUES ('mill', 'Mill', 41, -88)""",
                """INSERT INTO "Diamonds" ("Key", "Park", "Name", "BasePath", "Lit") VALUES ('mill-1', 'mill', '1', 60, TRUE)""",
                """INSERT INTO "Games" ("Key", "Division", "Visitor", "Home", "Diamond", "Start", "Status", "Sequence") VALUES ('G', 'SB', 'A', 'B', 'mill-1', '2026-05-12 23:30:00', 'Played', 0)""",
                """INSERT INTO "Players" ("Key", "Name") VALUES ('p', 'Mara T.')""",
                """INSERT INTO "Appearances" ("Game", "Player", "Team", "Counter", "Pitches", "BeforeLastBatter", "Innings", "InningsCaught") VALUES ('G', 'p', 'A', 'home book', 48, 44, 4, 0)""",
            ]) before.Database.ExecuteSqlRaw(sql);
        }
        own.Place.Ready().Dispose();
        using var after = own.Open();
        var line = Assert.Single(after.Appearances.AsNoTracking());
        Assert.Equal((new DateOnly(2026, 5, 12), 1, 48, 44, 4, 0), (line.Day, line.Entry, line.Pitches, line.BeforeLastBatter, line.Innings, line.Outs));
    }
}
