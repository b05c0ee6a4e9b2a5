using System.Threading.RateLimiting;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.Demo;
using Umpirage.Store;
using Umpirage.Web.Deeds;

namespace Umpirage.Web;

/// <summary>Puts the desk together.</summary>
public static class Desk
{
    public const int SignInsAMinute = 10, RequestsASecond = 200;

    public static WebApplication Build(Settings settings)
    {
        var home = AppContext.BaseDirectory;
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { ContentRootPath = home, WebRootPath = Path.Combine(home, "wwwroot"), ApplicationName = typeof(Desk).Assembly.GetName().Name });
        // before it is published the pages' files lie in the project's folder
        if (File.Exists(Path.Combine(home, "Umpirage.Web.staticwebassets.runtime.json"))) builder.WebHost.UseStaticWebAssets();
        builder.Logging.ClearProviders().AddConsole().SetMinimumLevel(LogLevel.Warning);
        builder.WebHost.ConfigureKestrel(kestrel =>
        {
            kestrel.AddServerHeader = false;
            kestrel.Limits.MaxRequestBodySize = Umpirage.Store.Files.CsvText.Largest + (1 << 20);
            kestrel.ListenLocalhost(settings.Port > 0 ? settings.Port : FreePort());
        });
        Fill(settings);
        Add(builder.Services, settings);
        var app = builder.Build();
        app.UseExceptionHandler(error => error.Run(context => context.Response.WriteAsync("Something went wrong at the desk; nothing was changed. Go back and try again.")));
        app.Use(Gate.Headers);
        app.UseRouting();
        app.UseRateLimiter();
        app.UseAuthentication();
        app.Use(Gate.Pass);
        app.UseAntiforgery();
        app.MapStaticAssets().Add(b => b.Metadata.Add(new ForAnybodyAttribute()));
        app.MapGet("/health", [ForAnybody] (DistrictStore store) => store.Database.CanConnect() ? Results.Text("open") : Results.StatusCode(503));
        app.MapRazorComponents<Parts.App>();
        Doors.Map(app);
        return app;
    }

    /// <summary>Makes the tables, and in the demonstration the district.</summary>
    private static void Fill(Settings settings)
    {
        if (settings.Place.File is { } file && Path.GetDirectoryName(Path.GetFullPath(file)) is { } folder) Directory.CreateDirectory(folder);
        using var store = settings.Place.Ready();
        if (!settings.Demo) return;
        if (store.District.Any())
        {
            if (store.Users.Any() || store.District.Single() != Oslemoor.Facts) throw new InvalidDataException("--demo opens without sign-in, so it takes an empty store or a demonstration, never a district's own");
            return;
        }
        Seed.Demo(store, name => File.ReadAllText(Path.Combine(settings.DemoTables, name)));
    }

    private static void Add(IServiceCollection services, Settings settings)
    {
        services.AddSingleton(settings);
        services.AddSingleton<Plans>();
        services.AddSingleton<CrewHunts>();
        services.AddSingleton<FirstRun>();
        services.AddSingleton<FindingWords>();
        services.AddHttpContextAccessor();
        services.AddScoped(all => { var store = settings.Place.Open(); store.Codes = () => all.GetRequiredService<Shelf>().Book; if (settings.StandsAt is { } stands) store.Today = DateOnly.FromDateTime(stands); return store; });
        services.AddScoped<Sitting>();
        services.AddSingleton(new Shelf(settings, settings.Place.Open));
        services.AddSingleton<Lessons>();
        services.AddSingleton<Manuals>();
        services.AddSingleton(all => new Classroom(settings, all.GetRequiredService<Shelf>(), settings.Place.Open));
        services.AddRazorComponents();
        services.AddAntiforgery(o => { o.Cookie.SameSite = SameSiteMode.Strict; o.SuppressXFrameOptionsHeader = true; });
        services.AddIdentityCore<Account>(identity =>
        {
            identity.Stores.SchemaVersion = IdentitySchemaVersions.Version3;
            identity.Password.RequiredLength = 12;
            identity.Password.RequireDigit = identity.Password.RequireLowercase = identity.Password.RequireUppercase = identity.Password.RequireNonAlphanumeric = false;
            identity.Lockout.MaxFailedAccessAttempts = 5;
            identity.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(15);
            identity.Lockout.AllowedForNewUsers = true;
        }).AddSignInManager().AddEntityFrameworkStores<DistrictStore>().AddClaimsPrincipalFactory<PersonClaims>();
        // a passkey is given to the page it was asked from, and on loopback that page has no https
        services.Configure<IdentityPasskeyOptions>(keys => keys.ValidateOrigin = asked => ValueTask.FromResult(!asked.CrossOrigin && asked.Origin == $"{asked.HttpContext.Request.Scheme}://{asked.HttpContext.Request.Host}"));
        services.AddAuthentication(IdentityConstants.ApplicationScheme).AddIdentityCookies(cookies => cookies.ApplicationCookie!.Configure(cookie =>
        {
            cookie.Cookie.HttpOnly = true;
            cookie.Cookie.SameSite = SameSiteMode.Lax;
            cookie.ExpireTimeSpan = TimeSpan.FromDays(7);
            cookie.SlidingExpiration = true;
        }));
        services.AddRateLimiter(limits =>
        {
            limits.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
            limits.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(c => RateLimitPartition.GetTokenBucketLimiter(Address(c), _ => new()
            {
                TokenLimit = 2 * RequestsASecond, TokensPerPeriod = RequestsASecond, ReplenishmentPeriod = TimeSpan.FromSeconds(1), AutoReplenishment = true,
            }));
            limits.AddPolicy("sign-in", c => RateLimitPartition.GetFixedWindowLimiter(Address(c), _ => new() { PermitLimit = SignInsAMinute, Window = TimeSpan.FromMinutes(1) }));
        });
        if (settings.Place.File is { } file)
            services.AddDataProtection().PersistKeysToFileSystem(Directory.CreateDirectory(Path.Combine(Path.GetDirectoryName(Path.GetFullPath(file))!, ".desk-keys")));
    }

    private static string Address(HttpContext context) => context.Connection.RemoteIpAddress?.ToString() ?? "";

    private static int FreePort()
    {
        foreach (var port in (int[])[Settings.UsualPort, 0])
            try
            {
                using var listener = new System.Net.Sockets.TcpListener(System.Net.IPAddress.Loopback, port);
                listener.Start();
                return ((System.Net.IPEndPoint)listener.LocalEndpoint).Port;
            }
            catch (System.Net.Sockets.SocketException) { }
        return Settings.UsualPort;
    }
}
