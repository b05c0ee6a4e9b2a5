using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Plays;

/// <summary>One step of a because-chain: what was decided, by which rule, on which conditions, from which source and layer.</summary>
public sealed record Step(string Decision, string Value, string Rule, string Title, string? Reason, string? Do, IReadOnlyList<string> Since, Citation Source, Provenance? Taken);

/// <summary>Tells why a ruling is what it is, in the order in which it was decided.</summary>
public static class Because
{
    /// <summary>The chain for a play that is ruled; earlier decisions are told only when something later hangs on them or they are the sheet's own.</summary>
    public static IReadOnlyList<Step> Of(Ruling ruling)
    {
        if (!ruling.IsPossible) return [];
        var sheet = ruling.Table.Sheet;
        var steps = new List<Step>();
        foreach (var decided in ruling.Decisions.Where(d => d.Values.Count == 1 && d.By.Count > 0))
        {
            var clause = decided.By[0];
            var parent = clause.Parent >= 0 ? sheet.Bound.Clauses[clause.Parent] : null;
            var since = new List<string>();
            for (var t = 0; t < sheet.Terms.Count; t++)
            {
                if (!clause.When.Any(c => c.Term == t) && parent?.When.Any(c => c.Term == t) != true) continue;
                var known = ruling.Known(t);
                if (known != sheet.Domain[t]) since.Add(Wording.One(sheet.Terms[t], known, sheet.Domain[t]));
            }
            var setting = clause.Then.First(s => s.Decision == decided.Term.Index);
            var taken = setting.Value.Parameter is { } parameter ? sheet.Values[parameter] : null;
            steps.Add(new(decided.Term.Name, decided.Values[0], clause.Id, Fill(sheet, clause.Clause.Title), clause.Clause.Reason is { } r ? Fill(sheet, r) : null, clause.Clause.Do is { } act ? Fill(sheet, act) : null,
                since, sheet.Code.Cite(clause.Clause), taken));
        }
        return steps;
    }

    /// <summary>Puts the code's own values in the place of [parameters] in a title.</summary>
    public static string Fill(CodeSheet sheet, string text)
    {
        foreach (var (parameter, value) in sheet.Values)
            text = text.Replace($"[{parameter.Name}]", value.Value, StringComparison.OrdinalIgnoreCase);
        return text;
    }

    /// <summary>Sources the ruling leans on that nobody has checked against a book.</summary>
    public static IReadOnlyList<string> Unverified(IEnumerable<Step> steps) =>
        [.. steps.SelectMany(s => new[] { s.Source, s.Taken?.Citation }).OfType<Citation>().Where(c => !c.Verified).Select(c => c.ToString()).Distinct()];
}
