using Microsoft.EntityFrameworkCore;

namespace Umpirage.Store.Postgres;

/// <summary>A region's districts on a server. Clock times of games have no zone; instants are UTC.</summary>
public sealed class PostgresStore(DbContextOptions<PostgresStore> options) : DistrictStore(options)
{
    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        // a game's clock time belongs to the district's zone, everything else is an instant
        builder.Entity<District.Calendar.ScheduledGame>().Property(g => g.Start).HasColumnType("timestamp without time zone");
        builder.Entity<District.Calendar.GameMove>().Property(m => m.FromStart).HasColumnType("timestamp without time zone");
        builder.Entity<District.Calendar.GameMove>().Property(m => m.ToStart).HasColumnType("timestamp without time zone");
    }
}
