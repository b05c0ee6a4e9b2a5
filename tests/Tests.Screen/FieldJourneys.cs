using System.Net;
using System.Text.RegularExpressions;

namespace Umpirage.Tests.Screen;

public class FieldJourneysInAFile(FileDesk desk, Browser browser) : FieldJourneys(desk, browser), IClassFixture<FileDesk>;

public class FieldJourneysOnAServer(ServerDesk desk, Browser browser) : FieldJourneys(desk, browser), IClassFixture<ServerDesk>;

/// <summary>What somebody does on a field before the game: gear at the plate meeting, a tape over the diamond, its plan and the sun.</summary>
public abstract class FieldJourneys(DemoDesk demo, Browser browser) : AtTheDesk(demo, browser)
{
    private static ILocator Button(IPage page, string name) => page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    /// <summary>Ticks what was seen on one piece and asks.</summary>
    private static async Task Look(IPage page, string kind, string name, params string[] seen)
    {
        await page.GetByRole(AriaRole.Navigation, new() { Name = "Look at" }).GetByRole(AriaRole.Link, new() { Name = kind, Exact = true }).ClickAsync();
        await page.GetByLabel("Which one").FillAsync(name);
        foreach (var tick in seen) await page.Locator("#ticks").GetByLabel(tick, new() { Exact = true }).CheckAsync();
        await Button(page, "Answer").ClickAsync();
    }

    /// <summary>
    /// The project's story F8: three bats and a helmet of 11- and 12-year-olds at the plate meeting. A is out for its damage, B for the mark of another
    /// division, C shows no compliance and is loose, the helmet has two faults; what is out is logged.
    /// </summary>
    [Fact]
    public async Task Gear_at_the_plate_meeting_is_ticked_answered_and_logged()
    {
        var page = await Open("/gear?code=baseball/12U%2BOslemoor-baseball&on=2026-05-16&for=Pellwick+Larks", "umpire-050", phone: true);
        var lines = page.Locator(".ruling .lines");
        await Look(page, "bat", "bat A", "wood-like youth standard", "damaged");
        await Assertions.Expect(lines).ToContainTextAsync("bat A: OUT, carries the mark this code asks for");
        await Look(page, "bat", "bat B", "BBCOR .50");
        await Assertions.Expect(lines).ToContainTextAsync("bat B: OUT, does not carry the mark this code asks for (wood-like youth standard)");
        await Look(page, "bat", "bat C", "none can be read", "damaged");
        await Look(page, "helmet", "helmet 4", "cracked", "mark not readable");
        await Look(page, "helmet", "helmet 5");
        var answer = page.Locator("article.ruling");
        await Assertions.Expect(lines).ToContainTextAsync("helmet 5: conforms");
        await Assertions.Expect(lines).ToContainTextAsync("helmet 4: OUT");
        foreach (var said in (string[])["a damaged bat", "only the mark of another body", "no mark at all", "it is cracked", "its mark cannot be read"]) await Assertions.Expect(answer).ToContainTextAsync(said);
        // what it would cost later: a bat not approved, and one that is damaged as well, put the batter out until the next pitch; a dent alone does not
        ILocator Costs(string piece) => page.Locator($"h2:text-is('{piece}') ~ ul.rows").First;
        await Assertions.Expect(Costs("bat B")).ToContainTextAsync("batter: out");
        await Assertions.Expect(Costs("bat C")).ToContainTextAsync("batter: out");
        await Assertions.Expect(Costs("bat A")).Not.ToContainTextAsync("batter: out");
        Assert.DoesNotMatch(new Regex(@"\bsafe\b", RegexOptions.IgnoreCase), await page.Locator("main").InnerTextAsync());

        await Button(page, "Write what is out into the log").ClickAsync();
        await Assertions.Expect(Heading(page, "Gear taken out")).ToBeVisibleAsync();
        var log = page.Locator(".rows > li");
        await Assertions.Expect(log).ToHaveCountAsync(4);
        // pressed again, nothing is written twice
        await page.GoBackAsync();
        await Button(page, "Write what is out into the log").ClickAsync();
        await Assertions.Expect(log).ToHaveCountAsync(4);
        var batC = log.Filter(new() { Has = page.GetByText("bat C", new() { Exact = true }) });
        await batC.GetByRole(AriaRole.Button).ClickAsync();
        await Assertions.Expect(batC).ToContainTextAsync("given back Sat 16 May 2026");
        using var store = Store();
        Assert.Equal(["bat A", "bat B", "bat C", "helmet 4"], store.Removals.Select(r => r.Piece).ToList().Order());
        Assert.Contains(store.Trail, t => t.What == "TakenOut" && t.By.Contains("umpire-050"));
    }

    [Fact]
    public async Task A_piece_that_cannot_be_read_is_told_and_not_taken_in()
    {
        var page = await Open("/gear?code=baseball/12U%2BOslemoor-baseball&kind=bat", "nobody", phone: true);
        await page.GetByText("Measures, and what else may matter").ClickAsync();
        await page.GetByLabel("How long is the bat?").FillAsync("long");
        await Button(page, "Answer").ClickAsync();
        var warn = page.GetByRole(AriaRole.Alert);
        await Assertions.Expect(warn).ToContainTextAsync("nobody wrote down which marks bat A carries");
        await Assertions.Expect(warn).ToContainTextAsync("'length' has no value 'long'");
        await Assertions.Expect(page.GetByLabel("How long is the bat?")).ToHaveValueAsync("long");
        await Assertions.Expect(Button(page, "Write what is out into the log")).ToHaveCountAsync(0);
    }

