using Umpirage.Store;

namespace Umpirage.Cli.Verbs;

internal static class BackupVerb
{
    public static int Run(Request request)
    {
        if (request.Words.Count != 1) { Console.Error.WriteLine("write: ./umpirage backup FILE"); return Verb.Unusable; }
        using var store = DistrictOf.Open(request, make: false);
        if (store is null) return Verb.Unusable;
        var records = Backup.Write(store, request.Words[0]);
        Console.WriteLine($"{records} records in {request.Words[0]}; it holds everything, sign-ins and trail too: keep it where only the chief can read it");
        return Verb.Fine;
    }

    /// <summary>What was there goes into a backup beside the one restored, before anything changes.</summary>
    public static int Restore(Request request)
    {
        if (request.Words.Count != 1) { Console.Error.WriteLine("write: ./umpirage restore FILE"); return Verb.Unusable; }
        var file = request.Words[0];
        if (!File.Exists(file)) { Console.Error.WriteLine($"there is no file '{file}'"); return Verb.Unusable; }
        using var store = DistrictOf.Open(request, make: true)!;
        var before = $"{file}.before-{DateTime.UtcNow:yyyyMMdd-HHmmss}";
        if (store.District.Any() || store.People.Any()) Backup.Write(store, before);
        var (records, faults) = Umpirage.Store.Restore.Run(store, file);
        foreach (var fault in faults) Console.Error.WriteLine(fault);
        if (faults.Count > 0) { File.Delete(before); Console.Error.WriteLine("nothing was changed"); return Verb.Unusable; }
        Console.WriteLine($"{records} records restored{(File.Exists(before) ? $"; what was there is kept in {before}" : "")}");
        return Verb.Fine;
    }
}
