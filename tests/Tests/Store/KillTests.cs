using System.Diagnostics;
using System.Text.RegularExpressions;
using Microsoft.Data.Sqlite;
using Npgsql;
using Umpirage.District.Calendar;
using Umpirage.District.People;
using Umpirage.Store;

namespace Umpirage.Tests.Store;

/// <summary>
/// A writer killed at any moment leaves whole batches and absent batches, never half of one, and what it was told is done is there. The writer is
/// tests/Kill; its batches and their sizes are retyped here.
/// </summary>
public partial class KillTests(ITestOutputHelper output)
{
    [GeneratedRegex(@"^b(\d+)-")]
    private static partial Regex Numbered();

    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public async Task A_killed_writer_leaves_whole_batches_and_all_it_acknowledged(Kept kept)
    {
        using var own = OwnStore.Empty(kept);
        using (var store = own.Place.Ready())
        {
            store.Actor = "tester";
            Seed.Put(store, [
                new League("kill", "A League"), new Division("kill", "softball/12U", 1, false), new Park("kill", "A Park", 41, -88),
                new Diamond("kill", "kill", "A Diamond", 60, true),
                new Team("kill-1", "One", "kill", "kill"), new Team("kill-2", "Two", "kill", "kill"),
            ]);
        }
        using var look = own.Open();
        var baseTrail = look.Trail.Count();
        var folder = Directory.CreateDirectory(own.PathOf("batches")).FullName;
        var random = new Random(20260516);
        var acknowledged = new HashSet<int>();
        var (rounds, whole, absent, terminated, ended) = (Folder.Count(5, 200), 0, 0, 0, 0);
        var clock = Stopwatch.StartNew();
        for (var round = 0; round < rounds; round++)
        {
            // of the kills on a server a tenth fall on its own process
            var atServer = kept == Kept.Postgres && round % 10 == 3;
            // a tenth of the rest strikes while the program starts, perhaps before it has written anything
            var fromStart = round % 10 == 7;
            using var writer = Start(own, folder);
            var first = new TaskCompletionSource();
            var said = Task.Run(() =>
            {
                while (writer.StandardOutput.ReadLine() is { } line)
                    if (line.StartsWith("done ")) { lock (acknowledged) acknowledged.Add(int.Parse(line[5..])); first.TrySetResult(); }
                first.TrySetResult();
            });
            var told = writer.StandardError.ReadToEndAsync();
            if (!fromStart) await first.Task.WaitAsync(TimeSpan.FromMinutes(2));
            await Task.Delay(random.Next(50, 1000));
            if (atServer)
            {
                var hit = (long)OwnStore.Ask(
                    $"SELECT count(pg_terminate_backend(pid)) FROM pg_stat_activity WHERE datname = '{OwnStore.NameOf(own.Place)}' AND application_name = 'kill'")!;
                if (hit > 0) terminated++;
                // the writer hears of it and ends, or is killed while it does
                await Task.Delay(random.Next(0, 1000));
            }
            else if (writer.HasExited) Assert.Fail($"round {round}: the writer ended by itself: {await told}");
            if (writer.HasExited) ended++; else writer.Kill();
            await writer.WaitForExitAsync();
            await said;
            // a server may still be at the killed writer's last words
            if (kept == Kept.Postgres) await Quiet(own.Place);
            (whole, absent) = Check(own, folder, acknowledged, baseTrail, $"round {round}");
        }
        output.WriteLine($"{kept}: {rounds} kills, {terminated} of them at the server ({ended} writers ended of it), {whole} batches whole, {absent} absent, " +
            $"{acknowledged.Count} acknowledged, {clock.Elapsed.TotalSeconds:0} s");
        Assert.Equal(kept == Kept.Postgres ? Enumerable.Range(0, rounds).Count(r => r % 10 == 3) : 0, terminated);
        Assert.True(acknowledged.Count >= rounds * 8 / 10, "a writer that hardly writes tries nothing");
    }

    /// <summary>Searching and writing the crews of a night over and over, killed at any moment: a whole plan stands or none of it, and what was told is done is there.</summary>
    [Theory, InlineData(Kept.Sqlite), InlineData(Kept.Postgres)]
    public async Task A_search_killed_at_any_moment_leaves_a_whole_plan(Kept kept)
    {
        const string night = "2026-05-19";
        using var own = OwnStore.Oslemoor(kept);
        var random = new Random(20260519);
        var (rounds, done, half) = (Folder.Count(2, 120), 0, 0);
        var told = Stored(own, night);
        for (var round = 0; round < rounds; round++)
        {
            using var writer = Start(own, ["--crews", Folder.Of("codes"), night], []);
            var (trying, written) = (told, new TaskCompletionSource());
            var said = Task.Run(() =>
            {
                while (writer.StandardOutput.ReadLine() is { } line)
                    if (line.StartsWith("done ")) { told = trying = line[5..]; done++; written.TrySetResult(); } else trying = line[7..];
            });
            var fault = writer.StandardError.ReadToEndAsync();
            // every other one is killed after it has written a plan, however slow the machine is; the others at any moment of their beginning
            if (round % 2 == 0) await Task.WhenAny(written.Task, writer.WaitForExitAsync());
            await Task.Delay(random.Next(200, 7000));
            if (writer.HasExited) Assert.Fail($"round {round}: the writer ended by itself: {await fault}");
            writer.Kill();
            await writer.WaitForExitAsync();
            await said;
            if (kept == Kept.Postgres) await Quiet(own.Place);
            var now = Stored(own, night);
            Assert.True(now == told || now == trying, $"round {round}: neither the plan told is done nor the one in hand");
            if (now != told) half++;
            told = now;
        }
        output.WriteLine($"{kept}: {rounds} kills, {done} plans told done, {half} written but not told any more");
        Assert.True(done >= rounds / 2, "a writer that hardly writes tries nothing");
    }

