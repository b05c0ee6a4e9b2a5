using Microsoft.EntityFrameworkCore;

namespace Umpirage.Store.Sqlite;

/// <summary>One district in one file. Writers wait for each other; a reader never waits.</summary>
public sealed class SqliteStore(DbContextOptions<SqliteStore> options) : DistrictStore(options);
