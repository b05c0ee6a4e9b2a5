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

namespace Umpirage.Store;

/// <summary>Keys, references and column kinds. Words for kinds are kept as words, so that a table can be read by eye.</summary>
internal static class Shape
{
    public static void Of(ModelBuilder model)
    {
        model.Entity<DistrictFacts>().ToTable("District").HasKey(d => d.Key);
        model.Entity<League>().HasKey(l => l.Key);
        model.Entity<Division>().HasKey(d => d.Key);
        model.Entity<Team>(t =>
        {
            t.HasKey(x => x.Key);
            t.HasOne<League>().WithMany().HasForeignKey(x => x.League).OnDelete(DeleteBehavior.Restrict);
            t.HasOne<Division>().WithMany().HasForeignKey(x => x.Division).OnDelete(DeleteBehavior.Restrict);
        });
        model.Entity<Park>().HasKey(p => p.Key);
        model.Entity<Diamond>(d =>
        {
            d.HasKey(x => x.Key);
            d.HasOne<Park>().WithMany().HasForeignKey(x => x.Park).OnDelete(DeleteBehavior.Restrict);
        });
        model.Entity<LastSurvey>(s =>
        {
            s.HasKey(x => x.Diamond);
            s.HasOne<Diamond>().WithMany().HasForeignKey(x => x.Diamond).OnDelete(DeleteBehavior.Restrict);
        });
        model.Entity<TakenOut>(t =>
        {
            t.ToTable("Removals").HasKey(x => x.Key);
            t.HasOne<ScheduledGame>().WithMany().HasForeignKey(x => x.Game).OnDelete(DeleteBehavior.Restrict);
        });
        People(model);
        Games(model);
        Clinic(model);
        model.Entity<LocalOption>(o =>
        {
            o.HasKey(x => new { x.Layer, x.Version });
            o.Property(x => x.Status).HasConversion<string>();
        });
        model.Entity<AskedQuestion>(q =>
        {
            q.HasKey(x => x.Key);
            q.HasIndex(x => x.At);
        });
        model.Entity<TrailEntry>(t =>
        {
            t.ToTable("Trail").HasKey(x => x.Number);
            t.HasIndex(x => new { x.What, x.Key });
        });
    }

    private static void People(ModelBuilder model)
    {
        model.Entity<Person>(p =>
        {
            // the program cannot make such a person; the database will not keep one either
            p.ToTable(t => t.HasCheckConstraint("MinorsHaveNoAddress", """("Band" IN ('Adult', 'Over70')) OR ("Phone" IS NULL AND "Mail" IS NULL)"""));
            p.HasKey(x => x.Key);
            p.Property(x => x.Band).HasConversion<string>();
            p.Ignore(x => x.IsMinor);
            p.Ignore(x => x.ListName);
            p.HasOne<League>().WithMany().HasForeignKey(x => x.League).OnDelete(DeleteBehavior.Restrict);
        });
        model.Entity<RoleHeld>(r =>
        {
            r.ToTable("Roles").HasKey(x => new { x.Person, x.Role, x.League, x.Team });
            r.Property(x => x.Role).HasConversion<string>();
            OfPerson<RoleHeld>(r, nameof(RoleHeld.Person));
        });
        model.Entity<Guardianship>(g =>
        {
            g.HasKey(x => new { x.Child, x.Guardian });
            OfPerson<Guardianship>(g, nameof(Guardianship.Child));
            OfPerson<Guardianship>(g, nameof(Guardianship.Guardian));
        });
        model.Entity<Official>(o =>
        {
            o.HasKey(x => x.Person);
            o.Property(x => x.Grade).HasConversion<string>();
            OfPerson<Official>(o, nameof(Official.Person));
        });
        model.Entity<Clearance>(c =>
        {
            c.HasKey(x => new { x.Person, x.Requirement, x.From });
            OfPerson<Clearance>(c, nameof(Clearance.Person));
        });
        model.Entity<Certificate>(c =>
        {
            c.HasKey(x => new { x.Person, x.Game, x.Division, x.Position, x.From });
            c.Property(x => x.Position).HasConversion<string>();
            OfPerson<Certificate>(c, nameof(Certificate.Person));
        });
        model.Entity<Availability>(a =>
        {
            a.HasKey(x => new { x.Person, x.Day, x.From });
            a.Property(x => x.Day).HasConversion<string>();
            OfPerson<Availability>(a, nameof(Availability.Person));
        });
        model.Entity<Away>(a =>
        {
            a.HasKey(x => new { x.Person, x.From });
            OfPerson<Away>(a, nameof(Away.Person));
        });
        model.Entity<Approval>(a =>
        {
            a.HasKey(x => new { x.Child, x.Guardian, x.From });
            OfPerson<Approval>(a, nameof(Approval.Child));
            OfPerson<Approval>(a, nameof(Approval.Guardian));
        });
        model.Entity<Interest>(i =>
        {
            i.HasKey(x => new { x.Person, x.Kind, x.Of });
            i.Property(x => x.Kind).HasConversion<string>();
            OfPerson<Interest>(i, nameof(Interest.Person));
        });
        model.Entity<Pairing>(p =>
        {
            p.HasKey(x => new { x.Person, x.Other, x.Kind, x.From });
            p.Property(x => x.Kind).HasConversion<string>();
            OfPerson<Pairing>(p, nameof(Pairing.Person));
            OfPerson<Pairing>(p, nameof(Pairing.Other));
        });
        model.Entity<HomePlace>(h =>
        {
            h.HasKey(x => x.Person);
            OfPerson<HomePlace>(h, nameof(HomePlace.Person));
        });
        model.Entity<Visit>(v =>
        {
            v.HasKey(x => new { x.Person, x.Position, x.On, x.By });
            v.Property(x => x.Position).HasConversion<string>();
            OfPerson<Visit>(v, nameof(Visit.Person));
            OfPerson<Visit>(v, nameof(Visit.By));
        });
        model.Entity<Evaluation>(e =>
        {
            e.HasKey(x => x.Key);
            e.HasIndex(x => x.Umpire);
            e.Ignore(x => x.Position);
            e.Ignore(x => x.Steps);
            e.Ignore(x => x.Strong);
            e.Ignore(x => x.ToWorkOn);
            e.Ignore(x => x.Mark);
            e.Ignore(x => x.Halo);
            e.Ignore(x => x.Visit);
            OfPerson<Evaluation>(e, nameof(Evaluation.Umpire));
            OfPerson<Evaluation>(e, nameof(Evaluation.Evaluator));
            e.HasOne<ScheduledGame>().WithMany().HasForeignKey(x => x.Game).OnDelete(DeleteBehavior.Restrict);
        });
        model.Entity<FeedKey>(f =>
        {
            f.HasKey(x => x.Person);
            f.HasIndex(x => x.Digest).IsUnique();
            OfPerson<FeedKey>(f, nameof(FeedKey.Person));
        });
        model.Entity<Account>().Property(a => a.Person).HasMaxLength(64);
    }

