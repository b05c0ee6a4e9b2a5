using Umpirage.Rules.Codes;

namespace Umpirage.Cli.Verbs;

internal static class TallyVerb
{
    public static int Run(Request request)
    {
        var book = Library.Codes(request);
        var lines = Tally.Of(book, request.Words.Count == 0 ? null : request.Words);
        if (request.Json) Json.Write(lines.Select(l => new { sheet = l.Sheet, game = l.Game, division = l.Division, cases = l.Cases.ToString(), rulings = l.Rulings }));
        else foreach (var line in lines) Console.WriteLine(line);
        return Verb.Fine;
    }
}
