using System.Runtime.CompilerServices;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Mechanics;

/// <summary>
/// Draws cards from the manuals, which are written as sheets of their own (codes/mechanics): proved complete and without contradiction like the rules, each
/// manual where a rule body stands. The words at a decision's end tell what it is: "starts", "moves", "sign"; one that names an umpire is that umpire's.
/// </summary>
public static class Cards
{
    private const int MostTables = 100;

    /// <summary>What was worked out for a set of manuals, kept as long as they are.</summary>
    private static readonly ConditionalWeakTable<Codebook, WorkedOut<(string Crew, string Address, DateOnly Day), Table>> Worked = [];

    private const string Caught = "fly caught in the outfield", Through = "hit through to the outfield";

    /// <summary>The card for a state and a play, facts given as "runners is first and second"; null, with every reason, when it cannot be.</summary>
    /// <param name="feet">Feet from base to base, by the code under which the game is played.</param>
    public static Card? Of(Codebook manuals, Spots spots, string crew, CodeAddress address, IReadOnlyList<string> given, double feet, DateOnly today, List<Finding> findings)
    {
        var before = findings.Count;
        if (manuals.Sheet(crew) is not { } sheet) { findings.Add(new(FindingKind.UnknownWord, "mechanics", 0, $"there is no crew '{crew}'; {Words.Offer(crew, [.. manuals.Sheets.Select(s => s.Name)])}")); return null; }
        if (Table(manuals, sheet, address, today, findings) is not { } table || Facts(table, given, findings) is not { } facts || findings.Count > before) return null;
        if (table.At(facts) is not { } cell) { findings.Add(new(FindingKind.ImpossiblePlay, "mechanics", 0, $"this cannot be: {string.Join("; ", given)}")); return null; }
        var values = Values(table, cell);
        var others = new List<(string, IReadOnlyList<Variation>)>();
        foreach (var body in manuals.Roster.Bodies.Where(b => b.Game == address.Game && table.Sheet.Code.Body?.Name != b.Name))
            if (Table(manuals, sheet, address with { Layers = [new(body.Name, [])] }, today, findings) is { } other && other.At(facts) is { } line)
                others.Add((body.Title, Differ(values, Values(other, line))));
        var sources = cell.Clauses.Select(c => table.Sheet.Bound.Clauses[c]).Select(c => table.Sheet.Code.Cite(c.Clause).ToString()).Distinct().ToList();
        return new(crew, table.Sheet.Code.Address.ToString(), table.Sheet.Code.Body?.Title ?? $"{address.Game} at large", given,
            [.. values.Where(v => v.Name.EndsWith(" sign", StringComparison.Ordinal) && v.Value != "not given").Select(v => v.Name[..^5] + " possible")],
            Standings(spots, feet, table, values), Workers(values), Catch(table, facts, values), others, sources);
    }

    /// <summary>Every card of a manual: each state of the game with each play that can be in it.</summary>
    public static IEnumerable<IReadOnlyList<string>> States(Table table)
    {
        var sheet = table.Sheet;
        var facts = new int[sheet.FactCount];
        return Walk(0);

        IEnumerable<IReadOnlyList<string>> Walk(int t)
        {
            if (t == facts.Length)
            {
                if (table.At(facts) is not null) yield return [.. facts.Select((v, i) => $"{sheet.Terms[i].Name} is {sheet.Terms[i].Values[v]}")];
                yield break;
            }
            for (facts[t] = 0; facts[t] < sheet.Terms[t].Values.Count; facts[t]++)
                foreach (var state in Walk(t + 1)) yield return state;
        }
    }

    /// <summary>A crew's sheet worked out under a manual; null with the reasons.</summary>
    public static Table? Table(Codebook manuals, Sheet sheet, CodeAddress address, DateOnly today, List<Finding> findings) =>
        Worked.GetValue(manuals, book => new((key, found) => Under(book, book.Sheet(key.Crew)!, CodeAddress.Read(key.Address)!, key.Day, found), MostTables)).Of((sheet.Name, address.ToString(), today), findings);

