using System.Diagnostics;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.Demo;
using Umpirage.District.Pitchers;
using Umpirage.Store;

namespace Umpirage.Bench;

/// <summary>Who may pitch: answers a second, the whole demonstration district, and a season of five million lines in PostgreSQL.</summary>
internal static class PitchersBench
{
    private static readonly DateOnly Day = new(2026, 5, 16);

    public static void Run()
    {
        var codes = new PitchingCodes(Shelf.Read());
        Answers(codes);
        District(codes);
        Season(codes);
    }

    private static void Answers(PitchingCodes codes)
    {
        var code = codes.Of("BB 11-12", Day)!;
        var dice = new Random(1);
        var ledgers = Enumerable.Range(0, 2000).Select(p => Ledger.Of("p", Enumerable.Range(0, 12).Select(i => Line(dice, i)), key => new(key, "baseball", "12U", 600))).ToList();
        var occasion = new Occasion(Day, new("now", "baseball", "12U", 840));
        double Rate(Func<Ledger, bool> ask)
        {
            foreach (var ledger in ledgers) ask(ledger);
            var (watch, count) = (Stopwatch.StartNew(), 0);
            while (watch.ElapsedMilliseconds < 2000) foreach (var ledger in ledgers) { ask(ledger); count++; }
            return count / watch.Elapsed.TotalSeconds;
        }
        var (ours, plain) = (Rate(l => Eligible.Of(l, code, code, occasion).Answer == MayPitch.Yes), Rate(Plain));
        var differ = ledgers.Count(l => (Eligible.Of(l, code, code, occasion).Answer == MayPitch.Yes) != Plain(l));
        Console.WriteLine($"eligibility with reasons, rooms and next days: {ours:0} answers a second on one core; the yes or no alone, written by hand for this one code: {plain:0} a second ({plain / ours:0} times); {differ} of {ledgers.Count} answers differ");
    }

    private static Appearance Line(Random dice, int i)
    {
        var pitches = dice.Next(0, 60);
        return new($"G{i}", "p", "T", "home book", Day.AddDays(-2 * i - dice.Next(0, 2) - 1), 1, pitches, Math.Max(0, pitches - 4), pitches == 0 ? 0 : 3, 0, pitches == 0 ? 0 : 9);
    }

    /// <summary>The baseline: the youth table for ages 11 and 12 (national youth pitching guideline table, about 2015), yes or no and nothing else.</summary>
    private static bool Plain(Ledger ledger)
    {
        var (yesterday, before) = (false, false);
        foreach (var day in ledger.Outings.GroupBy(o => o.Day))
        {
            var back = Day.DayNumber - day.Key.DayNumber;
            var all = 0; var first = 0;
            foreach (var o in day) { if (o.Most.Pitches > 0) first = all + o.Most.FirstToLastBatter; all += o.Most.Pitches; }
            if (all == 0) continue;
            if (back == 1) yesterday = true;
            if (back == 2) before = true;
            var rest = first >= 66 ? 4 : first >= 51 ? 3 : first >= 36 ? 2 : first >= 21 ? 1 : 0;
            if (back - 1 < rest) return false;
        }
        return !(yesterday && before);
    }

    private static void District(PitchingCodes codes)
    {
        var place = Place.InFile(Path.Combine(Directory.CreateTempSubdirectory().FullName, "demo.db"));
        using (var store = place.Ready()) Seed.Demo(store, name => File.ReadAllText(Path.Combine(Shelf.Root, "demo", "oslemoor", name)));
        using var demo = place.Open();
        var first = Stopwatch.StartNew();
        var sheets = PitchingBook.Of(demo, codes, Day);
        first.Stop();
        var again = Stopwatch.StartNew();
        PitchingBook.Of(demo, codes, Day);
        Console.WriteLine($"who may pitch on Saturday, whole demonstration district: {sheets.Count} teams, {sheets.Sum(s => s.Arms.Count)} players, {first.ElapsedMilliseconds} ms at first, the codes worked out in it, {again.ElapsedMilliseconds} ms again (bar 1,000 ms)");
    }

