using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>The questions of one code on one day.</summary>
public sealed record Bank(Code Code, IReadOnlyList<Question> Questions)
{
    private readonly Lazy<Dictionary<string, Question>> byId = new(() => Questions.ToDictionary(q => q.Id));

    /// <summary>The question of that id; null when the code, as it stands, asks none such.</summary>
    public Question? Find(string id) => byId.Value.GetValueOrDefault(id);

    /// <summary>Makes the bank of a code; sheets with faults are left out and named in <paramref name="findings"/>.</summary>
    /// <param name="each">Questions at most for each rule and what it decides.</param>
    public static Bank Of(Codebook book, PhraseBook phrases, Code code, List<Finding> findings, int each = 3)
    {
        var answers = new Answers(book);
        List<Sheet> sheets = [.. book.Sheets.Where(s => s.Speaks(code.Game)).OrderBy(s => s.Group, StringComparer.Ordinal).ThenBy(s => s.Name, StringComparer.Ordinal)];
        var questions = new IReadOnlyList<Question>[sheets.Count];
        var faults = new List<Finding>[sheets.Count];
        Parallel.For(0, sheets.Count, i =>
        {
            (questions[i], faults[i]) = ([], []);
            if (Table(book, sheets[i], code, faults[i]) is { } table) questions[i] = [.. Of(table, phrases, answers, each).DistinctBy(q => q.Id)];
        });
        findings.AddRange(faults.SelectMany(f => f));
        return new(code, [.. questions.SelectMany(q => q)]);
    }

    internal static IEnumerable<Question> Of(Table table, PhraseBook phrases, Answers answers, int each)
    {
        var maker = new QuestionMaker(table, phrases, answers);
        foreach (var decision in table.Sheet.Bound.OwnDecisions)
            foreach (var entry in table.Sheet.Entries[decision.Index - table.Sheet.FactCount].Where(e => table.Fired[e.Clause]))
                foreach (var question in maker.Of(entry, each)) yield return question;
    }

    internal static Table? Table(Codebook book, Sheet sheet, Code code, List<Finding> findings)
    {
        if (book.Bind(sheet, code.Stack, findings) is not { } bound || CodeSheet.Of(bound, code, findings) is not { } under) return null;
        var table = Rules.Codes.Table.Of(under);
        if (table.Faults.Count == 0 && !table.TooEntangled) return table;
        findings.Add(new(FindingKind.Gap, sheet.File, 0, $"has gaps or conflicts under {code.Address} and gives no questions"));
        return null;
    }
}
