using Microsoft.EntityFrameworkCore;

namespace Umpirage.Store.Postgres;

/// <summary>A region's districts on a server. Clock times of games have no zone; instants are UTC.</summary>
public sealed class PostgresStore(DbContextOptions<PostgresStore> options) : DistrictStore(options)
{
    private const string Clock = "timestamp without time zone";

    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        // a game's clock time belongs to the district's zone, everything else is an instant
        builder.Entity<District.Calendar.ScheduledGame>().Property(g => g.Start).HasColumnType(Clock);
        builder.Entity<District.Calendar.GameOver>().Property(g => g.At).HasColumnType(Clock);
        builder.Entity<District.Calendar.ElsewhereGame>().Property(g => g.Start).HasColumnType(Clock);
        builder.Entity<District.Calendar.ElsewhereGame>().Property(g => g.Until).HasColumnType(Clock);
        builder.Entity<District.Crews.PublishedPlace>().Property(p => p.Start).HasColumnType(Clock);
        builder.Entity<District.Calendar.GameMove>().Property(m => m.FromStart).HasColumnType(Clock);
        builder.Entity<District.Calendar.GameMove>().Property(m => m.ToStart).HasColumnType(Clock);
    }
}