    private static void Season(PitchingCodes codes)
    {
        if (Environment.GetEnvironmentVariable("UMPIRAGE_TEST_POSTGRES") is not { Length: > 0 } server)
        {
            Console.WriteLine("season of five million lines: not run, UMPIRAGE_TEST_POSTGRES names no server");
            return;
        }
        const int Teams = 40_000, Roster = 12, Games = 12;
        var name = $"bench_{Guid.NewGuid():N}";
        var master = Place.OnServer(server);
        using (var admin = master.Open()) Tell(admin, "CREATE DATABASE " + name);
        var place = Place.OnServer(server.Replace("Database=postgres", $"Database={name}", StringComparison.Ordinal));
        try
        {
            var watch = Stopwatch.StartNew();
            using (var store = place.Ready())
            {
                store.Database.SetCommandTimeout(3600);
                foreach (var sql in (string[])
                [
                    """INSERT INTO "Leagues" SELECT 'l' || i, 'League ' || i FROM generate_series(0, 579) i""",
                    """INSERT INTO "Divisions" ("Key", "Code", "Crew", "YouthBase") VALUES ('BB 11-12', 'baseball/12U+Oslemoor-baseball', 2, FALSE), ('SB 12U', 'softball/12U+Oslemoor', 2, FALSE)""",
                    $"""INSERT INTO "Teams" ("Key", "Name", "League", "Division") SELECT 't' || i, 'Team ' || i, 'l' || i % 580, CASE WHEN i % 3 = 0 THEN 'SB 12U' ELSE 'BB 11-12' END FROM generate_series(0, {Teams - 1}) i""",
                    """INSERT INTO "Parks" ("Key", "Name", "Latitude", "Longitude") SELECT 'p' || i, 'Park ' || i, 41, -88 FROM generate_series(0, 579) i""",
                    """INSERT INTO "Diamonds" ("Key", "Park", "Name", "BasePath", "Lit") SELECT 'd' || i, 'p' || i, '1', 60, TRUE FROM generate_series(0, 579) i""",
                    $"""INSERT INTO "Games" ("Key", "Division", "Visitor", "Home", "Diamond", "Start", "Status", "Sequence") SELECT 'g' || i || '-' || k, CASE WHEN i % 3 = 0 THEN 'SB 12U' ELSE 'BB 11-12' END, 't' || (i + 3) % {Teams}, 't' || i, 'd' || i % 580, TIMESTAMP '2026-03-07 09:00' + k * INTERVAL '7 days', 'Played', 0 FROM generate_series(0, {Teams - 1}) i, generate_series(0, {Games - 1}) k""",
                    $"""INSERT INTO "Players" SELECT 'p' || i, 'Mara T.' FROM generate_series(0, {Teams * Roster - 1}) i""",
                    $"""INSERT INTO "RosterPlaces" ("Player", "Team", "Jersey") SELECT 'p' || i, 't' || i / {Roster}, i % {Roster} FROM generate_series(0, {Teams * Roster - 1}) i""",
                    $"""INSERT INTO "Appearances" ("Game", "Player", "Team", "Counter", "Day", "Entry", "Pitches", "BeforeLastBatter", "Innings", "InningsCaught", "Outs") SELECT 'g' || i / {Roster} || '-' || k, 'p' || i, 't' || i / {Roster}, 'home book', DATE '2026-03-07' + 7 * k, 1, 30 + (i * 7 + k * 13) % 50, 25 + (i * 7 + k * 13) % 50, 1 + (i + k) % 5, 0, 3 FROM generate_series(0, {Teams * Roster - 1}) i, generate_series(0, {Games - 2}) k""",
                    """ANALYZE""",
                ]) store.Database.ExecuteSqlRaw(sql);
            }
            using var asked = place.Open();
            Console.WriteLine($"a season in PostgreSQL: {asked.Appearances.LongCount():N0} lines of {asked.Players.LongCount():N0} players made and loaded in {watch.Elapsed.TotalSeconds:0} s");
            var dice = new Random(2);
            var times = new List<double>();
            for (var i = 0; i < 2200; i++)
            {
                var player = dice.Next(Teams * Roster);
                using var store = place.Open();
                var w = Stopwatch.StartNew();
                PitchingBook.Of(store, codes, Day, [$"t{player / Roster}"], player: $"p{player}");
                if (i >= 200) times.Add(w.Elapsed.TotalMilliseconds);
            }
            times.Sort();
            Console.WriteLine($"  may this player pitch, 2,000 players at random: median {times[1000]:0.0} ms, p95 {times[1900]:0.0} ms (bar 5 ms), slowest {times[^1]:0.0} ms");
            var team = new List<double>();
            for (var i = 0; i < 300; i++)
            {
                using var store = place.Open();
                var w = Stopwatch.StartNew();
                PitchingBook.Of(store, codes, Day, [$"t{dice.Next(Teams)}"]);
                team.Add(w.Elapsed.TotalMilliseconds);
            }
            team.Sort();
            Console.WriteLine($"  a whole team's sheet: median {team[150]:0.0} ms, p95 {team[285]:0.0} ms");
            using var raw = place.Open();
            raw.Database.OpenConnection();
            using var command = raw.Database.GetDbConnection().CreateCommand();
            var bare = new List<double>();
            for (var i = 0; i < 500; i++)
            {
                command.CommandText = $"""SELECT * FROM "Appearances" WHERE "Player" = 'p{dice.Next(Teams * Roster)}'""";
                var w = Stopwatch.StartNew();
                using (var reader = command.ExecuteReader()) while (reader.Read()) { }
                bare.Add(w.Elapsed.TotalMilliseconds);
            }
            bare.Sort();
            Console.WriteLine($"  beside it the bare query for a player's lines: median {bare[250]:0.0} ms, p95 {bare[475]:0.0} ms");
        }
        finally
        {
            Npgsql.NpgsqlConnection.ClearAllPools();
            using var admin = master.Open();
            Tell(admin, $"DROP DATABASE IF EXISTS {name} WITH (FORCE)");
        }
    }

    private static void Tell(DistrictStore store, string sql)
    {
        store.Database.OpenConnection();
        using var command = store.Database.GetDbConnection().CreateCommand();
        command.CommandText = sql;
        command.ExecuteNonQuery();
    }
}
