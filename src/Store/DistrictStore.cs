using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.Calendar;
using Umpirage.District.Cases;
using Umpirage.District.Clinic;
using Umpirage.District.Crews;
using Umpirage.District.Diamonds;
using Umpirage.District.Gear;
using Umpirage.District.Options;
using Umpirage.District.People;
using Umpirage.District.Pitchers;
using Umpirage.District.Visits;
using Umpirage.Rules.Codes;

namespace Umpirage.Store;

/// <summary>A district's records in a database. Every save writes its own trail in the same transaction.</summary>
public abstract class DistrictStore(DbContextOptions options) : IdentityUserContext<Account, Guid>(options)
{
    /// <summary>Who is writing, as the trail will say.</summary>
    public string Actor { get; set; } = "nobody named";

    /// <summary>The day on which it is written; a game of a later day has not been pitched in yet.</summary>
    public DateOnly Today { get; set; } = DateOnly.FromDateTime(DateTime.Now);

    /// <summary>The rule code that crews are held against whenever they are saved. Whoever opens a store for people sets it; without it crews are not held against anything.</summary>
    public Func<Codebook>? Codes { get; set; }

    public DbSet<DistrictFacts> District => Set<DistrictFacts>();
    public DbSet<League> Leagues => Set<League>();
    public DbSet<Division> Divisions => Set<Division>();
    public DbSet<Team> Teams => Set<Team>();
    public DbSet<Park> Parks => Set<Park>();
    public DbSet<Diamond> Diamonds => Set<Diamond>();
    public DbSet<Person> People => Set<Person>();
    public DbSet<RoleHeld> Roles => Set<RoleHeld>();
    public DbSet<Guardianship> Guardianships => Set<Guardianship>();
    public DbSet<Official> Officials => Set<Official>();
    public DbSet<Clearance> Clearances => Set<Clearance>();
    public DbSet<Certificate> Certificates => Set<Certificate>();
    public DbSet<Availability> Availabilities => Set<Availability>();
    public DbSet<Away> Aways => Set<Away>();
    public DbSet<ScheduledGame> Games => Set<ScheduledGame>();
    public DbSet<Blackout> Blackouts => Set<Blackout>();
    public DbSet<GameMove> Moves => Set<GameMove>();
    public DbSet<Approval> Approvals => Set<Approval>();
    public DbSet<Interest> Interests => Set<Interest>();
    public DbSet<Pairing> Pairings => Set<Pairing>();
    public DbSet<HomePlace> Homes => Set<HomePlace>();
    public DbSet<Visit> Visits => Set<Visit>();
    public DbSet<Evaluation> Evaluations => Set<Evaluation>();
    public DbSet<Coordination> Coordinations => Set<Coordination>();
    public DbSet<GameOver> Endings => Set<GameOver>();
    public DbSet<ElsewhereGame> Elsewhere => Set<ElsewhereGame>();
    public DbSet<Assignment> Assignments => Set<Assignment>();
    public DbSet<AskedSwap> Swaps => Set<AskedSwap>();
    public DbSet<PublishedPlace> Published => Set<PublishedPlace>();
    public DbSet<FeedKey> FeedKeys => Set<FeedKey>();
    public DbSet<FrozenCrew> Frozen => Set<FrozenCrew>();
    public DbSet<Player> Players => Set<Player>();
    public DbSet<RosterPlace> RosterPlaces => Set<RosterPlace>();
    public DbSet<Appearance> Appearances => Set<Appearance>();
    public DbSet<LocalOption> Options => Set<LocalOption>();
    public DbSet<LastSurvey> Surveys => Set<LastSurvey>();
    public DbSet<TakenOut> Removals => Set<TakenOut>();
    public DbSet<AskedQuestion> Questions => Set<AskedQuestion>();
    public DbSet<Answered> Answers => Set<Answered>();
    public DbSet<Attendance> Attendances => Set<Attendance>();
    public DbSet<Offer> Offers => Set<Offer>();
    public DbSet<Sat> Sittings => Set<Sat>();
    public DbSet<TrailEntry> Trail => Set<TrailEntry>();

    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        Shape.Of(builder);
    }

    public override int SaveChanges(bool acceptAllChangesOnSuccess)
    {
        CrewGuard.Keep(this);
        var entries = TrailWriter.Write(this);
        try { return base.SaveChanges(acceptAllChangesOnSuccess); }
        catch { Forget(entries); throw; }
    }

    public override async Task<int> SaveChangesAsync(bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default)
    {
        CrewGuard.Keep(this);
        var entries = TrailWriter.Write(this);
        try { return await base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken); }
        catch { Forget(entries); throw; }
    }

    /// <summary>What was not saved leaves no trail: a second try writes its own.</summary>
    private void Forget(IReadOnlyList<TrailEntry> entries)
    {
        foreach (var entry in entries) Entry(entry).State = EntityState.Detached;
    }

    /// <summary>Puts a record in place of the one with the same key, or adds it.</summary>
    public void Put<T>(T record) where T : class
    {
        var key = Model.FindEntityType(typeof(T))!.FindPrimaryKey()!.Properties.Select(p => p.PropertyInfo!.GetValue(record)).ToArray();
        if (Set<T>().Find(key) is { } known) Entry(known).CurrentValues.SetValues(record);
        else Add(record);
    }
}
