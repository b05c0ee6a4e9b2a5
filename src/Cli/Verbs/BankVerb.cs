using System.Diagnostics;
using Umpirage.District.Clinic;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Cli.Verbs;

/// <summary>Questions computed from the codes: how much they cover, or those of one code.</summary>
internal static class BankVerb
{
    public static int Run(Request request)
    {
        var book = Library.Codes(request);
        var findings = new List<Finding>(book.Findings);
        var phrases = PhraseReader.Read(Library.Phrases(request), book, findings);
        List<string> words = [.. request.Words.Where(w => w != "--coverage")];
        return request.Words.Contains("--coverage") ? Covered(request, book, phrases, findings) : Asked(request, book, phrases, findings, words);
    }

    private static int Covered(Request request, Rules.Codes.Codebook book, PhraseBook phrases, List<Finding> findings)
    {
        findings.AddRange(PhraseReader.Missing(phrases, book));
        var watch = Stopwatch.StartNew();
        var games = Coverage.Of(book, phrases, findings);
        var seconds = watch.Elapsed.TotalSeconds;
        if (request.Json) Json.Write(new { games, findings = findings.Select(f => f.ToString()), seconds });
        else
        {
            foreach (var finding in findings) Console.Error.WriteLine(finding);
            foreach (var game in games)
            {
                foreach (var missed in game.Missed) Console.WriteLine($"  {game.Game} asks nothing about {missed}");
                Console.WriteLine(FormattableString.Invariant($"{game.Game}: {game.Exercised} of {game.Rules} rules and exceptions exercised ({100.0 * game.Exercised / Math.Max(1, game.Rules):0.##} %), {game.Questions} questions, {game.Distinct} of them different, over every division, body and edition"));
            }
            Console.WriteLine(FormattableString.Invariant($"each question ruled again from its text: {findings.Count} findings, {seconds:0.0} s"));
        }
        return findings.Count == 0 && games.All(g => g.Missed.Count == 0) ? Verb.Fine : Verb.No;
    }

    private static int Asked(Request request, Rules.Codes.Codebook book, PhraseBook phrases, List<Finding> findings, List<string> words)
    {
        var faults = new List<string>();
        var code = Casebook.Code(book, words.ElementAtOrDefault(0) ?? book.Roster.UsualCode(), request.Today, faults.Add);
        foreach (var fault in faults) Console.Error.WriteLine(fault);
        if (code is null) return Verb.Unusable;
        foreach (var name in words.Skip(1).Where(w => book.Sheet(w) is null))
        {
            Console.Error.WriteLine($"there is no sheet '{name}'; {Words.Offer(name, [.. book.Sheets.Select(s => s.Name)])}");
            return Verb.Unusable;
        }
        var bank = Bank.Of(book, phrases, code, findings);
        foreach (var finding in findings) Console.Error.WriteLine(finding);
        List<Question> questions = [.. bank.Questions.Where(q => words.Count < 2 || words.Skip(1).Contains(q.Sheet, StringComparer.OrdinalIgnoreCase))];
        if (request.Json) { Json.Write(questions); return Verb.Fine; }
        foreach (var question in questions)
        {
            Console.WriteLine($"{question.Id}  {question.Sheet}\n  {question.Situation}\n  {question.Ask}");
            foreach (var (choice, i) in question.Choices.Select((c, i) => (c, i))) Console.WriteLine($"    {(char)('a' + i)}  {choice.Text}{(choice.Right ? "   <- right" : choice.Had is null ? "" : $"   (had it been so: {choice.Had})")}");
            Console.WriteLine($"  {question.Title} [{question.Rule}]; {question.Source}{(question.Reason is null ? "" : $"\n  {question.Reason}")}{(question.Caution is null ? "" : $"\n  {question.Caution}")}\n");
        }
        Console.WriteLine($"{questions.Count} questions, {code.Address}");
        return findings.Count == 0 ? Verb.Fine : Verb.No;
    }
}
