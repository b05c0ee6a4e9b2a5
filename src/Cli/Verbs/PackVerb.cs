using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Cli.Verbs;

internal static class PackVerb
{
    public static int Run(Request request)
    {
        if (request.Words.Count < 2) { Console.Error.WriteLine("name a code and a file: ./umpirage pack softball/12U@2026-05-16 12U.pack"); return Verb.Unusable; }
        var book = Library.Codes(request);
        var findings = new List<Finding>();
        if (Casebook.Code(book, request.Words[0], request.Today, Console.Error.WriteLine) is not { } code) return Verb.Unusable;
        var pack = Pack.Of(book, code, findings);
        foreach (var finding in findings) Console.Error.WriteLine(finding);
        var bytes = pack.Write();
        File.WriteAllBytes(request.Words[1], bytes);
        if (request.Json) Json.Write(new { code = pack.Address, sheets = pack.Sheets.Count, bytes = bytes.Length });
        else Console.WriteLine($"{pack.Sheets.Count} sheets of {pack.Address}, {bytes.Length / 1000.0:F1} kB");
        return findings.Count == 0 ? Verb.Fine : Verb.No;
    }
}