    private static void Games(ModelBuilder model)
    {
        model.Entity<ScheduledGame>(g =>
        {
            g.ToTable("Games").HasKey(x => x.Key);
            g.Property(x => x.Status).HasConversion<string>();
            g.HasIndex(x => x.Start);
            g.Ignore(x => x.IsAhead);
            g.Ignore(x => x.Stands);
            g.Ignore(x => x.Day);
            g.HasOne<Division>().WithMany().HasForeignKey(x => x.Division).OnDelete(DeleteBehavior.Restrict);
            g.HasOne<Team>().WithMany().HasForeignKey(x => x.Home).OnDelete(DeleteBehavior.Restrict);
            g.HasOne<Team>().WithMany().HasForeignKey(x => x.Visitor).OnDelete(DeleteBehavior.Restrict);
            g.HasOne<Diamond>().WithMany().HasForeignKey(x => x.Diamond).OnDelete(DeleteBehavior.Restrict);
        });
        model.Entity<Blackout>(b =>
        {
            b.HasKey(x => new { x.Kind, x.Of, x.From });
            b.Property(x => x.Kind).HasConversion<string>();
        });
        model.Entity<GameMove>(m =>
        {
            m.HasKey(x => new { x.Plan, x.Game });
            m.Property(x => x.FromStatus).HasConversion<string>();
            m.Property(x => x.ToStatus).HasConversion<string>();
            m.HasOne<ScheduledGame>().WithMany().HasForeignKey(x => x.Game).OnDelete(DeleteBehavior.Restrict);
        });
        model.Entity<Assignment>(a =>
        {
            a.HasKey(x => new { x.Game, x.Place });
            a.HasOne<ScheduledGame>().WithMany().HasForeignKey(x => x.Game).OnDelete(DeleteBehavior.Cascade);
            a.HasOne<Person>().WithMany().HasForeignKey(x => x.Person).OnDelete(DeleteBehavior.Restrict);
        });
        model.Entity<Coordination>(c =>
        {
            c.HasKey(x => x.Game);
            c.HasOne<ScheduledGame>().WithMany().HasForeignKey(x => x.Game).OnDelete(DeleteBehavior.Restrict);
            OfPerson<Coordination>(c, nameof(Coordination.Person));
        });
        model.Entity<GameOver>(o =>
        {
            o.HasKey(x => x.Game);
            o.HasOne<ScheduledGame>().WithMany().HasForeignKey(x => x.Game).OnDelete(DeleteBehavior.Restrict);
        });
        model.Entity<ElsewhereGame>(e =>
        {
            e.HasKey(x => new { x.Person, x.Start });
            OfPerson<ElsewhereGame>(e, nameof(ElsewhereGame.Person));
        });
        model.Entity<AskedSwap>(s =>
        {
            s.ToTable("Swaps").HasKey(x => x.Key);
            s.Property(x => x.State).HasConversion<string>();
            s.HasIndex(x => x.State);
            s.Ignore(x => x.IsOpen);
            s.Ignore(x => x.IsAgreed);
            s.HasOne<ScheduledGame>().WithMany().HasForeignKey(x => x.Game).OnDelete(DeleteBehavior.Restrict);
            s.HasOne<ScheduledGame>().WithMany().HasForeignKey(x => x.OtherGame).OnDelete(DeleteBehavior.Restrict);
            OfPerson<AskedSwap>(s, nameof(AskedSwap.Person));
            OfPerson<AskedSwap>(s, nameof(AskedSwap.Other));
        });
        model.Entity<PublishedPlace>(p =>
        {
            p.ToTable("Published").HasKey(x => new { x.Game, x.Place, x.At });
            p.HasIndex(x => x.At);
            p.HasOne<ScheduledGame>().WithMany().HasForeignKey(x => x.Game).OnDelete(DeleteBehavior.Restrict);
            p.HasOne<Diamond>().WithMany().HasForeignKey(x => x.Diamond).OnDelete(DeleteBehavior.Restrict);
            OfPerson<PublishedPlace>(p, nameof(PublishedPlace.Person));
        });
        model.Entity<FrozenCrew>(f =>
        {
            f.ToTable("Frozen").HasKey(x => x.Game);
            f.HasOne<ScheduledGame>().WithMany().HasForeignKey(x => x.Game).OnDelete(DeleteBehavior.Cascade);
        });
        model.Entity<Player>().HasKey(p => p.Key);
        model.Entity<RosterPlace>(r =>
        {
            r.HasKey(x => new { x.Player, x.Team });
            r.HasOne<Player>().WithMany().HasForeignKey(x => x.Player).OnDelete(DeleteBehavior.Restrict);
            r.HasOne<Team>().WithMany().HasForeignKey(x => x.Team).OnDelete(DeleteBehavior.Restrict);
        });
        model.Entity<Appearance>(a =>
        {
            a.HasKey(x => new { x.Game, x.Player, x.Counter, x.Day, x.Entry });
            a.HasIndex(x => x.Player);
            a.Ignore(x => x.Count);
            a.HasOne<ScheduledGame>().WithMany().HasForeignKey(x => x.Game).OnDelete(DeleteBehavior.Restrict);
            a.HasOne<Player>().WithMany().HasForeignKey(x => x.Player).OnDelete(DeleteBehavior.Restrict);
            a.HasOne<Team>().WithMany().HasForeignKey(x => x.Team).OnDelete(DeleteBehavior.Restrict);
        });
    }

