using Umpirage.Rules.Calls;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Cli.Verbs;

internal static class CasebookVerb
{
    public static int Run(Request request)
    {
        var folder = request.Words.Count > 0 ? request.Words[0] : request.Casebook;
        if (!Directory.Exists(folder)) { Console.Error.WriteLine($"there is no folder '{folder}'"); return Verb.Unusable; }
        var findings = new List<Finding>();
        var book = Library.Codes(request);
        var plays = Library.Plays(folder, findings);
        var outcomes = plays.Select(p => Held.Of(book, p, request.Today)).ToList();
        var notStated = Library.NotStated(folder);
        var ruled = outcomes.Count(o => o.AsPublished);
        var all = outcomes.Count + notStated.Count;
        if (request.Json)
            Json.Write(new { ruled, all, findings = findings.Select(f => f.ToString()), notStated, plays = outcomes.Select(o => new { id = o.Play.Id, standing = o.Play.Standing, asPublished = o.AsPublished, misses = o.Misses }) });
        else
        {
            foreach (var finding in findings) Console.WriteLine(finding);
            foreach (var outcome in outcomes.Where(o => !o.AsPublished))
                foreach (var miss in outcome.Misses) Console.WriteLine($"{outcome.Play.Id}: {miss}");
            foreach (var line in notStated) Console.WriteLine($"not stated: {line}");
            foreach (var group in outcomes.GroupBy(o => (o.Play.Collection, o.Play.Standing)).OrderBy(g => g.Key.Standing == "own").ThenBy(g => g.Key))
                Console.WriteLine($"{(group.Key.Collection == "" ? "" : $"{group.Key.Collection} later, ")}{Kind(group.Key.Standing)}: {group.Count(o => o.AsPublished)} of {group.Count()}");
            Console.WriteLine($"{ruled} of {all} ruled as published");
        }
        return findings.Count > 0 ? Verb.Unusable : ruled == all ? Verb.Fine : Verb.No;
    }

    private static string Kind(string standing) => standing switch
    {
        "source" => "published and undisputed", "disputed" => "published, disputed", "completed" => "completed from rule knowledge", _ => "our own, from published facts",
    };
}
