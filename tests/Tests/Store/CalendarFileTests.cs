using System.Text;
using Ical.Net;
using Ical.Net.DataTypes;
using Umpirage.District.Calendar;
using Umpirage.District.People;
using Umpirage.Store;
using Umpirage.Store.Files;

namespace Umpirage.Tests.Store;

/// <summary>Games go out as a calendar, and times, places and cancellations come back in.</summary>
public class CalendarFileTests
{
    private const string Domain = "@games.umpirage.invalid";

    private static Imported Read(DistrictStore store, string text, bool dryRun = false) => CalendarFile.Read(store, Encoding.UTF8.GetBytes(text), dryRun);

    private static string Written(DistrictStore store, params string[] keys) =>
        CalendarFile.Write(store, [.. store.Games.Where(g => keys.Length == 0 || keys.Contains(g.Key)).OrderBy(g => g.Key)]);

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void Another_reader_finds_every_game_at_its_local_time_with_its_sequence(Kept kept)
    {
        using var own = OwnStore.Oslemoor(kept);
        using var store = own.Open();
        var games = store.Games.OrderBy(g => g.Key).ToList();
        var read = Ical.Net.Calendar.Load(CalendarFile.Write(store, games))!;
        Assert.Equal(games.Count, read.Events.Count);
        foreach (var (game, one) in games.Zip(read.Events))
        {
            Assert.Equal(game.Key + Domain, one.Uid);
            Assert.Equal("America/Chicago", one.Start!.TzId);
            Assert.Equal(game.Start, one.Start.Value);
            // the demonstration's season lies in summer time, five hours behind
            Assert.Equal(game.Start.AddHours(5), one.Start.AsUtc);
            Assert.Equal(game.Start.AddHours(2), one.End!.Value);
            Assert.Equal(game.Sequence, one.Sequence);
            Assert.Equal(game.Status == GameStatus.RainedOut ? EventStatus.Cancelled : EventStatus.Confirmed, one.Status);
        }
    }

