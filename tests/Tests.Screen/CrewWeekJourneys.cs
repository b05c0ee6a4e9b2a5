using System.Net;
using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.Calendar;
using Umpirage.Store;

namespace Umpirage.Tests.Screen;

[Collection("screen")]
public class CrewWeekJourneysInAFile(FileDesk desk, Browser browser) : CrewWeekJourneys(desk, browser), IClassFixture<FileDesk>;

[Collection("screen")]
public class CrewWeekJourneysOnAServer(ServerDesk desk, Browser browser) : CrewWeekJourneys(desk, browser), IClassFixture<ServerDesk>;

/// <summary>A week's crews from the search to the umpire's own calendar.</summary>
public abstract class CrewWeekJourneys(DemoDesk demo, Browser browser) : AtTheDesk(demo, browser)
{
    private const string Week = "2026-05-18", Umpire = "umpire-050";

    private List<string> Seats()
    {
        using var store = Store();
        return [.. store.Assignments.AsNoTracking().Where(a => a.Person != null).AsEnumerable().Select(a => $"{a.Game}/{a.Place}={a.Person}").Order(StringComparer.Ordinal)];
    }

    /// <summary>A search is begun, followed, and stopped early; what it has so far is shown with how good it can be at most, stays while nobody takes it, and writes nothing.</summary>
    [Fact]
    public async Task A_search_is_begun_stopped_and_its_plan_kept_until_it_is_taken()
    {
        var page = await Open($"/crews/search?week={Week}", "assigner", phone: true);
        var before = Seats();
        await page.GetByLabel("At most").SelectOptionAsync("5 minutes");
        await page.GetByRole(AriaRole.Button, new() { Name = "Find crews" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("of at most 300 seconds");
        await Assertions.Expect(page.Locator("main ol li").First).ToContainTextAsync("games without an umpire");
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop, and keep the best so far" }).ClickAsync();
        await Assertions.Expect(Heading(page, "A plan to take")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("main .warn")).ToContainTextAsync("The search was stopped");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Recounted: 0 against safety, 0 against rules");
        // 34 places of the week are short by design (the demonstration's description), so no plan leaves fewer open
        var open = page.Locator("main .key");
        await Assertions.Expect(open).ToContainTextAsync("of 272 places filled");
        var rows = await page.Locator("table tbody tr").EvaluateAllAsync<string[][]>("rows => rows.map(r => [...r.children].map(c => c.textContent))");
        Assert.NotEmpty(rows);
        Assert.All(rows, r => Assert.True(int.Parse(r[2]) <= int.Parse(r[1]), $"{r[0]}: {r[1]} left, at least {r[2]}"));
        Assert.True(int.Parse(Regex.Match(await open.TextContentAsync() ?? "", "(\\d+) open").Groups[1].Value) >= 34, "fewer places open than are short by design");
        Assert.Equal(before, Seats());
        // it is still there for whoever sets crews and looks later
        var filled = Regex.Match(await open.TextContentAsync() ?? "", "\\d+ of 272").Value;
        var later = await Open($"/crews/search?week={Week}");
        await Assertions.Expect(later.Locator("main .key")).ToContainTextAsync(filled);
        await later.GetByRole(AriaRole.Button, new() { Name = "Take this plan" }).ClickAsync();
        await Assertions.Expect(later.Locator("main .key").First).ToContainTextAsync(filled);
        Assert.True(Seats().Count >= before.Count + int.Parse(filled.Split(' ')[0]) - 1);
        using var store = Store();
        foreach (var place in store.Assignments.Where(a => a.Person != null && store.Games.Any(g => g.Key == a.Game && g.Start >= new DateTime(2026, 5, 18) && g.Start < new DateTime(2026, 5, 25))).ToList()) store.Put(place with { Person = null });
        store.SaveChanges();
    }

    [Fact]
    public async Task Crews_are_published_a_change_is_shown_beside_what_was_told_and_a_crew_is_frozen()
    {
        ScheduledGame game;
        using (var store = Store())
        {
            game = store.Games.AsNoTracking().Where(g => g.Start >= new DateTime(2026, 5, 25) && g.Start < new DateTime(2026, 6, 1)).OrderBy(g => g.Start).ThenBy(g => g.Key).ToList().First(g => store.Divisions.Find(g.Division) is { Crew: > 1 });
            store.Put(new Assignment(game.Key, "plate", Umpire));
            store.SaveChanges();
        }
        const string Publish = "/crews/publish?week=2026-05-25";
        var page = await Open(Publish, "assigner", phone: true);
        await Assertions.Expect(page.Locator("main .key")).ToContainTextAsync("1 place differs from what people were told");
        await Assertions.Expect(page.Locator("main details li").First).ToContainTextAsync("plate Yara Birchmere");
        await page.GetByRole(AriaRole.Button, new() { Name = "Publish this week" }).ClickAsync();
        await Assertions.Expect(page.Locator("main .key")).ToContainTextAsync("1 person is to be told");
        await Assertions.Expect(page.Locator("main .rows")).ToContainTextAsync("You have the plate");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Letter to Yara" })).ToBeVisibleAsync();
        await page.GotoAsync(Publish);
        await Assertions.Expect(page.Locator("main .key")).ToContainTextAsync("Nothing differs from what was published");
        // opened by hand, it is a draft again, shown beside what was told
        using (var store = Store()) { store.Put(new Assignment(game.Key, "plate", null)); store.SaveChanges(); }
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator("main .key")).ToContainTextAsync("1 place differs from what people were told");
        await Assertions.Expect(page.Locator("main details li").First).ToContainTextAsync("plate Yara Birchmere → nobody");
        // frozen, and thawed
        await page.GotoAsync($"/crews?week=2026-05-25&night={game.Start:yyyy-MM-dd}");
        var card = page.Locator($"[id='game-{game.Key}']");
        await Assertions.Expect(card).ToContainTextAsync("Changed since it was published: plate was Yara Birchmere");
        await card.GetByText("Set by hand").ClickAsync();
        await card.GetByRole(AriaRole.Button, new() { Name = "Freeze this crew" }).ClickAsync();
        await Assertions.Expect(card).ToContainTextAsync("Frozen.");
        using (var store = Store()) Assert.NotNull(store.Frozen.Find(game.Key));
        await card.GetByText("Set by hand").ClickAsync();
        await card.GetByRole(AriaRole.Button, new() { Name = "Thaw this crew" }).ClickAsync();
        await Assertions.Expect(card).Not.ToContainTextAsync("Frozen.");
        using (var store = Store()) Assert.Null(store.Frozen.Find(game.Key));
    }

    [Fact]
    public async Task An_umpire_makes_a_calendar_address_a_new_one_ends_it_and_it_is_ended_for_good()
    {
        var page = await Open("/me", Umpire, phone: true);
        using var http = new HttpClient();
        async Task<string> Make(string button)
        {
            await page.GetByRole(AriaRole.Button, new() { Name = button }).ClickAsync();
            var address = await page.Locator(".secret").TextContentAsync();
            await page.GetByRole(AriaRole.Link, new() { Name = "Go on" }).ClickAsync();
            return address!.Trim();
        }
        var first = await Make("Make an address: Yara Birchmere");
        // the plate of Saturday 14:00, with Nadia on the bases, as the demonstration published it
        var feed = (await http.GetStringAsync(first)).Replace("\r\n ", "");
        Assert.Contains("BEGIN:VCALENDAR", feed);
        Assert.Contains("SUMMARY:plate\\, SB 12U", feed);
        Assert.Contains("DTSTART;TZID=America/Chicago:20260516T140000", feed);
        Assert.Contains("Nadia", feed);
        Assert.DoesNotContain("Birchmere", feed);
        var second = await Make("Make a new address, and end the old");
        Assert.Equal((HttpStatusCode.NotFound, HttpStatusCode.OK), ((await http.GetAsync(first)).StatusCode, (await http.GetAsync(second)).StatusCode));
        await page.GetByRole(AriaRole.Button, new() { Name = "End the address: Yara Birchmere" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Make an address: Yara Birchmere" })).ToBeVisibleAsync();
        Assert.Equal(HttpStatusCode.NotFound, (await http.GetAsync(second)).StatusCode);
    }

    /// <summary>The sheet of a park on a phone: times, places, who has them, and the adult beside each minor, without pushing anything aside.</summary>
    [Fact]
    public async Task A_parks_sheet_names_crews_open_places_and_the_adult_beside_a_minor()
    {
        var page = await Open("/crews?night=2026-05-16", "assigner", phone: true);
        await page.GetByRole(AriaRole.Link, new() { Name = "Sheet to print: Tarnholt Mill" }).ClickAsync();
        await Assertions.Expect(Heading(page, "Crews at Tarnholt Mill")).ToBeVisibleAsync();
        ILocator Row(string at) => page.Locator("main .rows > li", new() { HasText = at });
        // Teo's game of the Saturday's story: the plate beside him and the coordinator (demo/oslemoor/saturday)
        foreach (var said in (string[])["Youth base: Teo M.", "Adult coordinator: Brigid Fallowmere"]) await Assertions.Expect(Row("11:30, Tarnholt Mill 2")).ToContainTextAsync(said);
        await Assertions.Expect(Row("17:30, Tarnholt Mill 2")).ToContainTextAsync("Plate: open");
        await Assertions.Expect(page.Locator("main")).Not.ToContainTextAsync("Merrivane");
        Assert.All(await page.Locator("main .rows > li *").EvaluateAllAsync<double[]>("all => all.map(e => e.getBoundingClientRect().right)"), right => Assert.True(right <= 390));
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Show" })).ToBeHiddenAsync();
        await Assertions.Expect(Row("11:30, Tarnholt Mill 2")).ToBeVisibleAsync();
    }
}
