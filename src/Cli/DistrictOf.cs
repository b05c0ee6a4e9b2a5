using Umpirage.District.Demo;
using Umpirage.Store;

namespace Umpirage.Cli;

/// <summary>The district a verb works on: the file or the server that was named, or the demonstration's, which is made when it is first asked for.</summary>
internal static class DistrictOf
{
    /// <summary>The time of day in the district; the demonstration stands still.</summary>
    public static DateTime Now(Request request, DistrictStore store)
    {
        if (request.Postgres is null && request.Data is null) return Oslemoor.Now;
        return TimeZoneInfo.TryFindSystemTimeZoneById(store.District.FirstOrDefault()?.Zone ?? "Etc/UTC", out var zone) ? TimeZoneInfo.ConvertTimeFromUtc(DateTime.UtcNow, zone) : DateTime.UtcNow;
    }

    public static DistrictStore? Open(Request request, bool make)
    {
        var demo = request.Postgres is null && request.Data is null;
        var place = request.Postgres is { } server ? Place.OnServer(server) : request.Data is { } named ? Place.InFile(named) : Place.DemoIn(request.Root);
        if (place.File is { } file && !make && !demo && !File.Exists(file))
        {
            Console.Error.WriteLine($"there is no file '{file}'");
            return null;
        }
        if (demo) Directory.CreateDirectory(Path.GetDirectoryName(place.File!)!);
        var store = place.Ready();
        var codes = new Lazy<Rules.Codes.Codebook>(() => Library.Codes(request));
        store.Codes = () => codes.Value;
        if (demo)
        {
            store.Today = DateOnly.FromDateTime(Oslemoor.Now);
            if (!store.District.Any()) Seed.Demo(store, name => File.ReadAllText(Path.Combine(request.Root, "demo", "oslemoor", name)));
            store.ChangeTracker.Clear();
        }
        store.Actor = $"{Environment.UserName}, command line";
        return store;
    }
}
