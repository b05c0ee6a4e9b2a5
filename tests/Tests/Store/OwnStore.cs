using Microsoft.Data.Sqlite;
using Npgsql;
using Umpirage.District.Demo;
using Umpirage.Store;

namespace Umpirage.Tests.Store;

public enum Kept { Sqlite, Postgres }

/// <summary>
/// A store of a test's own, gone afterwards. On PostgreSQL it is a database that sorts as people do in English, not by character codes, so that an
/// order that hangs on the server is seen. Filled stores are copies of one that is made once.
/// </summary>
internal sealed class OwnStore : IDisposable
{
    public Place Place { get; }
    /// <summary>For files beside the store.</summary>
    public string Folder { get; } = Directory.CreateTempSubdirectory("umpirage-store-").FullName;

    private OwnStore(Kept kept) => Place = kept == Kept.Sqlite ? Place.InFile(Path.Combine(Folder, "district.db")) : Place.OnServer(Connection($"t_{Guid.NewGuid():N}"));

    public string PathOf(string name) => Path.Combine(Folder, name);

    public DistrictStore Open()
    {
        var store = Place.Open();
        store.Actor = "tester";
        store.Today = DateOnly.FromDateTime(Umpirage.District.Demo.Oslemoor.Now);
        return store;
    }

    /// <summary>Without any table yet.</summary>
    public static OwnStore Bare(Kept kept)
    {
        if (kept == Kept.Postgres) NeedsServer();
        var own = new OwnStore(kept);
        if (kept == Kept.Postgres) Tell($"CREATE DATABASE {NameOf(own.Place)} TEMPLATE template0");
        return own;
    }

    /// <summary>With the tables, and nothing in them.</summary>
    public static OwnStore Empty(Kept kept) => CopyOf(kept, kept == Kept.Sqlite ? EmptyFile : EmptyServer);

    /// <summary>With the demonstration district.</summary>
    public static OwnStore Oslemoor(Kept kept) => CopyOf(kept, kept == Kept.Sqlite ? FullFile : FullServer);

    /// <summary>The demonstration district in a file of somebody's own.</summary>
    public static void CopyOslemoor(string file)
    {
        lock (Copying) File.Copy(FullFile.Value.File!, file);
    }

    /// <summary>With the few records of <see cref="Hamlet"/>.</summary>
    public static OwnStore OfHamlet(Kept kept)
    {
        var own = Empty(kept);
        using var store = own.Open();
        Seed.Put(store, Hamlet.Records());
        return own;
    }

    public static Plan Plan { get; } = Plan.Read(name => File.ReadAllText(Tests.Folder.Of("demo", "oslemoor", name)));

    private static readonly Lazy<Place> EmptyFile = new(() => Model(Kept.Sqlite, full: false)), FullFile = new(() => Model(Kept.Sqlite, full: true));
    private static readonly Lazy<Place> EmptyServer = new(() => Model(Kept.Postgres, full: false)), FullServer = new(() => Model(Kept.Postgres, full: true));
    private static readonly List<OwnStore> Models = [];
    private static readonly Lock Copying = new();

    private static Place Model(Kept kept, bool full)
    {
        var own = new OwnStore(kept);
        lock (Models)
        {
            if (Models.Count == 0) AppDomain.CurrentDomain.ProcessExit += (_, _) => Models.ForEach(m => m.Dispose());
            Models.Add(own);
        }
        if (kept == Kept.Postgres) Tell($"""CREATE DATABASE {NameOf(own.Place)} TEMPLATE template0 ENCODING 'UTF8' LOCALE_PROVIDER icu ICU_LOCALE 'en-US'""");
        using (var store = own.Place.Ready())
        {
            if (full) Seed.Demo(store, name => File.ReadAllText(Tests.Folder.Of("demo", "oslemoor", name)));
        }
        Rest(own.Place);
        return own.Place;
    }

    private static OwnStore CopyOf(Kept kept, Lazy<Place> model)
    {
        if (kept == Kept.Postgres) NeedsServer();
        var own = new OwnStore(kept);
        // a server copies a database only while nobody is in it
        lock (Copying)
        {
            if (kept == Kept.Sqlite) File.Copy(model.Value.File!, own.Place.File!);
            else Tell($"CREATE DATABASE {NameOf(own.Place)} TEMPLATE {NameOf(model.Value)}");
        }
        return own;
    }

    /// <summary>Lets go of pooled connections; a file is then whole in itself.</summary>
    public static void Rest(Place place)
    {
        if (place.Postgres is not null) { using var pool = new NpgsqlConnection(place.Postgres); NpgsqlConnection.ClearPool(pool); return; }
        using (var connection = new SqliteConnection(place.Connection))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA wal_checkpoint(TRUNCATE)";
            command.ExecuteNonQuery();
            SqliteConnection.ClearPool(connection);
        }
    }

    private static string? Server => Environment.GetEnvironmentVariable("UMPIRAGE_TEST_POSTGRES") is { Length: > 0 } text ? text : null;

    public static void NeedsServer() => Assert.SkipWhen(Server is null, "no PostgreSQL: UMPIRAGE_TEST_POSTGRES is not set; ./test.sh starts one");

    private static string Connection(string database) => new NpgsqlConnectionStringBuilder(Server) { Database = database, MaxPoolSize = 20 }.ConnectionString;

    public static string NameOf(Place place) => new NpgsqlConnectionStringBuilder(place.Postgres).Database!;

    /// <summary>Says something to the server itself.</summary>
    public static void Tell(string sql) => Ask(sql);

    public static object? Ask(string sql)
    {
        using var connection = new NpgsqlConnection(Server);
        connection.Open();
        using var command = new NpgsqlCommand(sql, connection) { CommandTimeout = 120 };
        return command.ExecuteScalar();
    }

    public void Dispose()
    {
        if (Place.Postgres is not null) { Rest(Place); Tell($"DROP DATABASE IF EXISTS {NameOf(Place)} WITH (FORCE)"); }
        else { using var connection = new SqliteConnection(Place.Connection); SqliteConnection.ClearPool(connection); }
        Directory.Delete(Folder, recursive: true);
    }
}
