using Microsoft.EntityFrameworkCore.Migrations;

namespace Umpirage.Store;

/// <summary>Makes the trail refuse every change and deletion inside the database, whoever asks.</summary>
internal static class AppendOnly
{
    internal static readonly Dictionary<string, string> SqliteTriggers = new()
    {
        ["TrailKept"] = """CREATE TRIGGER "TrailKept" BEFORE UPDATE ON "Trail" BEGIN SELECT RAISE(ABORT, 'the trail is only ever added to'); END;""",
        // what replaces a row deletes it without a word to the other trigger
        ["TrailFirst"] = """
            CREATE TRIGGER "TrailFirst" BEFORE INSERT ON "Trail" WHEN EXISTS (SELECT 1 FROM "Trail" WHERE "Number" = NEW."Number")
            BEGIN SELECT RAISE(ABORT, 'the trail is only ever added to'); END;
            """,
        ["TrailStays"] = """CREATE TRIGGER "TrailStays" BEFORE DELETE ON "Trail" BEGIN SELECT RAISE(ABORT, 'the trail is only ever added to'); END;""",
    };

    public static void HoldInSqlite(MigrationBuilder migration)
    {
        foreach (var make in SqliteTriggers.Values) migration.Sql(make);
    }

    public static void HoldInPostgres(MigrationBuilder migration) => migration.Sql("""
        CREATE FUNCTION trail_kept() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE EXCEPTION 'the trail is only ever added to'; END; $$;
        CREATE TRIGGER "TrailKept" BEFORE UPDATE OR DELETE ON "Trail" FOR EACH ROW EXECUTE FUNCTION trail_kept();
        CREATE TRIGGER "TrailStays" BEFORE TRUNCATE ON "Trail" FOR EACH STATEMENT EXECUTE FUNCTION trail_kept();
        """);
}
