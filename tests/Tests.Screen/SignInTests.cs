using System.Net;
using System.Text.RegularExpressions;

namespace Umpirage.Tests.Screen;

/// <summary>A district's own desk: the first run, passwords, lock-out, limits, passkeys.</summary>
public partial class SignInTests(Browser browser)
{
    private const string Password = "a long enough pass phrase";

    [GeneratedRegex("give this code: (\\w+)")]
    private static partial Regex Code();

    private static async Task<DeskProcess> Begun(bool postgres)
    {
        var desk = await DeskProcess.Open(postgres, demo: false);
        for (var i = 0; i < 50 && !desk.Said.Any(l => Code().IsMatch(l)); i++) await Task.Delay(100);
        var code = Code().Match(string.Join('\n', desk.Said)).Groups[1].Value;
        using var door = new Door(desk.Address);
        (string, string)[] Fields(string with) => [("code", with), ("district", "Test district"), ("zone", "America/Chicago"), ("given", "Una"), ("family", "Lark"), ("name", "una"), ("password", Password)];
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await door.Post("/first-run", Fields("wrong"), from: "/first-run")).Status);
        Assert.Equal(HttpStatusCode.Redirect, (await door.Post("/first-run", Fields(code), from: "/first-run")).Status);
        Assert.Equal(HttpStatusCode.OK, (await door.Get("/")).Status);
        return desk;
    }

    [Theory, InlineData(false), InlineData(true)]
    public async Task The_first_run_makes_one_chief_and_only_once(bool postgres)
    {
        Assert.SkipWhen(postgres && DeskProcess.Server is null, "needs a PostgreSQL server; ./test.sh starts one");
        await using var desk = await Begun(postgres);
        using var door = new Door(desk.Address);
        Assert.Equal("/sign-in?to=%2F", (await door.Get("/")).Response.Headers.Location!.ToString());
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await door.Post("/first-run", [("code", "x"), ("district", "x"), ("zone", "Etc/UTC"), ("given", "x"), ("name", "x"), ("password", Password)])).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await door.Post("/seat", [("person", "chief")])).Status);
        Assert.Equal(HttpStatusCode.Redirect, (await door.SignIn("una", Password)).Status);
        Assert.Equal(HttpStatusCode.OK, (await door.Get("/trail")).Status);
        var cookie = door.Cookies.Single(c => c.Name.Contains("Identity", StringComparison.Ordinal));
        Assert.True(cookie.HttpOnly);
        using var store = desk.Place.Open();
        Assert.DoesNotContain(store.Trail.AsEnumerable(), t => (t.Before + t.After).Contains("AQAAAA", StringComparison.Ordinal));
        Assert.Contains(store.Trail.AsEnumerable(), t => t.What == "Account" && t.Deed == "added");
    }

    [Fact]
    public async Task Five_wrong_passwords_lock_the_sign_in_even_for_the_right_one()
    {
        await using var desk = await Begun(false);
        for (var i = 0; i < 5; i++)
        {
            using var door = new Door(desk.Address);
            Assert.Equal(HttpStatusCode.Unauthorized, (await door.SignIn("una", "wrong password here")).Status);
        }
        using var last = new Door(desk.Address);
        Assert.Equal(HttpStatusCode.Unauthorized, (await last.SignIn("una", Password)).Status);
    }

    [Fact]
    public async Task More_than_ten_tries_a_minute_from_one_place_are_turned_away()
    {
        await using var desk = await Begun(false);
        using var door = new Door(desk.Address);
        var answers = new List<HttpStatusCode>();
        for (var i = 0; i < 12; i++) answers.Add((await door.SignIn($"nobody-{i}", "wrong password here")).Status);
        Assert.Equal(10, answers.Count(a => a == HttpStatusCode.Unauthorized));
        Assert.Equal(2, answers.Count(a => a == HttpStatusCode.TooManyRequests));
    }

    [Fact]
    public async Task A_sign_in_is_given_to_a_person_and_opens_what_the_role_opens()
    {
        await using var desk = await Begun(false);
        using (var store = desk.Place.Open())
        {
            store.Put(District.People.Person.Of("kit", "Kit", "Wren", District.People.AgeBand.Adult, null, null, null, null, [])!);
            store.Put(new District.People.RoleHeld("kit", District.People.Role.Umpire, "", ""));
            store.SaveChanges();
        }
        using var chief = new Door(desk.Address);
        await chief.SignIn("una", Password);
        var (_, body, _) = await chief.Post("/people/kit/account", [("name", "kit")], from: "/me");
        Assert.Contains("class=\"secret\"", body);
        var secret = Regex.Match(body, "class=\"secret\">([a-z0-9]{16})<").Groups[1].Value;
        using var kit = new Door(desk.Address);
        Assert.Equal(HttpStatusCode.Redirect, (await kit.SignIn("kit", secret)).Status);
        Assert.Equal(HttpStatusCode.OK, (await kit.Get("/")).Status);
        Assert.Equal(HttpStatusCode.Forbidden, (await kit.Get("/trail")).Status);
    }

    [Fact]
    public async Task A_passkey_is_added_and_signs_in()
    {
        Browser.Needed();
        await using var desk = await Begun(false);
        var page = await browser.Page(desk.Address);
        var devices = await page.Context.NewCDPSessionAsync(page);
        await devices.SendAsync("WebAuthn.enable");
        await devices.SendAsync("WebAuthn.addVirtualAuthenticator", new() { ["options"] = new { protocol = "ctap2", transport = "internal", hasResidentKey = true, hasUserVerification = true, isUserVerified = true, automaticPresenceSimulation = true } });
        await page.GotoAsync("/sign-in");
        await page.FillAsync("#name", "una");
        await page.FillAsync("#password", Password);
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign in", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("h1")).ToContainTextAsync("Today");
        await page.GotoAsync("/me");
        await page.GetByRole(AriaRole.Button, new() { Name = "Add a passkey" }).ClickAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("passkey 1");
        await page.GetByRole(AriaRole.Button, new() { Name = "Sign out" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Use a passkey" }).ClickAsync();
        await Assertions.Expect(page.Locator("h1")).ToContainTextAsync("Today");
    }
}