    [Fact]
    public void The_zone_is_told_with_its_summer_time()
    {
        using var own = OwnStore.OfHamlet(Kept.Sqlite);
        using var store = own.Open();
        var text = Written(store);
        // RFC 5545, 3.6.5: a VTIMEZONE has at least one STANDARD or DAYLIGHT part
        Assert.Contains("BEGIN:VTIMEZONE", text);
        Assert.Contains("TZID:America/Chicago", text);
        Assert.Contains("BEGIN:DAYLIGHT", text);
        Assert.Contains("TZOFFSETTO:-0500", text);
        Assert.Contains("BEGIN:STANDARD", text);
        Assert.Contains("TZOFFSETTO:-0600", text);
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void What_was_written_reads_back_as_no_change(Kept kept)
    {
        using var own = OwnStore.Oslemoor(kept);
        using var store = own.Open();
        var trail = store.Trail.Count();
        var read = Read(store, Written(store));
        Assert.True(read.Fine, string.Join("; ", read.Faults.Take(3)));
        // the season (C1) and the games of the stories
        Assert.Equal((0, 0, 1848 + store.Games.Count(g => g.Key.StartsWith("S-"))), (read.Added, read.Changed, read.Same));
        Assert.Equal(trail, store.Trail.Count());
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void A_changed_start_moves_the_game_and_raises_its_sequence(Kept kept)
    {
        using var own = OwnStore.OfHamlet(kept);
        using (var store = own.Open())
        {
            var text = Written(store);
            Assert.Contains("DTSTART;TZID=America/Chicago:20260516T090000", text);
            Assert.Equal((1, 2), Read(store, text.Replace("TZID=America/Chicago:20260516T090000", "TZID=America/Chicago:20260517T133000")) is var read
                ? (read.Changed, read.Same) : default);
        }
        using var after = own.Open();
        var moved = after.Games.Find("G-1")!;
        Assert.Equal((new DateTime(2026, 5, 17, 13, 30, 0), GameStatus.Moved, 1), (moved.Start, moved.Status, moved.Sequence));
        Assert.Equal(3, after.Games.Find("G-2")!.Sequence);
        Assert.Contains("SEQUENCE:1", Written(after, "G-1"));
    }

    [Fact]
    public void A_start_in_universal_time_or_another_zone_is_taken_in_the_district_s_own()
    {
        using var own = OwnStore.OfHamlet(Kept.Sqlite);
        using var store = own.Open();
        var text = Written(store, "G-1");
        Assert.True(Read(store, text.Replace("DTSTART;TZID=America/Chicago:20260516T090000", "DTSTART:20260516T190000Z")).Fine);
        Assert.Equal(new(2026, 5, 16, 14, 0, 0), store.Games.Find("G-1")!.Start);
        Assert.True(Read(store, text.Replace("DTSTART;TZID=America/Chicago:20260516T090000", "DTSTART;TZID=America/New_York:20260516T180000")).Fine);
        Assert.Equal(new(2026, 5, 16, 17, 0, 0), store.Games.Find("G-1")!.Start);
        Assert.True(Read(store, text.Replace("DTSTART;TZID=America/Chicago:20260516T090000", "DTSTART:20260516T101500")).Fine);
        Assert.Equal(new(2026, 5, 16, 10, 15, 0), store.Games.Find("G-1")!.Start);
    }

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public void A_cancelled_event_calls_the_game_off_and_its_feed_says_so(Kept kept)
    {
        using var own = OwnStore.OfHamlet(kept);
        using var store = own.Open();
        Assert.True(Read(store, Written(store, "G-2").Replace("STATUS:CONFIRMED", "STATUS:CANCELLED")).Fine);
        var game = store.Games.Find("G-2")!;
        Assert.Equal((GameStatus.CalledOff, 4), (game.Status, game.Sequence));
        Assert.Contains("STATUS:CANCELLED", Written(store, "G-2"));
    }

    [Fact]
    public void A_change_of_diamond_moves_the_game_there()
    {
        using var own = OwnStore.OfHamlet(Kept.Sqlite);
        using var store = own.Open();
        Assert.True(Read(store, Written(store, "G-1").Replace("LOCATION:Tarnholt Mill 1", "LOCATION:Wrenfall Common 1")).Fine);
        Assert.Equal(("common-1", 1), store.Games.Find("G-1") is var game ? (game!.Diamond, game.Sequence) : default);
    }

    [Fact]
    public void Diamonds_that_are_called_alike_do_not_draw_games_to_each_other()
    {
        using var own = OwnStore.OfHamlet(Kept.Sqlite);
        using var store = own.Open();
        store.Put(new Diamond("common-1", "common", "Field 1", 60, false));
        store.Put(new Diamond("mill-1", "mill", "Field 1", 60, true));
        store.SaveChanges();
        Assert.Equal((true, 0, 3), Read(store, Written(store)) is var read ? (read.Fine, read.Changed, read.Same) : default);
        store.Put(new Diamond("mill-2", "mill", "Mill 2", 60, true));
        store.Put(store.Games.Find("G-1")! with { Diamond = "mill-2" });
        store.SaveChanges();
        var fault = Assert.Single(Read(store, Written(store, "G-1").Replace("LOCATION:Mill 2", "LOCATION:Field 1")).Faults);
        Assert.Equal("row 1, LOCATION: found 'Field 1'; allowed is a name that only one diamond has; common-1 and mill-1 are all called so", fault.ToString());
    }

    public static TheoryData<string, string, string> Spoilings() => new()
    {
        { "UID:G-1@games.umpirage.invalid", "UID:G-9@games.umpirage.invalid", "row 1, UID: found 'G-9@games.umpirage.invalid'; allowed is the identity of a game on record" },
        { "UID:G-1@games.umpirage.invalid", "UID:G-1@elsewhere.example", "row 1, UID: found 'G-1@elsewhere.example'; allowed is the identity of a game on record" },
        { "LOCATION:Tarnholt Mill 1", "LOCATION:the old mill", "row 1, LOCATION: found 'the old mill'; allowed is the name of a diamond on record" },
        { "DTSTART;TZID=America/Chicago:20260516T090000", "DTSTART;VALUE=DATE:20260516", "row 1, DTSTART: found '2026-05-16'; allowed is a day and a time" },
        { "DTSTART;TZID=America/Chicago:20260516T090000", "DTSTART;TZID=Nowhere/Land:20260516T090000", "allowed is a time in a zone of the IANA time zone database" },
        { "DTSTART;TZID=America/Chicago:20260516T090000", "DTSTART:yesterday", "row 1" },
    };

    [Theory, MemberData(nameof(Spoilings))]
    public void An_event_that_cannot_be_taken_is_told_and_nothing_is_changed(string from, string to, string told)
    {
        using var own = OwnStore.OfHamlet(Kept.Sqlite);
        var before = Snapshot.Of(own);
        using (var store = own.Open())
        {
            var text = Written(store);
            Assert.Contains(from, text);
            var read = Read(store, text.Replace(from, to).Replace("20260516T113000", "20260516T120000"));
            Assert.False(read.Fine);
            Assert.Contains(told, string.Join("\n", read.Faults));
        }
        Assert.Equal(before, Snapshot.Of(own));
    }

    [Fact]
    public void Scrambled_calendars_raise_no_exception_and_change_all_or_nothing()
    {
        using var own = OwnStore.OfHamlet(Kept.Sqlite);
        byte[] sound;
        using (var store = own.Open()) sound = Encoding.UTF8.GetBytes(Written(store));
        var faulty = 0;
        for (var seed = 0; seed < Folder.Count(200, 3000); seed++)
        {
            using var store = own.Open();
            var read = CalendarFile.Read(store, Spoil.Of(new(seed), sound, [sound]), dryRun: true);
            if (!read.Fine) faulty++;
            Assert.All(read.Faults, f => Assert.True(f.Row >= 1 && f.Allowed != "" && !f.Found.StartsWith("somebody else"), f.ToString()));
        }
        Assert.InRange(faulty, 1, int.MaxValue);
    }
}
