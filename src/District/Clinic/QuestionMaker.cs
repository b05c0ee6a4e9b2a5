using System.Numerics;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Clinic;

/// <summary>
/// Makes questions from one decision table: for a rule and what it decides, cases in which that very rule decides it, told with the facts that matter and
/// one or two that do not.
/// </summary>
internal sealed class QuestionMaker(Table table, PhraseBook phrases, Answers answers)
{
    private const int CasesTried = 10, FewestFacts = 2;

    private readonly CodeSheet sheet = table.Sheet;
    private readonly Teller teller = new(table.Sheet, phrases);
    private readonly ulong[] space = new ulong[table.Sheet.Terms.Count];

    /// <summary>Up to <paramref name="most"/> questions in which this entry decides; none when it decides in no possible case.</summary>
    public IEnumerable<Question> Of(Entry entry, int most)
    {
        var d = entry.Decision - sheet.FactCount;
        var cells = table.Cells.Where(c => c.Values[d] == entry.Value && Decides(entry, c, null)).ToList();
        var found = new List<(int[] Case, List<int> Kept, string Key)>();
        for (var i = 0; i < Math.Min(CasesTried, cells.Count); i++)
        {
            var cell = cells[(int)((long)i * cells.Count / Math.Min(CasesTried, cells.Count))];
            var facts = Concrete(cell, i);
            var kept = Matter(entry, facts);
            var key = string.Join(',', kept.Select(f => $"{f}={facts[f]}"));
            if (found.TrueForAll(f => f.Key != key)) found.Add((facts, kept, key));
        }
        return found.OrderBy(f => f.Kept.Count).Take(most).Select(f => Question(entry, f.Case, f.Kept));
    }

    /// <summary>Whether the entry gives the decision in the whole of a line, as far as it fits what is known.</summary>
    private bool Decides(Entry entry, Cell cell, ulong[]? known)
    {
        for (var t = 0; t < sheet.FactCount; t++) space[t] = known is null ? cell.Facts[t] : cell.Facts[t] & known[t];
        for (var i = 0; i < cell.Values.Length; i++) space[sheet.FactCount + i] = 1UL << cell.Values[i];
        return entry.Meets(space) == 2;
    }

    /// <summary>One case of a line: facts as they usually are where that is open, otherwise in turn.</summary>
    private int[] Concrete(Cell cell, int turn)
    {
        var facts = new int[sheet.FactCount];
        for (var t = 0; t < facts.Length; t++)
        {
            var mask = cell.Facts[t];
            var usual = sheet.Terms[t].Term.Usually is { } u ? sheet.Terms[t].ValueIndex(u) : -1;
            if (usual >= 0 && (mask >> usual & 1) != 0) { facts[t] = usual; continue; }
            for (var skip = (turn + t) % BitOperations.PopCount(mask); skip > 0; skip--) mask &= mask - 1;
            facts[t] = BitOperations.TrailingZeroCount(mask);
        }
        return facts;
    }

    /// <summary>The facts without which the rule would not decide: each one left out in turn, those that go without saying first.</summary>
    private List<int> Matter(Entry entry, int[] facts)
    {
        var known = facts.Select(f => 1UL << f).ToArray();
        var d = entry.Decision - sheet.FactCount;
        foreach (var t in Enumerable.Range(0, facts.Length).OrderBy(t => Usual(t, facts[t]) ? 0 : 1).ThenByDescending(t => t))
        {
            known[t] = sheet.Domain[t];
            if (table.Cells.All(c => !Fits(c, known) || (c.Values[d] == entry.Value && Decides(entry, c, known)))) continue;
            known[t] = 1UL << facts[t];
        }
        return [.. Enumerable.Range(0, facts.Length).Where(t => known[t] != sheet.Domain[t])];
    }

    private bool Usual(int fact, int value) => sheet.Terms[fact].Term.Usually is { } usual && sheet.Terms[fact].ValueIndex(usual) == value;