    private static void Clinic(ModelBuilder model)
    {
        model.Entity<Answered>(a =>
        {
            a.HasKey(x => new { x.Person, x.At, x.Question });
            a.HasIndex(x => x.Question);
            OfPerson<Answered>(a, nameof(Answered.Person));
        });
        model.Entity<Attendance>(a =>
        {
            a.HasKey(x => new { x.Person, x.Unit, x.Day });
            OfPerson<Attendance>(a, nameof(Attendance.Person));
            OfPerson<Attendance>(a, nameof(Attendance.TaughtBy));
        });
        model.Entity<Offer>(o =>
        {
            o.HasKey(x => new { x.Unit, x.Day, x.Place });
            OfPerson<Offer>(o, nameof(Offer.TaughtBy));
        });
        model.Entity<Sat>(s =>
        {
            s.HasKey(x => new { x.Person, x.Kind, x.Form });
            s.Property(x => x.Position).HasConversion<string>();
            OfPerson<Sat>(s, nameof(Sat.Person));
            OfPerson<Sat>(s, nameof(Sat.Proctor));
            OfPerson<Sat>(s, nameof(Sat.TalkedBy));
        });
    }

    private static void OfPerson<T>(Microsoft.EntityFrameworkCore.Metadata.Builders.EntityTypeBuilder<T> table, string column) where T : class =>
        table.HasOne<Person>().WithMany().HasForeignKey(column).OnDelete(DeleteBehavior.Restrict);
}