    private static Table? Under(Codebook manuals, Sheet sheet, CodeAddress address, DateOnly today, List<Finding> findings)
    {
        var faults = new List<string>();
        var code = Code.Of(manuals, address, today, faults);
        findings.AddRange(faults.Select(f => new Finding(FindingKind.UnknownWord, "mechanics", 0, f)));
        return code is not null && manuals.Bind(sheet, code.Stack, findings) is { } bound && CodeSheet.Of(bound, code, findings) is { } under ? Rules.Codes.Table.Of(under) : null;
    }

    private static int[]? Facts(Table table, IReadOnlyList<string> given, List<Finding> findings)
    {
        var sheet = table.Sheet;
        var facts = sheet.Bound.Facts.Select(f => f.Term.Usually is { } usual ? f.ValueIndex(usual) : -1).ToArray();
        foreach (var said in given)
        {
            var fact = sheet.Bound.Facts.FirstOrDefault(f => said.StartsWith(f.Name + " is ", StringComparison.OrdinalIgnoreCase));
            var value = fact?.ValueIndex(said[(fact.Name.Length + 4)..].Trim()) ?? -1;
            if (fact is null || value < 0) findings.Add(new(FindingKind.UnknownWord, "mechanics", 0, $"'{said}' is no fact of '{sheet.Bound.Sheet.Name}' with one of its values; {Words.Offer(said, [.. sheet.Bound.Facts.SelectMany(f => f.Values.Select(v => $"{f.Name} is {v}"))])}"));
            else facts[fact.Index] = value;
        }
        foreach (var open in sheet.Bound.Facts.Where(f => facts[f.Index] < 0)) findings.Add(new(FindingKind.BlankCell, "mechanics", 0, $"'{open.Name}' was not said; it may be {Words.Or(open.Values)}"));
        return facts.Any(f => f < 0) ? null : facts;
    }

    private static List<(string Name, string Value)> Values(Table table, Cell cell) => [.. table.Sheet.Bound.Sheet.Decisions.Select(d => table.Sheet.Bound.Find(d.Name)!).Select(t => (t.Name, t.Values[cell.Values[t.Index - table.Sheet.FactCount]]))];

    private static IReadOnlyList<Variation> Differ(List<(string Name, string Value)> here, List<(string Name, string Value)> there) =>
        [.. here.Zip(there).Where(p => p.First.Value != p.Second.Value).Select(p => new Variation(p.First.Name, p.First.Value, p.Second.Value))];

    private static IReadOnlyList<Variation> Catch(Table table, int[] facts, List<(string, string)> values)
    {
        var hit = table.Sheet.Bound.Find("hit");
        if (hit is null || facts[hit.Index] != hit.ValueIndex(Through)) return [];
        var caught = (int[])facts.Clone();
        caught[hit.Index] = hit.ValueIndex(Caught);
        return table.At(caught) is { } cell ? Differ(values, Values(table, cell)) : [];
    }

    private static IReadOnlyList<Standing> Standings(Spots spots, double feet, Table table, List<(string Name, string Value)> values) =>
    [
        new("plate umpire", "behind the plate", spots.Of("behind the plate", feet, table.Sheet)),
        .. values.Where(v => v.Name.EndsWith(" starts", StringComparison.Ordinal)).Select(v => new Standing(v.Name[..^7], v.Value, spots.Of(v.Value, feet, table.Sheet))),
    ];

    private static IReadOnlyList<Work> Workers(List<(string Name, string Value)> values)
    {
        var umpires = values.Where(v => v.Value.EndsWith(" umpire", StringComparison.Ordinal)).Select(v => v.Value)
            .Concat(values.Where(v => v.Name.EndsWith(" moves", StringComparison.Ordinal) || v.Name.EndsWith(" starts", StringComparison.Ordinal)).Select(v => v.Name[..v.Name.LastIndexOf(' ')]))
            .Distinct().OrderBy(u => u == "plate umpire" ? 1 : 0).ThenBy(u => u, StringComparer.Ordinal);
        return [.. umpires.Select(u => new Work(u, values.FirstOrDefault(v => v.Name == $"{u} moves").Value, [.. values.Where(v => v.Value == u).Select(v => v.Name)]))];
    }
}