    /// <summary>The sign of a night's plan as the writer makes it: the places filled, in the order of their characters.</summary>
    private static string Stored(OwnStore own, string night)
    {
        using var store = own.Open();
        var from = DateTime.Parse(night, System.Globalization.CultureInfo.InvariantCulture);
        var seats = store.Assignments.Where(a => a.Person != null && store.Games.Any(g => g.Key == a.Game && g.Start >= from && g.Start < from.AddDays(1))).AsEnumerable().Select(a => $"{a.Game}/{a.Place}={a.Person}");
        return Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(string.Join('\n', seats.Order(StringComparer.Ordinal)))))[..16];
    }

    private static Process Start(OwnStore own, string folder) => Start(own, [], [folder]);

    private static Process Start(OwnStore own, string[] before, string[] after)
    {
        var configuration = AppContext.BaseDirectory.Contains("/Release/") ? "Release" : "Debug";
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        start.ArgumentList.Add(Folder.Of("tests", "Kill", "bin", configuration, "net10.0", "Umpirage.Kill.dll"));
        foreach (var word in before) start.ArgumentList.Add(word);
        if (own.Place.Postgres is { } server)
        {
            start.ArgumentList.Add("--postgres");
            start.ArgumentList.Add(new NpgsqlConnectionStringBuilder(server) { ApplicationName = "kill" }.ConnectionString);
        }
        else start.ArgumentList.Add(own.Place.File!);
        foreach (var word in after) start.ArgumentList.Add(word);
        return Process.Start(start)!;
    }

    private static async Task Quiet(Place place)
    {
        await using var connection = new NpgsqlConnection(place.Postgres);
        await connection.OpenAsync();
        for (var i = 0; i < 400; i++)
        {
            await using var command = new NpgsqlCommand("SELECT count(*) FROM pg_stat_activity WHERE datname = current_database() AND application_name = 'kill'", connection);
            if ((long)(await command.ExecuteScalarAsync())! == 0) return;
            await Task.Delay(25);
        }
        Assert.Fail("the killed writer is still connected after ten seconds");
    }

    private static (int Whole, int Absent) Check(OwnStore own, string folder, HashSet<int> acknowledged, int baseTrail, string round)
    {
        if (own.Place.File is not null)
        {
            using var connection = new SqliteConnection(own.Place.Connection);
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "PRAGMA integrity_check";
            Assert.Equal("ok", command.ExecuteScalar());
            command.CommandText = "PRAGMA foreign_key_check";
            using var broken = command.ExecuteReader();
            Assert.False(broken.Read(), round);
        }
        using var store = own.Open();
        Dictionary<int, int> Count(IEnumerable<string> keys) => keys.Select(k => Numbered().Match(k)).Where(m => m.Success).GroupBy(m => int.Parse(m.Groups[1].Value))
            .ToDictionary(g => g.Key, g => g.Count());
        var found = new Dictionary<string, Dictionary<int, int>>
        {
            ["people"] = Count(store.People.Select(p => p.Key)), ["roles"] = Count(store.Roles.Select(r => r.Person)), ["teams"] = Count(store.Teams.Select(t => t.Key)),
            ["games"] = Count(store.Games.Select(g => g.Key)), ["league"] = Count(store.Leagues.Select(l => l.Key)),
        };
        var trail = Count(store.Trail.Where(t => t.By == "kill").Select(t => t.Key));
        var (whole, absent, entries) = (0, 0, 0);
        foreach (var number in Directory.EnumerateFiles(folder).Select(f => int.Parse(Path.GetFileNameWithoutExtension(f))))
        {
            var (kind, rows, records) = (number % 4) switch { 0 => ("people", 50, 100), 1 => ("teams", 50, 50), 2 => ("games", 50, 50), _ => ("league", 1, 1) };
            var there = found[kind].GetValueOrDefault(number);
            Assert.True(there == 0 || there == rows, $"{round}: batch {number} of {kind} has {there} of {rows} records");
            if (kind == "people") Assert.Equal(there, found["roles"].GetValueOrDefault(number));
            Assert.Equal(there == 0 ? 0 : records, trail.GetValueOrDefault(number));
            Assert.True(there > 0 || !acknowledged.Contains(number), $"{round}: batch {number} was acknowledged and is not there");
            entries += there == 0 ? 0 : records;
            if (there == 0) absent++; else whole++;
        }
        Assert.Equal(found.Values.SelectMany(f => f.Keys).Distinct().Count(), whole);
        Assert.Equal(baseTrail + entries, store.Trail.Count());
        return (whole, absent);
    }
}
