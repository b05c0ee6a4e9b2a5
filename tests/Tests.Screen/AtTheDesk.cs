using Umpirage.Store;

namespace Umpirage.Tests.Screen;

/// <summary>Somebody at the demonstration's desk with a browser.</summary>
public abstract class AtTheDesk(DemoDesk demo, Browser browser)
{
    private const string Seat = "seat";

    protected async Task<IPage> Open(string path, string seat = "chief", bool phone = false)
    {
        Browser.Needed();
        Assert.SkipWhen(demo.Desk is null, "needs a PostgreSQL server; ./test.sh starts one");
        var page = await browser.Page(demo.Desk!.Address, phone);
        await page.Context.AddCookiesAsync([new() { Name = Seat, Value = seat, Url = demo.Desk.Address.ToString() }]);
        await page.GotoAsync(path);
        return page;
    }

    /// <summary>The desk by HTTP alone, from the same seat.</summary>
    protected Door Knock(string seat)
    {
        Assert.SkipWhen(demo.Desk is null, "needs a PostgreSQL server; ./test.sh starts one");
        return new(demo.Desk!.Address, seat);
    }

    protected DistrictStore Store() => demo.Desk!.Place.Open();

    protected static ILocator Heading(IPage page, string name) => page.GetByRole(AriaRole.Heading, new() { Name = name });
}
