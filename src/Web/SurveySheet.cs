using Umpirage.District.Diamonds;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Web;

/// <summary>A survey as it is typed at the field: rows of the usual tapes, and lines of a survey's own text; and what comes of it.</summary>
/// <param name="Text">All of it as a survey is written.</param>
public sealed record SurveySheet(string Text, Surveyor? Found, IReadOnlyList<string> Faults)
{
    private const int Longest = 6000, LongestLength = 40;

    /// <summary>The tapes that are asked for, in the order in which two people read them.</summary>
    public static IReadOnlyList<(string From, string To)> Rows { get; } =
    [
        ("home", "first"), ("home", "second"), ("home", "third"), ("home", SurveyFile.Plate), ("first", "second"), ("first", "third"), ("first", SurveyFile.Plate), ("second", "third"), ("second", SurveyFile.Plate), ("third", SurveyFile.Plate),
    ];

    /// <param name="feet">What was typed as feet in each row; with a unit it stands for itself.</param>
    /// <param name="inches">What was typed as inches beside it.</param>
    /// <param name="more">Lines of a survey, as codes/ and demo/ have them.</param>
    public static SurveySheet Of(DiamondSheet sheet, IReadOnlyList<string?> feet, IReadOnlyList<string?> inches, string? more, Codebook book)
    {
        List<(string Where, string Line)> lines = [];
        for (var i = 0; i < Rows.Count; i++)
        {
            var (from, to) = Rows[i];
            if (Length(feet.ElementAtOrDefault(i), inches.ElementAtOrDefault(i)) is { Length: > 0 } length) lines.Add(($"{from} to {to}", $"{from}-{to} {length}"));
        }
        var rest = Typed.Cut(more, Longest).ReplaceLineEndings("\n");
        if (rest != "") lines.AddRange(rest.Split('\n').Select((l, i) => ($"line {i + 1}", l)));
        if (!lines.Any(l => l.Line.StartsWith("Survey:", StringComparison.Ordinal))) lines.Insert(0, ("", $"Survey: {sheet.Diamond.Name}"));
        var text = string.Join('\n', lines.Select(l => l.Line));
        if (lines.Count <= 1) return new(text, null, []);

        var findings = new List<Finding>();
        List<Layout> laid = [.. sheet.Here.Concat(sheet.Elsewhere).Select(l => l.Layout)];
        var survey = SurveyFile.Read(sheet.Diamond.Name, text, Surveyor.Names(laid), findings);
        var faults = new List<string>();
        if (survey is { Codes.Count: > 0 })
            laid = [.. survey.Codes.Select(c => Casebook.Code(book, c, sheet.Day, faults.Add) is { } code ? Layout.Of(code, findings) : null).OfType<Layout>()];
        var found = survey is null || faults.Count > 0 || findings.Count > 0 || laid.Count == 0 ? null : Surveyor.Of(survey, laid, findings);
        faults.AddRange(findings.Select(f => f.Line > 0 && lines[f.Line - 1].Where is { Length: > 0 } place ? $"{place}: {f.Message}" : f.Message));
        return new(text, found, faults);
    }

    /// <summary>"84" and "10 1/4" are 84 ft 10 1/4 in; what names its unit is left as it is.</summary>
    private static string Length(string? feet, string? inches)
    {
        var (ft, inch) = (Typed.Cut(feet, LongestLength), Typed.Cut(inches, LongestLength));
        if (ft.Any(char.IsLetter)) return inch == "" ? ft : $"{ft} {inch}";
        return string.Join(' ', new[] { ft == "" ? "" : $"{ft} ft", inch == "" ? "" : inch.Any(char.IsLetter) ? inch : $"{inch} in" }.Where(p => p != ""));
    }
}