    private static bool Fits(Cell cell, ulong[] known)
    {
        for (var t = 0; t < known.Length; t++) if ((cell.Facts[t] & known[t]) == 0) return false;
        return true;
    }

    private Question Question(Entry entry, int[] facts, List<int> kept)
    {
        var clause = sheet.Bound.Clauses[entry.Clause];
        var decision = sheet.Terms[entry.Decision];
        var told = kept.Concat(Beside(facts, kept, entry)).Order().ToList();
        List<string> given = [.. told.Select(t => teller.Given(t, facts[t]))];
        var by = RuledBy.Of(sheet, clause, entry.Decision);
        var id = Stamp.Of($"{sheet.Code.Address with { Date = null }}|{sheet.Bound.Sheet.Name}|{decision.Name}|{string.Join('|', given)}");
        return new(id, sheet.Bound.Sheet.Name, sheet.Bound.Sheet.Group, sheet.Code.Address.ToString(), decision.Name, by.Rule, string.Join(' ', teller.Tell(told, facts)),
            given, phrases.Ask(sheet.Bound.Sheet.Name, decision.Name), Choices(entry, facts, kept, id), by.Title, by.Reason, by.Source, by.Verified, phrases.Caution(sheet.Bound.Sheet.Group));
    }

    /// <summary>One or two facts that do not matter, so that choosing what matters is part of the question; those that go without saying come last.</summary>
    private IEnumerable<int> Beside(int[] facts, List<int> kept, Entry entry)
    {
        List<int> leads = [.. teller.Leads.Except(kept)];
        // what can only be so under this code is no news
        var free = Enumerable.Range(0, facts.Length).Except(kept).Except(leads).Where(t => BitOperations.PopCount(sheet.Domain[t]) > 1)
            .OrderBy(t => Usual(t, facts[t]) ? 1 : 0).ThenBy(t => (t * 7 + entry.Clause * 3 + entry.Decision) % 11);
        return leads.Concat(free.Take(Math.Max(leads.Count > 0 ? 0 : 1, FewestFacts - kept.Count - leads.Count)));
    }

    /// <summary>The right answer among up to three wrong ones: first what a single other fact would have brought, then what else can come out.</summary>
    private List<Choice> Choices(Entry entry, int[] facts, List<int> kept, string id)
    {
        var decision = sheet.Terms[entry.Decision];
        var d = entry.Decision - sheet.FactCount;
        var wrong = new Dictionary<string, string?>(StringComparer.OrdinalIgnoreCase);
        foreach (var fact in kept)
        {
            var other = (int[])facts.Clone();
            for (var v = 0; v < sheet.Terms[fact].Values.Count; v++)
            {
                if (v == facts[fact] || (sheet.Domain[fact] >> v & 1) == 0) continue;
                other[fact] = v;
                if (table.At(other) is { } cell && cell.Values[d] != entry.Value) wrong.TryAdd(decision.Values[cell.Values[d]], teller.Sentence(fact, v));
            }
        }
        var right = decision.Values[entry.Value];
        var more = table.Cells.Select(c => decision.Values[c.Values[d]]).Distinct().Concat(decision.Values).Where(v => v != right).Distinct();
        foreach (var value in more.Concat(decision.Values.Count == 1 ? answers.Elsewhere(sheet.Bound.Sheet.Name, decision.Name, right, phrases) : []))
            if (wrong.Count < 3) wrong.TryAdd(value, null);
        var chosen = wrong.OrderBy(w => w.Value is null ? 1 : 0).Take(3).Select(w => new Choice(w.Key, false, w.Value)).Append(new(right, true, null));
        // in the sheet's own order, so that the place tells nothing; answers from elsewhere by the question's id
        return [.. chosen.OrderBy(c => decision.Values.Count == 1 ? string.CompareOrdinal(Stamp.Of(id + c.Text), id) : decision.ValueIndex(c.Text)).ThenBy(c => c.Text, StringComparer.Ordinal)];
    }
}
