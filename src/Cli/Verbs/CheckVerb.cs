using Umpirage.District.Clinic;
using Umpirage.Finder;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Cli.Verbs;

internal static class CheckVerb
{
    public static int Run(Request request)
    {
        var book = Library.Codes(request);
        var unknown = request.Words.Where(w => book.Sheet(w) is null).ToList();
        foreach (var word in unknown) Console.Error.WriteLine($"there is no sheet '{word}'; {Rules.Ground.Words.Offer(word, [.. book.Sheets.Select(s => s.Name)])}");
        if (unknown.Count > 0) return Verb.Unusable;
        List<Finding> findings = [.. Checker.Check(book, request.Words.Count == 0 ? null : request.Words)];
        IReadOnlyList<string> names = [.. book.Sheets.Select(s => s.Name)];
        if (request.Words.Count == 0)
        {
            foreach (var text in Library.Asked(request)) AskedReader.Read(text.File, text.Text, book.Sheet, names, findings);
            var synonyms = Library.Synonyms(request);
            Synonyms.Read(synonyms.File, synonyms.Text, findings);
            if (Library.Phrases(request).ToList() is { Count: > 0 } texts) findings.AddRange(PhraseReader.Missing(PhraseReader.Read(texts, book, findings), book));
        }
        if (request.Json) Json.Write(findings.Select(f => new { kind = f.Kind.ToString(), file = f.File, line = f.Line, message = f.Message }));
        else
        {
            foreach (var finding in findings) Console.WriteLine(finding);
            if (findings.Count == 0 && request.Words.Count == 0) Console.WriteLine($"{book.Sheets.Count} sheets, {book.Layers.Count} local layers, every game, division, book and date of change");
            Console.WriteLine($"{findings.Count} findings");
        }
        return findings.Count == 0 ? Verb.Fine : Verb.No;
    }
}
