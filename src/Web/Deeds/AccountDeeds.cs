using System.Security.Cryptography;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.People;
using Umpirage.Store;
using Umpirage.Web.Parts;

namespace Umpirage.Web.Deeds;

/// <summary>Signing in and out, passkeys, passwords, and the first run of a new district.</summary>
internal static class AccountDeeds
{
    public static void Map(WebApplication app)
    {
        app.MapPost("/sign-in", async ([FromForm] string name, [FromForm] string password, [FromForm] string? to, SignInManager<Account> signIn) =>
            (await signIn.PasswordSignInAsync(Typed.Cut(name, 80), password, isPersistent: true, lockoutOnFailure: true)).Succeeded
                ? Doors.Back(to) : (IResult)Doors.Show<SignInForm>(new { To = to ?? "/", Failed = true }, StatusCodes.Status401Unauthorized)).ForAnybody().RequireRateLimiting("sign-in");
        app.MapPost("/sign-out", async (IFormCollection _, SignInManager<Account> signIn) => { await signIn.SignOutAsync(); return Results.Redirect("/sign-in"); }).ForAnybody();
        app.MapPost("/sign-in/passkey/options", async (IFormCollection _, SignInManager<Account> signIn) => Results.Content(await signIn.MakePasskeyRequestOptionsAsync(null), "application/json")).ForAnybody().RequireRateLimiting("sign-in");
        app.MapPost("/sign-in/passkey", async ([FromForm] string credential, [FromForm] string? to, SignInManager<Account> signIn) =>
            (await signIn.PasskeySignInAsync(credential)).Succeeded ? Doors.Back(to) : (IResult)Doors.Show<SignInForm>(new { To = to ?? "/", Failed = true }, StatusCodes.Status401Unauthorized)).ForAnybody().RequireRateLimiting("sign-in");
        app.MapPost("/me/passkeys/options", async (IFormCollection _, HttpContext context, SignInManager<Account> signIn) =>
            await signIn.UserManager.GetUserAsync(context.User) is { } account
                ? Results.Content(await signIn.MakePasskeyCreationOptionsAsync(new() { Id = account.Id.ToString(), Name = account.UserName!, DisplayName = account.UserName! }), "application/json") : Results.NotFound()).Needs(Deed.SeeOwn);
        app.MapPost("/me/passkeys", async ([FromForm] string credential, HttpContext context, SignInManager<Account> signIn, Sitting sitting, DistrictStore store) =>
        {
            if (await signIn.UserManager.GetUserAsync(context.User) is not { } account) return Results.NotFound();
            var attested = await signIn.PerformPasskeyAttestationAsync(credential);
            if (!attested.Succeeded) return Doors.Show<Told>(new { Title = "No passkey was added", Text = "The device did not confirm it. Try again.", To = "/me" }, 422);
            store.Actor = sitting.Actor;
            attested.Passkey.Name = $"passkey {(await signIn.UserManager.GetPasskeysAsync(account)).Count + 1}";
            await signIn.UserManager.AddOrUpdatePasskeyAsync(account, attested.Passkey);
            return Results.Redirect("/me");
        }).Needs(Deed.SeeOwn);
        app.MapPost("/me/passkeys/remove", async ([FromForm] string id, HttpContext context, UserManager<Account> users, Sitting sitting, DistrictStore store) =>
        {
            if (await users.GetUserAsync(context.User) is not { } account || id.Length > 4096 || id.Length % 2 != 0 || !id.All(char.IsAsciiHexDigit)) return Results.NotFound();
            store.Actor = sitting.Actor;
            await users.RemovePasskeyAsync(account, Convert.FromHexString(id));
            return Results.Redirect("/me");
        }).Needs(Deed.SeeOwn);
        app.MapPost("/me/password", async ([FromForm] string old, [FromForm(Name = "new")] string fresh, HttpContext context, SignInManager<Account> signIn, Sitting sitting, DistrictStore store) =>
        {
            if (await signIn.UserManager.GetUserAsync(context.User) is not { } account) return Results.NotFound();
            store.Actor = sitting.Actor;
            var changed = await signIn.UserManager.ChangePasswordAsync(account, old, fresh);
            if (!changed.Succeeded) return Doors.Faulty(Faults(changed));
            await signIn.RefreshSignInAsync(account);
            return Results.Redirect("/me");
        }).Needs(Deed.SeeOwn).RequireRateLimiting("sign-in");
        app.MapPost("/people/{key}/account", async (string key, [FromForm] string name, UserManager<Account> users, Sitting sitting, DistrictStore store) =>
        {
            if (store.People.Find(key) is not { } person) return Results.NotFound();
            store.Actor = sitting.Actor;
            // read out to its owner once; whoever signs in with it changes it
            var secret = RandomNumberGenerator.GetString("abcdefghijkmnpqrstuvwxyz23456789", 16);
            IdentityResult made;
            if (await users.Users.FirstOrDefaultAsync(a => a.Person == key) is { } known)
            {
                made = await users.ResetPasswordAsync(known, await users.GeneratePasswordResetTokenAsync(known), secret);
                name = known.UserName!;
            }
            else made = await users.CreateAsync(new() { UserName = Typed.Cut(name, 80), Person = key }, secret);
            return made.Succeeded ? Doors.Show<Told>(new { Title = $"Sign-in for {person.ListName}", Text = $"Name: {name}. The password below is shown this once; they change it after signing in.{(person.IsMinor ? " Give it to the guardian." : "")}", Secret = secret, To = $"/people/{Uri.EscapeDataString(key)}" })
                : Doors.Faulty(Faults(made));
        }).Needs(Deed.KeepAccounts);
        app.MapPost("/first-run", async ([FromForm] string code, [FromForm] string district, [FromForm] string zone, [FromForm] string given, [FromForm] string? family, [FromForm] string name, [FromForm] string password, FirstRun first, SignInManager<Account> signIn, DistrictStore store) =>
        {
            var faults = await first.Begin(store, signIn.UserManager, code, Typed.Cut(district, 80), Typed.Cut(zone, 60), Typed.Cut(given, 80), Typed.Cut(family, 80), Typed.Cut(name, 80), password);
            if (faults.Count > 0) return Doors.Show<FirstRunForm>(new { Faults = faults }, 422);
            await signIn.PasswordSignInAsync(name.Trim(), password, true, true);
            return Results.Redirect("/");
        }).ForAnybody().RequireRateLimiting("sign-in");
    }

    internal static IReadOnlyList<FieldFault> Faults(IdentityResult result) => [.. result.Errors.Select(e => new FieldFault(e.Code.Contains("Password", StringComparison.Ordinal) ? "password" : "name", "what was typed", e.Description))];
}
