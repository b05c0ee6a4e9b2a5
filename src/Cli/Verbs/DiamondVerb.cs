using Umpirage.District.Diamonds;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Cli.Verbs;

/// <summary>The field of one division: its points, or a drawing of it; its stake-out sheet; and a taped diamond held against every division.</summary>
internal static class DiamondVerb
{
    public static int StakeOutSheet(Request request)
    {
        if (Laid(request, request.Words, "stakeout") is not { } layout) return Verb.Unusable;
        var sheet = StakeOut.Of(layout);
        if (request.Json) Json.Write(new { code = layout.Code.Address.ToString(), sheet.Work, sheet.Stakes, sheet.Diagonals });
        else Console.Write(sheet.Text());
        return Verb.Fine;
    }

    public static int Survey(Request request)
    {
        if (request.Words.Count != 1) { Console.Error.WriteLine("name a survey: ./umpirage survey demo/low-field.survey"); return Verb.Unusable; }
        var file = request.Words[0];
        if (!File.Exists(file)) { Console.Error.WriteLine($"there is no file '{file}'"); return Verb.Unusable; }
        var book = Library.Codes(request, ["field", "field marks"], address: "");
        var findings = new List<Finding>();
        var all = Layouts(book, request, Divisions(book), findings);
        var survey = findings.Count > 0 ? null : SurveyFile.Read(file, File.ReadAllText(file), Surveyor.Names(all), findings);
        var asked = survey is null || survey.Codes.Count == 0 ? all : Layouts(book, request, survey.Codes, findings);
        var found = survey is null || findings.Count > 0 ? null : Surveyor.Of(survey, asked, findings);
        foreach (var finding in findings) Console.Error.WriteLine(finding);
        if (found is null) return Verb.Unusable;
        if (request.Json)
            Json.Write(new
            {
                found.Survey.Name, points = found.Net.Points.Select(p => new { point = p, found.Net[p].X, found.Net[p].Y, within = found.Within(p) }), suspects = found.Suspects.Select(s => s.InWords),
                servings = found.Servings.Select(s => new { code = s.Layout.Code.Address.ToString(), stands = s.Stands.ToString(), inWords = s.InWords, moves = s.Moves.Select(m => m.InWords) }),
            });
        else Console.Write(found.Text());
        return found.Suspects.Count == 0 && found.Servings.Any(s => s.Stands == Stands.AsAsked) ? Verb.Fine : Verb.No;
    }

    /// <summary>The layout of the one division that was named; null, with the reasons told.</summary>
    internal static Layout? Laid(Request request, IReadOnlyList<string> words, string verb)
    {
        if (words.Count != 1) { Console.Error.WriteLine($"name one division: ./umpirage {verb} \"SB 12U\""); return null; }
        var book = Library.Codes(request, ["field", "field marks"], words[0]);
        var findings = new List<Finding>();
        var layouts = Layouts(book, request, words, findings);
        foreach (var finding in findings) Console.Error.WriteLine(finding);
        return findings.Count > 0 ? null : layouts[0];
    }

    /// <summary>One name for each way a field is laid out: as the leagues play, then the games at large.</summary>
    private static IEnumerable<string> Divisions(Rules.Codes.Codebook book) =>
        book.Roster.PlayedAs.Values.Distinct().Concat(book.Roster.Games.SelectMany(g => book.Roster.Divisions.Select(d => $"{g}/{d}")));

    private static List<Layout> Layouts(Rules.Codes.Codebook book, Request request, IEnumerable<string> addresses, List<Finding> findings)
    {
        var layouts = new List<Layout>();
        foreach (var address in addresses)
            if (Casebook.Code(book, address, request.Today, m => findings.Add(new(FindingKind.UnknownWord, address, 0, m))) is { } code && Layout.Of(code, findings) is { } layout) layouts.Add(layout);
        return layouts;
    }
}
