using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>How much of one game's rules the questions exercise: rules and exceptions that decide anything under any division, body or edition, and those asked about.</summary>
public sealed record GameCoverage(string Game, int Codes, int Rules, int Exercised, IReadOnlyList<string> Missed, int Questions, int Distinct);

/// <summary>
/// Makes the questions of every sheet under every division, body and edition, proves each one, and counts what they exercise. Codes in which a sheet's
/// values are the same are asked once.
/// </summary>
public static class Coverage
{
    /// <summary>Counts both games; every question that cannot be proved is a finding.</summary>
    public static IReadOnlyList<GameCoverage> Of(Codebook book, PhraseBook phrases, List<Finding> findings, int each = 1)
    {
        var answers = new Answers(book);
        List<Sheet> sheets = [.. book.Sheets.OrderBy(s => s.Name, StringComparer.Ordinal)];
        var done = new SheetCount[sheets.Count];
        Parallel.For(0, sheets.Count, i => done[i] = One(book, phrases, answers, sheets[i], each));
        findings.AddRange(done.SelectMany(d => d.Findings));
        return
        [
            .. book.Roster.Games.Select(game =>
            {
                var mine = done.SelectMany(d => d.Games).Where(g => g.Game == game).ToList();
                List<string> missed = [.. mine.SelectMany(m => m.Rules.Except(m.Asked).Select(r => $"{m.Sheet}: {r}"))];
                return new GameCoverage(game, mine.Sum(m => m.Codes), mine.Sum(m => m.Rules.Count), mine.Sum(m => m.Rules.Count) - missed.Count, missed, mine.Sum(m => m.Questions), mine.Sum(m => m.Ids.Count));
            }),
        ];
    }

    private sealed record Counted(string Sheet, string Game, int Codes, HashSet<string> Rules, HashSet<string> Asked, int Questions, HashSet<string> Ids);

    private sealed record SheetCount(List<Counted> Games, List<Finding> Findings);

    private static SheetCount One(Codebook book, PhraseBook phrases, Answers answers, Sheet sheet, int each)
    {
        var (games, findings) = (new List<Counted>(), new List<Finding>());
        foreach (var codes in Checker.Codes(book, sheet).Where(c => c.Stack.Count == 0).GroupBy(c => c.Game))
        {
            var seen = new HashSet<string>();
            var (rules, asked, ids, questions) = (new HashSet<string>(), new HashSet<string>(), new HashSet<string>(), 0);
            foreach (var code in codes)
            {
                if (book.Bind(sheet, [], findings) is not { } bound || !seen.Add(string.Join('\n', bound.Parameters.Select(p => code.Value(p)?.Value)))) continue;
                if (Bank.Table(book, sheet, code, findings) is not { } table) continue;
                foreach (var clause in bound.Clauses.Where(c => table.Fired[c.Index] && c.Sheet == sheet.Name)) rules.Add(clause.Id);
                foreach (var question in Bank.Of(table, phrases, answers, each))
                {
                    questions++;
                    ids.Add($"{question.Rule}|{question.Ask}|{question.Situation}|{question.Answer}");
                    var faults = Proof.Faults(table, question);
                    if (faults.Count == 0) asked.Add(question.Rule);
                    findings.AddRange(faults.Select(f => new Finding(FindingKind.Conflict, sheet.File, 0, $"a question of {code.Address} cannot be asked: {f}")));
                }
            }
            games.Add(new(sheet.Name, codes.Key, seen.Count, rules, asked, questions, ids));
        }
        return new(games, findings);
    }
}
