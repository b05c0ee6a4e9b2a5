using Umpirage.District.Crews;
using Umpirage.Store;
using Umpirage.Web;

namespace Umpirage.Tests.Screen;

public class CrewJourneysInAFile(FileDesk desk, Browser browser) : CrewJourneys(desk, browser), IClassFixture<FileDesk>;

public class CrewJourneysOnAServer(ServerDesk desk, Browser browser) : CrewJourneys(desk, browser), IClassFixture<ServerDesk>;

/// <summary>What somebody who sets crews does at the desk.</summary>
public abstract class CrewJourneys(DemoDesk demo, Browser browser) : AtTheDesk(demo, browser)
{
    /// <summary>The coming week, all of it open in the demonstration.</summary>
    private const string Week = "2026-05-18";

    private CrewPlan Plan()
    {
        using var store = Store();
        return CrewPlan.Of(CrewReader.Read(store), UmpiresCodes.For(new Shelf(Settings.Read(["--demo"], DeskProcess.Root, out _)!, Store).Book));
    }

    private static async Task Give(IPage page, CrewGame game, CrewPerson person)
    {
        var card = page.Locator($"[id='game-{game.Key}']");
        await card.GetByText("Set by hand").ClickAsync();
        await card.GetByLabel("plate", new() { Exact = true }).FillAsync($"{person.Name} ({person.Key})");
        await card.GetByRole(AriaRole.Button, new() { Name = "Give" }).First.ClickAsync();
    }

    [Fact]
    public async Task A_place_is_given_and_opened_by_hand_and_safety_bars_for_good()
    {
        var page = await Open($"/crews?week={Week}&night=2026-05-19", "assigner", phone: true);
        await Assertions.Expect(Heading(page, "Crews").First).ToBeVisibleAsync();
        var plan = Plan();
        var tonight = plan.Games.Where(g => g.Day == new DateOnly(2026, 5, 19)).OrderBy(g => g.Key).ToList();
        var (game, may) = tonight.SelectMany(g => plan.Officials.Select(p => (g, p))).First(x => plan.Open(x.g).Contains(CrewPlace.Plate) && WhyNot.Of(plan, x.p, x.g, CrewPlace.Plate, instead: false).May);
        await Give(page, game, may);
        var plate = page.Locator($"[id='game-{game.Key}'] .places li").First;
        await Assertions.Expect(plate).ToContainTextAsync(may.Name);
        await Assertions.Expect(plate).Not.ToContainTextAsync("open");
        // a youth without a named adult at the game is barred, and nobody can say it again
        var youth = plan.Officials.First(p => p.IsMinor);
        var without = tonight.First(g => g.Key != game.Key && g.Coordinator is null);
        await Give(page, without, youth);
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("safety: adult coordinator");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Give it all the same" })).ToHaveCountAsync(0);
        // a rule bends when it was shown and said again, and stays in the list of what is broken
        await page.GetByRole(AriaRole.Link, new() { Name = "Back to the week" }).ClickAsync();
        var late = tonight.SelectMany(g => plan.Officials.Select(p => (Game: g, Person: p))).First(x => x.Game.Key != game.Key && x.Game.Key != without.Key && !x.Person.IsMinor && WhyNot.Of(plan, x.Person, x.Game, CrewPlace.Plate, instead: false).Reasons is [{ Constraint: "availability" }]);
        await Give(page, late.Game, late.Person);
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("rule: availability");
        await page.GetByRole(AriaRole.Button, new() { Name = "Give it all the same" }).ClickAsync();
        await Assertions.Expect(page.Locator("main .warn").First).ToContainTextAsync("availability");
        using (var store = Store())
        {
            Assert.Equal((may.Key, late.Person.Key, null), (store.Assignments.Find(game.Key, "plate")!.Person, store.Assignments.Find(late.Game.Key, "plate")!.Person, store.Assignments.Find(without.Key, "plate")?.Person));
            Assert.Contains(store.Trail.Where(t => t.What == "Assignment" && t.Key == $"{game.Key}/plate").ToList(), t => t.By.Contains("assigner", StringComparison.Ordinal));
        }
        // somebody else took the place meanwhile: the page says so and changes nothing
        using (var store = Store())
        {
            store.Put(new District.Calendar.Assignment(game.Key, "plate", null));
            store.SaveChanges();
        }
        var card = page.Locator($"[id='game-{game.Key}']");
        await card.GetByText("Set by hand").ClickAsync();
        await card.GetByRole(AriaRole.Button, new() { Name = "Open the plate" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("somebody changed it meanwhile");
        using var after = Store();
        Assert.Null(after.Assignments.Find(game.Key, "plate")!.Person);
    }
}
