using System.Net;
using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.Crews;
using Umpirage.Store;
using Umpirage.Web;

namespace Umpirage.Tests.Screen;

/// <summary>The desk's process is killed while it searches crews and while it writes them: it opens again, and the crews on record are those from before or the whole plan.</summary>
public class DeskKillTests(ITestOutputHelper output)
{
    private const string Week = "2026-05-18";
    /// <summary>Moments of the kill in ms after the search began, and after the plan was sent to be written (null: it was answered); all of them when UMPIRAGE_LONG is set.</summary>
    private static readonly (int[] Searching, int?[] Writing) Moments = Environment.GetEnvironmentVariable("UMPIRAGE_LONG") is { Length: > 0 } ? ([0, 300, 3000], [10, 100, 200, 300, 400, 600, null]) : ([1000], [200, null]);

    private static readonly DateTime From = new(2026, 5, 18), Until = new(2026, 5, 25);

    [Theory, InlineData(false), InlineData(true)]
    public async Task A_desk_killed_at_any_moment_opens_again_with_a_whole_plan(bool postgres)
    {
        Assert.SkipWhen(postgres && DeskProcess.Server is null, "needs a PostgreSQL server; ./test.sh starts one");
        var desk = await DeskProcess.Open(postgres, demo: true);
        try
        {
            // while it searches
            foreach (var after in Moments.Searching)
            {
                using (var door = new Door(desk.Address, "assigner")) Assert.Equal(HttpStatusCode.Redirect, (await door.Post("/crews/search", [("week", Week), ("seconds", "60")])).Status);
                await Task.Delay(after);
                desk = await desk.KilledAndOpened(postgres);
                Assert.Empty(Seats(desk));
            }
            // while it writes what was found; the last time it has answered
            var (whole, absent) = (0, 0);
            foreach (var after in Moments.Writing)
            {
                using var door = new Door(desk.Address, "assigner");
                var places = await Found(door);
                var taking = door.Post("/crews/search/take", [("search", places.Search)]);
                if (after is { } moment) await Task.WhenAny(Task.Delay(moment), taking);
                else Assert.Equal(HttpStatusCode.Redirect, (await taking).Status);
                desk = await desk.KilledAndOpened(postgres);
                await Task.WhenAny(taking);
                var now = Seats(desk);
                Assert.True(now.Count == 0 || now.Count == places.Filled, $"after {after} ms: {now.Count} places of {places.Filled}");
                Assert.True(after is not null || now.Count > 0, "what was answered is there");
                if (now.Count > 0) whole++; else absent++;
                Assert.Empty(Broken(desk));
                using (var again = new Door(desk.Address, "assigner")) Assert.Equal(HttpStatusCode.OK, (await again.Get($"/crews?week={Week}")).Status);
                Empty(desk);
            }
            output.WriteLine($"{(postgres ? "server" : "file")}: {Moments.Searching.Length} kills while it searched; {Moments.Writing.Length} while it wrote, {whole} plans whole, {absent} absent, none half");
        }
        finally { await desk.DisposeAsync(); }
    }

    /// <summary>A search that is stopped after a moment: its key, and how many places it fills.</summary>
    private static async Task<(string Search, int Filled)> Found(Door door)
    {
        await door.Post("/crews/search", [("week", Week), ("seconds", "60")]);
        for (var i = 0; i < 200; i++)
        {
            var (_, page, _) = await door.Get($"/crews/search?week={Week}");
            var search = Regex.Match(page, "name=\"search\" value=\"(\\w+)\"").Groups[1].Value;
            if (page.Contains("Take this plan", StringComparison.Ordinal))
            {
                int Number(string pattern) => int.Parse(Regex.Match(page, pattern).Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
                return (search, Number("<b>(\\d+) of \\d+</b> places filled") + Number("(\\d+) of \\d+ youth bases filled"));
            }
            if (page.Contains("Stop, and keep", StringComparison.Ordinal) && page.Contains("<li>", StringComparison.Ordinal)) await door.Post("/crews/search/stop", [("search", search)]);
            await Task.Delay(250);
        }
        throw new TimeoutException("no plan within a minute");
    }

    private static List<Seat> Seats(DeskProcess desk)
    {
        using var store = desk.Place.Open();
        return [.. store.Assignments.AsNoTracking().Where(a => a.Person != null && store.Games.Any(g => g.Key == a.Game && g.Start >= From && g.Start < Until)).Select(a => new Seat(a.Game, a.Place, a.Person!))];
    }

    private sealed record Seat(string Game, string Place, string Person);

    private static IEnumerable<Breach> Broken(DeskProcess desk)
    {
        using var store = desk.Place.Open();
        var plan = CrewPlan.Of(CrewReader.Read(store), UmpiresCodes.For(new Shelf(Settings.Read(["--demo"], DeskProcess.Root, out _)!, desk.Place.Open).Book));
        return [.. CrewCheck.All(plan, plan.Games.Where(g => g.Start >= From && g.Start < Until).Select(g => g.Key).ToHashSet()).Where(b => b.Hold != Hold.Wish)];
    }

    private static void Empty(DeskProcess desk)
    {
        using var store = desk.Place.Open();
        foreach (var seat in Seats(desk)) store.Put(new District.Calendar.Assignment(seat.Game, seat.Place, null));
        store.SaveChanges();
    }
}
