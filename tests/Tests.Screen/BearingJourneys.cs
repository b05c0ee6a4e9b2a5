namespace Umpirage.Tests.Screen;

public class BearingJourneysInAFile(FileDesk desk, Browser browser) : BearingJourneys(desk, browser), IClassFixture<FileDesk>;

public class BearingJourneysOnAServer(ServerDesk desk, Browser browser) : BearingJourneys(desk, browser), IClassFixture<ServerDesk>;

/// <summary>Where a diamond looks is taken with a compass behind home, tried, and kept with the diamond by who may look a field over.</summary>
public abstract class BearingJourneys(DemoDesk demo, Browser browser) : AtTheDesk(demo, browser)
{
    private static ILocator Button(IPage page, string name) => page.GetByRole(AriaRole.Button, new() { Name = name });

    private static ILocator Looks(IPage page) => page.GetByLabel("Second lies from home at");

    [Fact]
    public async Task Where_a_diamond_looks_is_typed_on_a_phone_and_kept()
    {
        const string Diamond = "veldhollow-school-1";
        using (var store = Store()) Assert.Null(store.Diamonds.Single(d => d.Key == Diamond).Bearing);
        var page = await Open($"/diamonds/{Diamond}", "safety-tarnholt", phone: true);
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Nobody took where this diamond looks");
        await Assertions.Expect(Button(page, "Keep ")).ToHaveCountAsync(0);
        await Looks(page).FillAsync("370");
        await Button(page, "Work it out").ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("the direction is '370'; it may be 0 to 360");
        await Assertions.Expect(Button(page, "Keep ")).ToHaveCountAsync(0);
        await Looks(page).FillAsync("62.5");
        await Button(page, "Work it out").ClickAsync();
        // a door takes nothing that is no direction, whoever sends it
        await page.Locator("input[type=hidden][name=looks]").Last.EvaluateAsync("i => i.value = 'uphill'");
        await Button(page, "Keep ").ClickAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("uphill");
        using (var store = Store()) Assert.Null(store.Diamonds.Single(d => d.Key == Diamond).Bearing);
        await page.GoBackAsync();
        await page.ReloadAsync();
        await Button(page, "Keep ").ClickAsync();
        await Assertions.Expect(Looks(page)).ToHaveValueAsync("62.5");
        await Assertions.Expect(Button(page, "Keep ")).ToHaveCountAsync(0);
        using (var store = Store())
        {
            Assert.Equal(62.5, store.Diamonds.Single(d => d.Key == Diamond).Bearing);
            Assert.Contains(store.Trail, t => t.Key == Diamond);
        }
        // a coach reads it, and cannot change it
        var coach = await Open($"/diamonds/{Diamond}?looks=200", "manager-pel-sb8u-1");
        await Assertions.Expect(coach.Locator("#sun")).ToBeVisibleAsync();
        await Assertions.Expect(Button(coach, "Keep ")).ToHaveCountAsync(0);
    }
}
