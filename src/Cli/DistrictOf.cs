using Umpirage.Store;

namespace Umpirage.Cli;

/// <summary>The district a verb works on: the file or the server that was named, or the demonstration's.</summary>
internal static class DistrictOf
{
    /// <summary>The time of day in the district; the demonstration stands still.</summary>
    public static DateTime Now(Request request, DistrictStore store)
    {
        if (request.Postgres is null && request.Data is null) return District.Demo.Oslemoor.Now;
        return TimeZoneInfo.TryFindSystemTimeZoneById(store.District.FirstOrDefault()?.Zone ?? "Etc/UTC", out var zone) ? TimeZoneInfo.ConvertTimeFromUtc(DateTime.UtcNow, zone) : DateTime.UtcNow;
    }

    public static DistrictStore? Open(Request request, bool make)
    {
        var place = request.Postgres is { } server ? Place.OnServer(server) : request.Data is { } named ? Place.InFile(named) : Place.DemoIn(request.Root);
        if (place.File is { } file && !make && !File.Exists(file))
        {
            Console.Error.WriteLine(request.Data is null ? "there is no demonstration district yet; ./umpirage desk makes it, or name a district with --data FILE or --postgres CONNECTION" : $"there is no file '{file}'");
            return null;
        }
        var store = place.Ready();
        if (request.Postgres is null && request.Data is null) store.Today = DateOnly.FromDateTime(District.Demo.Oslemoor.Now);
        var codes = new Lazy<Rules.Codes.Codebook>(() => Library.Codes(request));
        store.Codes = () => codes.Value;
        store.Actor = $"{Environment.UserName}, command line";
        return store;
    }
}
