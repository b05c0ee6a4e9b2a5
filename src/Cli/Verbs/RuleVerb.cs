using Umpirage.Rules.Calls;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Cli.Verbs;

internal static class RuleVerb
{
    public static int Run(Request request)
    {
        if (request.Words.Count == 0) { Console.Error.WriteLine("name a .play file; codes/GUIDE.md shows one"); return Verb.Unusable; }
        var file = request.Words[0];
        if (!File.Exists(file)) { Console.Error.WriteLine($"there is no file '{file}'"); return Verb.Unusable; }
        var findings = new List<Finding>();
        var play = PlayReader.Read(file, File.ReadAllText(file), findings);
        var code = request.Words.Count > 1 ? request.Words[1] : play.Code;
        var book = Library.Codes(request, [play.Sheet], code);
        findings.AddRange(book.Findings);
        var ruling = Casebook.Rule(book, play, request.Today, findings, code);
        if (ruling is null || findings.Count > 0)
        {
            foreach (var finding in findings) Console.Error.WriteLine(finding);
            return Verb.Unusable;
        }
        var endings = OnTheField.Of(play, ruling, findings);
        foreach (var finding in findings) Console.Error.WriteLine(finding);
        if (findings.Count > 0) return Verb.Unusable;
        var answer = Answer.Of(ruling, Elsewhere.Of(book, play, ruling, request.Today), Told(endings));
        if (request.Json) Json.Write(answer);
        else Console.Write(answer.Text(play.Assumed == "" ? play.Situation : $"{play.Situation}\n(Assumed: {play.Assumed})"));
        return ruling.IsRuled ? Verb.Fine : Verb.No;
    }

    /// <summary>Nothing when there is no choice and no game: the ruling has been told already.</summary>
    internal static IReadOnlyList<string> Told(IReadOnlyList<Ending> endings)
    {
        if (endings.Count == 0 || endings is [{ Choice: null, After: null }]) return [];
        if (endings is [{ Choice: null, After: { } after }]) return [after.InWords];
        var apart = endings[0].Ruling.Announced.Select(d => d.Term.Name)
            .Where(n => endings.Select(e => string.Join(",", e.Ruling.Find(n)!.Values)).Distinct().Count() > 1).ToHashSet();
        return [.. endings.Select(e => $"the {e.Side} {e.Choice}: {string.Join("; ", e.Ruling.Announced.Where(d => apart.Contains(d.Term.Name)).Select(d => d.InWords))}{(e.After is null ? "" : $"; {e.After.InWords}")}")];
    }
}
