using Umpirage.Rules.Ground;
using Umpirage.Store.Files;

namespace Umpirage.Cli.Verbs;

internal static class ImportVerb
{
    public static int Run(Request request)
    {
        var words = request.Words.ToList();
        var dryRun = words.Remove("--dry-run");
        if (words.Count != 2) { Console.Error.WriteLine($"write: ./umpirage import KIND FILE [--dry-run]; a kind is {Kinds()}, or calendar"); return Verb.Unusable; }
        var kind = FileKind.Named(words[0]);
        if (kind is null && words[0] != "calendar") { Console.Error.WriteLine($"there is no kind '{words[0]}'; {Words.Offer(words[0], [.. FileKind.All.Select(k => k.Name), "calendar"])}"); return Verb.Unusable; }
        if (!File.Exists(words[1])) { Console.Error.WriteLine($"there is no file '{words[1]}'"); return Verb.Unusable; }
        using var store = DistrictOf.Open(request, make: true)!;
        var bytes = File.ReadAllBytes(words[1]);
        // only codes and layers are held against the rule code
        var imported = kind is null ? CalendarFile.Read(store, bytes, dryRun) : Import.Run(store, kind, bytes, dryRun, kind is LayerFile or DivisionFile ? Library.Codes(request) : null);
        foreach (var fault in imported.Faults) Console.Error.WriteLine($"{words[1]}, {fault}");
        if (request.Json) Json.Write(new { imported.Added, imported.Changed, imported.Same, imported.Removed, dryRun, faults = imported.Faults });
        else Console.WriteLine($"{(dryRun ? "would import: " : "")}{imported.InWords}");
        return imported.Fine ? Verb.Fine : Verb.No;
    }

    internal static string Kinds() => string.Join(", ", FileKind.All.Select(k => k.Name));
}