    /// <summary>A 60 ft square with the plate at 40 ft: 84 ft 10 1/4 in across (field table of softball, Rule 2-1), 42 ft 6 in from the plate to first, worked out by hand.</summary>
    [Fact]
    public async Task A_survey_is_typed_on_a_phone_at_the_field()
    {
        var page = await Open("/diamonds/wrenfall-1/survey", "safety-tarnholt", phone: true);
        async Task Tape(string row, string feet, string inches)
        {
            await page.GetByLabel($"{row}, feet").FillAsync(feet);
            await page.GetByLabel($"{row}, inches").FillAsync(inches);
        }
        foreach (var side in (string[])["home to first", "home to third", "first to second"]) await Tape(side, "60", "");
        await Tape("second to third", "60", "14");
        await Tape("home to second", "84", "10 1/4");
        await Tape("first to third", "84", "10 1/4");
        await Tape("home to plate", "40 yards", "");
        await Tape("first to plate", "42", "6");
        await Tape("third to plate", "42", "6");
        await Button(page, "Work it out").ClickAsync();
        // both slips at once, each with its tape
        var warn = page.GetByRole(AriaRole.Alert);
        await Assertions.Expect(warn).ToContainTextAsync("home to plate: 'yards' is no unit of a tape");
        await Assertions.Expect(warn).ToContainTextAsync("second to third: '60 ft 14 in' is no length");
        await Assertions.Expect(page.Locator("article.ruling")).ToHaveCountAsync(0);
        await Tape("home to plate", "40", "");
        await Tape("second to third", "60", "6");
        await Button(page, "Work it out").ClickAsync();
        await Assertions.Expect(page.Locator("article.ruling .warn")).ToContainTextAsync("second to third read 60 ft 6 in");
        await Tape("second to third", "60", "0");
        await Button(page, "Work it out").ClickAsync();
        await Assertions.Expect(page.Locator("article.ruling .warn")).ToHaveCountAsync(0);
        await Assertions.Expect(page.Locator(".ruling .lines")).ToContainTextAsync(new Regex("Serves [^D]*SB 12U"));
        // 35 ft for the youngest and 43 ft for the older (the same field table): the plate moves
        await Assertions.Expect(page.Locator("article.ruling")).ToContainTextAsync(new Regex("move plate (4 ft 11 7/8 in|5 ft|5 ft 1/8 in) straight toward home"));
        await Button(page, "Keep this as the diamond's last survey").ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "what that says" }).ClickAsync();
        await Assertions.Expect(page.Locator(".ruling .lines")).ToContainTextAsync("SB 12U");
        using var store = Store();
        Assert.Equal(new DateOnly(2026, 5, 16), store.Surveys.Single(s => s.Diamond == "wrenfall-1").On);
    }

    [Fact]
    public async Task A_diamonds_plan_its_sharing_and_the_sun_are_on_its_page()
    {
        var page = await Open("/diamonds");
        await page.GetByRole(AriaRole.Link, new() { Name = "Tarnholt Mill 2" }).ClickAsync();
        await page.GetByLabel("Laid out for").SelectOptionAsync(new SelectOptionValue { Value = "SB 12U" });
        await Button(page, "Show").ClickAsync();
        // 40 ft and 84 ft 10 1/4 in: field table of softball, Rule 2-1; 25.863 m at 0.3048 m a foot
        await Assertions.Expect(page.Locator(".ruling .lines")).ToContainTextAsync("40 ft");
        await Assertions.Expect(page.Locator(".ruling .lines")).ToContainTextAsync("84 ft 10 1/4 in");
        await page.GetByLabel("in", new() { Exact = true }).SelectOptionAsync("m");
        await Button(page, "Show").ClickAsync();
        await Assertions.Expect(page.Locator(".ruling .lines")).ToContainTextAsync("25.863 m");
        await Assertions.Expect(Heading(page, "Who shares this diamond")).ToBeVisibleAsync();
        // the drawing came, and is one
        await Assertions.Expect(page.Locator("figure.plan img").First).ToHaveJSPropertyAsync("complete", true);
        Assert.True(await page.Locator("figure.plan img").First.EvaluateAsync<int>("i => i.naturalWidth") > 0);
        // 41.44 N 88.25 W, second at 295 degrees: the sun goes down at about 297 degrees on 16 May, straight over second (any almanac)
        await page.GetByLabel("From", new() { Exact = true }).FillAsync("18:00");
        await page.GetByLabel("Until", new() { Exact = true }).FillAsync("20:00");
        await Button(page, "Work it out").ClickAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync(new Regex("batter, catcher and plate umpire"));
        foreach (var (file, kind) in ((string, string)[])[("plan.pdf", "application/pdf"), ("plan.dxf", "image/vnd.dxf"), ("plan.svg", "image/svg+xml"), ("sun.svg", "image/svg+xml")])
        {
            var answer = await page.APIRequest.GetAsync($"/diamonds/tarnholt-2/{file}?division=SB+12U");
            Assert.Equal((int)HttpStatusCode.OK, answer.Status);
            Assert.StartsWith(kind, answer.Headers["content-type"]);
        }
    }
}
