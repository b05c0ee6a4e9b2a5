using Umpirage.Rules.Ground;
using Umpirage.Store.Files;

namespace Umpirage.Cli.Verbs;

internal static class ExportVerb
{
    public static int Run(Request request)
    {
        var name = request.Words.FirstOrDefault() ?? "";
        var kind = FileKind.Named(name);
        if (kind is null && name != "calendar") { Console.Error.WriteLine($"there is no kind '{name}'; {Words.Offer(name, [.. FileKind.All.Select(k => k.Name), "calendar"])}"); return Verb.Unusable; }
        using var store = DistrictOf.Open(request, make: false);
        if (store is null) return Verb.Unusable;
        Console.Write(kind is null ? CalendarFile.Write(store, [.. store.Games.OrderBy(g => g.Start)]) : Export.Run(store, kind));
        return Verb.Fine;
    }
}
