using Umpirage.Web;

var root = Environment.GetEnvironmentVariable("UMPIRAGE_ROOT") is { Length: > 0 } named ? named : Directory.GetCurrentDirectory();
if (Settings.Read(args, root, out var fault) is not { } settings)
{
    Console.Error.WriteLine(fault);
    return 2;
}
WebApplication app;
try { app = Desk.Build(settings); }
catch (Exception refusal) when (refusal is InvalidDataException or IOException or UnauthorizedAccessException or System.Data.Common.DbException)
{
    Console.Error.WriteLine($"the desk cannot open {settings.Place.InWords}: {refusal.Message}");
    return 2;
}
await app.StartAsync();
app.Services.GetRequiredService<FindingWords>().Begin();
Console.WriteLine($"The desk is open at {app.Urls.First().Replace("127.0.0.1", "localhost")}/{(settings.Demo ? "   (demonstration district; you sit as its umpire-in-chief)" : "")}");
if (!settings.Demo)
{
    using var scope = app.Services.CreateScope();
    if (FirstRun.Due(scope.ServiceProvider.GetRequiredService<Umpirage.Store.DistrictStore>())) Console.WriteLine($"A new district: open /first-run and give this code: {app.Services.GetRequiredService<FirstRun>().Code}");
}
await app.WaitForShutdownAsync();
await app.DisposeAsync();
return 0;
