using Umpirage.District.Diamonds;
using Umpirage.Paper;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Cli.Verbs;

/// <summary>The field of one division: its points, or a drawing of it; its stake-out sheet; and a taped diamond held against every division.</summary>
internal static class DiamondVerb
{
    private static readonly string[] Drawings = ["--svg", "--pdf", "--dxf"];

    public static int Diamond(Request request)
    {
        var options = new Options(request, Drawings);
        var drawn = Drawings.Where(d => options.Text(d) is not null).Select(d => (Kind: d, File: options.Text(d)!)).ToList();
        if (options.Words.Count == 0) options.Faults.Add("no division is named");
        if (drawn.Count > 0 && options.Words.Count > 1) options.Faults.Add($"a drawing is of one division; {options.Words.Count} are named");
        if (options.Faulty("write: ./umpirage diamond \"SB 12U\" --pdf field.pdf --dxf field.dxf; or several divisions that share a diamond")) return Verb.Unusable;
        var book = Library.Codes(request, ["field", "field marks"], address: "");
        var findings = new List<Finding>();
        var layouts = Layouts(book, request, options.Words, findings);
        foreach (var finding in findings) Console.Error.WriteLine(finding);
        if (findings.Count > 0) return Verb.Unusable;
        if (drawn.Count == 0) return Told(request, [.. options.Words.Zip(layouts)]);
        foreach (var (kind, file) in drawn)
        {
            var bytes = kind switch
            {
                "--pdf" => PlanPdf.Of(layouts[0]),
                "--dxf" => System.Text.Encoding.ASCII.GetBytes(PlanDxf.Of(layouts[0])),
                _ => System.Text.Encoding.UTF8.GetBytes(PlanSvg.Of(layouts[0], Window.Infield(layouts[0]))),
            };
            File.WriteAllBytes(file, bytes);
            Console.WriteLine($"{file}: {layouts[0].Code.Address}, {bytes.Length} bytes");
        }
        return Verb.Fine;
    }

    /// <summary>The points of one layout, or how the marks of several lie to each other.</summary>
    private static int Told(Request request, List<(string Name, Layout Layout)> layouts)
    {
        var (marks, mounds) = (CommonMark.Of(layouts), Mounds.Clashing(layouts));
        var clashing = marks.Any(m => m.Fit == Fit.Clashing) || mounds.Count > 0;
        if (request.Json) Json.Write(new { layouts = layouts.Select(l => new { code = l.Layout.Code.Address.ToString(), l.Layout.Marks, l.Layout.Courses, l.Layout.Bows }), shared = layouts.Count == 1 ? [] : marks, mounds });
        else if (layouts is [var only])
            foreach (var m in only.Layout.Marks) Console.WriteLine(FormattableString.Invariant($"{m.Name,-56} {m.At.X,9:0.000} ft right {m.At.Y,9:0.000} ft up   {Tape.Told(m.At.Length)} from home, {Tape.InMetres(m.At.Length)}"));
        else
        {
            Console.WriteLine($"{Words.And([.. layouts.Select(l => l.Name)])} on one diamond");
            foreach (var mound in mounds) Console.WriteLine($"  CLASH: {mound}");
            foreach (var mark in marks.OrderBy(m => m.Fit == Fit.Clashing ? 0 : m.Fit == Fit.Apart ? 1 : m.Without.Count > 0 ? 2 : 3)) Console.WriteLine($"  {mark.InWords}");
        }
        return clashing ? Verb.No : Verb.Fine;
    }

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
        string? Wrong(string address)
        {
            string? why = null;
            Casebook.Code(book, address, request.Today, m => why ??= m);
            return why;
        }
        var survey = findings.Count > 0 ? null : SurveyFile.Read(file, File.ReadAllText(file), Surveyor.Names(all), findings, Wrong);
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
