using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.Cli.Verbs;

internal static class CrossoverVerb
{
    public static int Run(Request request)
    {
        if (request.Words.Count < 2) { Console.Error.WriteLine("name two codes: ./umpirage crossover softball/12U baseball/12U [SHEET...]"); return Verb.Unusable; }
        var book = Library.Codes(request);
        var faults = new List<string>();
        var here = Casebook.Code(book, request.Words[0], request.Today, faults.Add);
        var there = Casebook.Code(book, request.Words[1], request.Today, faults.Add);
        if (here is null || there is null)
        {
            foreach (var fault in faults) Console.Error.WriteLine(fault);
            return Verb.Unusable;
        }
        var findings = new List<Finding>();
        var only = request.Words.Skip(2).ToList();
        var differences = Crossover.Of(book, here, there, findings).Where(d => only.Count == 0 || only.Contains(d.Sheet.Name)).ToList();
        foreach (var finding in findings) Console.Error.WriteLine(finding);
        if (request.Json)
            Json.Write(differences.Where(d => !d.Same).Select(d => new
            {
                sheet = d.Sheet.Name, group = d.Sheet.Group, onlyIn = d.OnlyIn,
                values = d.Values.Select(v => new { v.Name, here = v.Here.Value, there = v.There.Value }),
                rulings = d.Rulings.Select(r => new { r.Decision, r.When, r.Here, r.There }),
            }));
        else Console.Write(CrossoverView.Text(here, there, differences));
        return findings.Count == 0 ? Verb.Fine : Verb.No;
    }
}
