[assembly: AssemblyFixture(typeof(Umpirage.Tests.Screen.Browser))]

namespace Umpirage.Tests.Screen;

/// <summary>Debian's Chromium, started once for all tests.</summary>
public sealed class Browser : IAsyncLifetime
{
    private IPlaywright? playwright;
    private IBrowser? browser;

    public async ValueTask InitializeAsync()
    {
        if (!File.Exists("/usr/bin/chromium")) return;
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = "/usr/bin/chromium", Headless = true,
            Args = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    public static void Needed() => Assert.SkipUnless(File.Exists("/usr/bin/chromium"), "needs /usr/bin/chromium; ./test.sh installs it on Debian");

    public async Task<IPage> Page(Uri address, bool phone = false, string theme = "sun")
    {
        var context = await browser!.NewContextAsync(new() { BaseURL = address.ToString(), ViewportSize = phone ? new() { Width = 390, Height = 844 } : new() { Width = 1440, Height = 900 } });
        await context.AddCookiesAsync([new() { Name = "theme", Value = theme, Url = address.ToString() }]);
        context.SetDefaultTimeout(60_000);
        Assertions.SetDefaultExpectTimeout(30_000);
        return await context.NewPageAsync();
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is not null) await browser.DisposeAsync();
        playwright?.Dispose();
    }
}
