using Microsoft.EntityFrameworkCore;

namespace Umpirage.Tests.Screen;

public class VisitJourneysInAFile(FileDesk desk, Browser browser) : VisitJourneys(desk, browser), IClassFixture<FileDesk>;

public class VisitJourneysOnAServer(ServerDesk desk, Browser browser) : VisitJourneys(desk, browser), IClassFixture<ServerDesk>;

/// <summary>Who evaluates and who is evaluated, whom to watch next, and whether there are enough.</summary>
public abstract class VisitJourneys(DemoDesk demo, Browser browser) : AtTheDesk(demo, browser)
{
    /// <summary>At the fence on a phone: the umpire's own view first, steps in words, two goals at most; what is wrong is told and nothing typed is lost; the umpire reads it and replies.</summary>
    [Fact]
    public async Task An_umpire_is_evaluated_at_the_fence_and_replies()
    {
        var page = await Open("/evaluate?day=2026-05-15", "umpire-001", phone: true);
        var chosen = page.Locator("main .buttons a").Filter(new() { HasText = "plate:" }).First;
        var address = (await chosen.GetAttributeAsync("href"))!;
        var umpire = address.Split('/')[^1];
        await chosen.ClickAsync();
        await page.GetByLabel("What the umpire says").FillAsync("I lost the low pitch late.");
        await page.GetByLabel("Minutes you watched").FillAsync("55");
        foreach (var (item, step) in ((string, string)[])[("Slot and head height", "set in the slot"), ("Zone", "wanders in height"), ("Timing", "one pace all game"), ("Game handling", "calms before it begins"), ("Working with the partner", "signs given and answered")])
            await page.GetByRole(AriaRole.Group, new() { Name = item }).GetByLabel(step).CheckAsync();
        await page.GetByLabel("Strength 1").FillAsync("one pace all game");
        var first = page.GetByRole(AriaRole.Group, new() { Name = "Goal 1" });
        await first.GetByLabel("About", new() { Exact = true }).SelectOptionAsync("Zone");
        await page.GetByRole(AriaRole.Button, new() { Name = "File it" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("goal: found nothing; allowed is what to do about it");
        await Assertions.Expect(page.GetByLabel("What the umpire says")).ToHaveValueAsync("I lost the low pitch late.");
        await Assertions.Expect(page.GetByRole(AriaRole.Group, new() { Name = "Zone" }).GetByLabel("wanders in height")).ToBeCheckedAsync();
        await first.GetByLabel("What to do about it").FillAsync("call the low pitch in the last inning as in the first");
        var second = page.GetByRole(AriaRole.Group, new() { Name = "Goal 2" });
        await second.GetByLabel("About", new() { Exact = true }).SelectOptionAsync("infield fly");
        await second.GetByLabel("What to do about it").FillAsync("say it at the highest point");
        await page.GetByRole(AriaRole.Button, new() { Name = "File it" }).ClickAsync();
        await Assertions.Expect(page.Locator(".ruling .lines")).ToContainTextAsync("Goal, zone: call the low pitch in the last inning as in the first");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Moves out from the plate not seen");
        using (var store = Store())
        {
            var kept = store.Evaluations.AsNoTracking().Single(e => e.Evaluator == "umpire-001" && e.Umpire == umpire && e.OwnView == "I lost the low pitch late.");
            Assert.Equal("slot 3; zone 3; timing 5; moves out not seen; rules not seen; handling 5; crew 3", kept.Marks);
            Assert.Equal("zone: call the low pitch in the last inning as in the first\ninfield fly: say it at the highest point", kept.Goals);
        }
        // the umpire finds it on the own page and answers; a second one of the same game is not filed
        var own = await Open($"/people/{umpire}", umpire, phone: true);
        await own.GetByRole(AriaRole.Link, new() { Name = "plate" }).First.ClickAsync();
        await own.GetByLabel("Your reply").FillAsync("Thank you.");
        await own.GetByRole(AriaRole.Button, new() { Name = "Keep the reply" }).ClickAsync();
        await Assertions.Expect(own.Locator("blockquote").Last).ToContainTextAsync("Thank you.");
        await page.GotoAsync(address);
        await page.GetByLabel("What the umpire says").FillAsync("Again.");
        await page.GetByLabel("Minutes you watched").FillAsync("55");
        await page.GetByLabel("Strength 1").FillAsync("x");
        await page.GetByRole(AriaRole.Button, new() { Name = "File it" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("it stays as it was filed");
    }

    /// <summary>Bands and how far they reach, in the order of names; a minor has strengths and goals only; the flags are the chief's.</summary>
    [Fact]
    public async Task Results_are_bands_with_their_reach_and_minors_have_none()
    {
        var page = await Open("/evaluations");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Bands, not ranks");
        await Assertions.Expect(page.Locator("main .rows").First).ToContainTextAsync("their strictness taken out");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("gave every item the same step");
        using var store = Store();
        var minor = store.Evaluations.AsNoTracking().Select(e => e.Umpire).AsEnumerable().First(u => u.StartsWith("youth", StringComparison.Ordinal));
        await page.GotoAsync($"/people/{minor}");
        await Assertions.Expect(Heading(page, "Evaluations")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("To work on");
        await Assertions.Expect(page.Locator("main")).Not.ToContainTextAsync("on the scale");
    }

    /// <summary>The visit that would teach most, with a game, an evaluator and the reason; the assigner sees who was not seen, and no level of anybody.</summary>
    [Fact]
    public async Task The_next_visits_are_suggested_with_game_and_evaluator()
    {
        var page = await Open("/visits", "assigner", phone: true);
        var first = page.Locator(".visits > li").First;
        foreach (var said in (string[])["watched by", "in that position unseen", "the evaluator has not seen this umpire yet"]) await Assertions.Expect(first).ToContainTextAsync(said);
        await page.GetByLabel("Position").SelectOptionAsync("plate");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show", Exact = true }).ClickAsync();
        Assert.All(await page.Locator("tbody td:nth-of-type(1)").AllTextContentsAsync(), word => Assert.Equal("plate", word));
        foreach (var level in (string[])["on the scale", "works alone", "needs company"]) await Assertions.Expect(page.Locator("main")).Not.ToContainTextAsync(level);
    }

    /// <summary>A week's places against what is offered, night by night, and how many two-game volunteers are missing; a league sees its own need only.</summary>
    [Fact]
    public async Task The_forecast_tells_the_weeks_need()
    {
        var page = await Open("/crews/forecast?week=2026-05-18");
        await Assertions.Expect(page.Locator(".ruling .lines")).ToContainTextAsync("272 places are required");
        Assert.Equal(7, await page.Locator("tbody tr").CountAsync());
        Assert.Equal(168, (await page.Locator("tbody tr td:nth-of-type(1)").AllTextContentsAsync()).Sum(int.Parse));
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("at home");
        var league = await Open("/crews/forecast?week=2026-05-18", "president-tarnholt");
        await Assertions.Expect(league.Locator(".ruling .lines")).ToContainTextAsync("272 places are required");
        foreach (var other in (string[])["Pellwick League", "Wrenfall League"]) await Assertions.Expect(league.Locator("main")).Not.ToContainTextAsync(other);
    }

    /// <summary>What the next clinic should teach, with the evidence: how often, by how many, when, under whose code; for one game only that game's codes.</summary>
    [Fact]
    public async Task The_next_clinic_is_weighed_with_the_evidence()
    {
        var page = await Open("/clinic/next", "umpire-001", phone: true);
        var weights = (await page.Locator("#rules h3 small").AllTextContentsAsync()).Select(w => double.Parse(w.Split(' ')[1], System.Globalization.CultureInfo.InvariantCulture)).ToList();
        Assert.Equal(8, weights.Count);
        Assert.Equal(weights.OrderDescending(), weights);
        foreach (var said in (string[])["Asked", "Answered wrongly", "Set as a goal", "people", "SB 12U"]) await Assertions.Expect(page.Locator("#rules")).ToContainTextAsync(said);
        await page.GetByLabel("For", new() { Exact = true }).SelectOptionAsync("softball");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("#rules")).ToContainTextAsync("SB 12U");
        await Assertions.Expect(page.Locator("#field")).ToContainTextAsync("Angle before distance, base umpire");
        await Assertions.Expect(page.Locator("main")).Not.ToContainTextAsync("BB 11-12");
        // a question more is a sign more
        using (var store = Store())
        {
            for (var i = 0; i < 3; i++) store.Questions.Add(new($"q-sign-{i}", new DateTime(2026, 5, 15, 12, 0, 0, DateTimeKind.Utc), $"umpire-0{i + 10}", "who bats?", "fake tag", "softball/12U+Oslemoor@2026-05-15", "", "", "", true));
            store.SaveChanges();
        }
        await page.GotoAsync("/clinic/next?all=true");
        await Assertions.Expect(page.Locator(".topics > li").Filter(new() { Has = page.GetByRole(AriaRole.Heading, new() { Name = "Fake tag" }) })).ToContainTextAsync("Asked 3 times and not answered yet by 3 people, 15 May: SB 12U 3");
    }
}
