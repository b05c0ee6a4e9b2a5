using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;
using Microsoft.Extensions.DependencyInjection;
using Umpirage.Store.Postgres;
using Umpirage.Store.Sqlite;

namespace Umpirage.Store;

/// <summary>Where a district is kept: an SQLite file, or a PostgreSQL database.</summary>
public sealed record Place(string? File, string? Postgres)
{
    public static Place InFile(string file) => new(file, null);
    public static Place OnServer(string connection) => new(null, connection);

    /// <summary>The demonstration's file below a project's folder.</summary>
    public static Place DemoIn(string root) => InFile(Path.Combine(root, ".build", "demo.db"));

    public string InWords => File ?? "PostgreSQL";

    public DbContextOptions Options()
    {
        if (Postgres is not null) return new DbContextOptionsBuilder<PostgresStore>().UseNpgsql(Postgres).UseApplicationServiceProvider(WithPasskeys).Options;
        return new DbContextOptionsBuilder<SqliteStore>().UseSqlite(Connection).UseApplicationServiceProvider(WithPasskeys).Options;
    }

    /// <summary>The tables of accounts hold passkeys too only when told so here.</summary>
    private static readonly IServiceProvider WithPasskeys =
        new ServiceCollection().Configure<IdentityOptions>(o => o.Stores.SchemaVersion = IdentitySchemaVersions.Version3).BuildServiceProvider();

    /// <summary>The file's connection: writers wait up to half a minute for each other, and references are held.</summary>
    public string Connection => $"Data Source={File};Foreign Keys=True;Default Timeout=30;Pooling=True";

    public DistrictStore Open() => Postgres is not null
        ? new PostgresStore((DbContextOptions<PostgresStore>)Options()) : new SqliteStore((DbContextOptions<SqliteStore>)Options());

    /// <summary>Opens it with the tables of this version, making or migrating them as needed.</summary>
    public DistrictStore Ready()
    {
        var store = Open();
        store.Database.Migrate();
        // readers go on while one writes, and what is acknowledged is on the disk
        if (File is not null) store.Database.ExecuteSqlRaw("PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL;");
        return store;
    }
}

/// <summary>For the migrations tool only.</summary>
internal sealed class SqliteDesign : IDesignTimeDbContextFactory<SqliteStore>
{
    public SqliteStore CreateDbContext(string[] args) => (SqliteStore)Place.InFile("design.db").Open();
}

/// <summary>For the migrations tool only.</summary>
internal sealed class PostgresDesign : IDesignTimeDbContextFactory<PostgresStore>
{
    public PostgresStore CreateDbContext(string[] args) => (PostgresStore)Place.OnServer("Host=localhost;Database=design").Open();
}
