using Umpirage.Web;

var root = Environment.GetEnvironmentVariable("UMPIRAGE_ROOT") is { Length: > 0 } named ? named : Directory.GetCurrentDirectory();
if (Settings.Read(args, root, out var fault) is not { } settings)
{
    Console.Error.WriteLine(fault);
    return 2;
}
await using var app = Desk.Build(settings);
await app.StartAsync();
Console.WriteLine($"The desk is open at {app.Urls.First().Replace("127.0.0.1", "localhost")}/{(settings.Demo ? "   (demonstration district; you sit as its umpire-in-chief)" : "")}");
await app.WaitForShutdownAsync();
return 0;
