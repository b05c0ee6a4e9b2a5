using System.Numerics;
using Umpirage.Rules.Codes;

namespace Umpirage.District.Clinic;

/// <summary>Finds, for every line of a sheet's crossover, a play that shows it, and leaves out of it what does not matter under either code.</summary>
internal sealed class ContrastMaker(Table here, Table there, PhraseBook phrases)
{
    private const int PlaysTried = 300, RulePlaysTried = 12, MostTurns = 3, AnnouncedWorth = 3;

    private readonly CodeSheet sheet = here.Sheet;
    private readonly Teller teller = new(here.Sheet, phrases, there.Sheet);
    // decisions of the second code in the order of the first: a layer's exceptions may have moved one
    private readonly int[] place = [.. here.Sheet.Bound.Decisions.Select(d => there.Sheet.Bound.Find(d.Name)!.Index - there.Sheet.FactCount)];

    /// <summary>
    /// The contrasts that together show every line that a play can show. A line may hang on an earlier decision that only one code ever makes (a call of
    /// "balk"): no play can be ruled so under both, and it goes to <paramref name="follows"/>.
    /// </summary>
    public IReadOnlyList<Contrast> Of(IReadOnlyList<RulingDifference> lines, List<Follow> follows)
    {
        var (left, made) = (lines.ToList(), new List<Contrast>());
        while (left.Count > 0)
        {
            // one play that shows as many lines as it can, so that nobody sees nearly the same play twice
            if (Show(left[0], left) is not { } contrast)
            {
                follows.Add(new(sheet.Bound.Sheet.Name, sheet.Bound.Sheet.Group, left[0]));
                left.RemoveAt(0);
                continue;
            }
            left.RemoveAll(contrast.Lines.Contains);
            // two lines may be shown by what is the same play once everything that does not matter is left out
            var same = made.FindIndex(m => m.Situation == contrast.Situation && m.Turns.Select(Ruled).SequenceEqual(contrast.Turns.Select(Ruled)));
            if (same < 0) made.Add(contrast);
            else made[same] = made[same] with { Lines = [.. made[same].Lines, .. contrast.Lines] };
        }
        return made;
    }

    /// <summary>
    /// Pairs of one code, where both tables are one: for each rule a play it decides, beside the play that another fact turns. A rule that is
    /// <paramref name="shown"/> already, or that no single fact turns, gives none.
    /// </summary>
    public IReadOnlyList<Contrast> OfRules(IEnumerable<Contrast> shown)
    {
        var (made, rules) = (new List<Contrast>(), shown.SelectMany(Rules).ToHashSet());
        foreach (var entry in sheet.Bound.OwnDecisions.SelectMany(d => sheet.Entries[d.Index - sheet.FactCount]).Where(e => here.Fired[e.Clause]))
        {
            var d = entry.Decision - sheet.FactCount;
            if (rules.Contains((sheet.Terms[entry.Decision].Name, sheet.Bound.Clauses[entry.Clause].Id))) continue;
            // of a few plays the plainest that a single fact turns
            var pair = here.Cells.Where(c => c.Clauses[d] == entry.Clause && c.Values[d] == entry.Value).Take(RulePlaysTried).Select(c => Of(c, d)).Where(c => c.Twin is not null).MinBy(c => c.Given.Count);
            if (pair is null) continue;
            made.Add(pair);
            rules.UnionWith(Rules(pair));
        }
        return made;
    }

    private Contrast Of(Cell cell, int decision)
    {
        var facts = Both(cell, cell, sheet.Domain)!;
        List<int> turning = [decision];
        return Made("", [], turning, facts, Matter(facts, turning, cell, cell));
    }

    private static IEnumerable<(string Decision, string Rule)> Rules(Contrast contrast) =>
        contrast.Turns.Concat(contrast.Twin?.Turns ?? []).Select(t => (t.Decision, t.ThereBy.Rule));

    private static (string, string, string) Ruled(Turn turn) => (turn.Decision, turn.Here, turn.There);

    private Contrast? Show(RulingDifference line, List<RulingDifference> left)
    {
        (int[] Facts, List<int> Kept, List<RulingDifference> Shown, List<int> Turning, int Score)? best = null;
        var tried = 0;
        foreach (var one in here.Cells.Where(c => Within(c, line.Space, null)))
            foreach (var two in there.Cells.Where(c => Within(c, line.Space, place)))
            {
                if (!Turns(line, one, two) || Both(one, two, line.Space) is not { } facts) continue;
                if (tried++ > PlaysTried) goto done;
                List<RulingDifference> shown = [line];
                foreach (var other in left.Where(l => l != line && Turns(l, one, two) && Fits(facts, one, two, l.Space)))
                    if (shown.Select(s => s.Decision).Append(other.Decision).Distinct().Count() <= MostTurns) shown.Add(other);
                // a play in which something is announced otherwise says more than one in which only a reason differs
                List<int> turning = [.. shown.Select(Decision).Distinct()];
                var announced = Announced.Count(d => one.Values[d] != two.Values[place[d]]);
                turning.AddRange(Announced.Where(d => !turning.Contains(d) && one.Values[d] != two.Values[place[d]]).Take(Math.Max(0, MostTurns - turning.Count)));
                var score = shown.Count + (announced > 0 ? AnnouncedWorth : 0);
                if (best is { } b && score < b.Score) continue;
                var kept = Matter(facts, turning, one, two);
                if (best is null || score > best.Value.Score || kept.Count < best.Value.Kept.Count) best = (facts, kept, shown, turning, score);
            }
        done:
        return best is { } found ? Made(line.When, found.Shown, found.Turning, found.Facts, found.Kept) : null;
    }

    private IEnumerable<int> Announced => sheet.Bound.Announced.Select(a => a.Index - sheet.FactCount);

    private int Decision(RulingDifference line) => sheet.Bound.Find(line.Decision)!.Index - sheet.FactCount;

    private bool Turns(RulingDifference line, Cell one, Cell two)
    {
        var d = Decision(line);
        var values = sheet.Terms[sheet.FactCount + d];
        return values.Values[one.Values[d]] == line.Here && values.Values[two.Values[place[d]]] == line.There;
    }

    private bool Fits(int[] facts, Cell one, Cell two, ulong[] space)
    {
        for (var t = 0; t < facts.Length; t++) if ((space[t] >> facts[t] & 1) == 0) return false;
        for (var d = 0; d < one.Values.Length; d++) if ((space[sheet.FactCount + d] >> one.Values[d] & space[sheet.FactCount + d] >> two.Values[place[d]] & 1) == 0) return false;
        return true;
    }

    private bool Within(Cell cell, ulong[] space, int[]? moved)
    {
        for (var t = 0; t < sheet.FactCount; t++) if ((cell.Facts[t] & space[t]) == 0) return false;
        for (var d = 0; d < cell.Values.Length; d++) if ((space[sheet.FactCount + d] >> cell.Values[moved is null ? d : moved[d]] & 1) == 0) return false;
        return true;
    }

    private int[]? Both(Cell one, Cell two, ulong[] space)
    {
        var facts = new int[sheet.FactCount];
        for (var t = 0; t < facts.Length; t++)
        {
            var mask = one.Facts[t] & two.Facts[t] & space[t];
            if (mask == 0) return null;
            var usual = sheet.Terms[t].Term.Usually is { } u ? sheet.Terms[t].ValueIndex(u) : -1;
            facts[t] = usual >= 0 && (mask >> usual & 1) != 0 ? usual : BitOperations.TrailingZeroCount(mask);
        }
        return facts;
    }

    private List<int> Matter(int[] facts, List<int> turning, Cell one, Cell two)
    {
        var known = facts.Select(f => 1UL << f).ToArray();
        for (var t = facts.Length - 1; t >= 0; t--)
        {
            known[t] = sheet.Domain[t] & there.Sheet.Domain[t];
            if (Still(here, known, turning, one, d => d) && Still(there, known, turning, two, d => place[d])) continue;
            known[t] = 1UL << facts[t];
        }
        return [.. Enumerable.Range(0, facts.Length).Where(t => known[t] == 1UL << facts[t])];
    }

    /// <summary>Whether all that fits what is known is ruled like one case; in a pair of one code by the same rules too, for there the rule is what is taught.</summary>
    private bool Still(Table table, ulong[] known, List<int> turning, Cell like, Func<int, int> at)
    {
        foreach (var cell in table.Cells)
        {
            var fits = true;
            for (var t = 0; t < known.Length && fits; t++) fits = (cell.Facts[t] & known[t]) != 0;
            if (!fits) continue;
            foreach (var d in turning) if (cell.Values[at(d)] != like.Values[at(d)] || (here == there && cell.Clauses[at(d)] != like.Clauses[at(d)])) return false;
        }
        return true;
    }

    private Contrast Made(string when, List<RulingDifference> lines, List<int> turning, int[] facts, List<int> kept)
    {
        var told = kept.Union(teller.Leads).Order().ToList();
        List<string> given = [.. told.Select(t => teller.Given(t, facts[t]))];
        return new(Stamp.Of($"{sheet.Bound.Sheet.Name}|{string.Join('|', lines.Count > 0 ? lines.Select(l => l.Decision) : turning.Select(d => sheet.Terms[sheet.FactCount + d].Name))}|{string.Join('|', given)}"), sheet.Bound.Sheet.Name, sheet.Bound.Sheet.Group, sheet.Bound.Sheet.About, when,
            teller.Tell(told, facts), given, Turned(turning, here.At(facts)!, there.At(facts)!), Twin(facts, kept, told, turning), lines, phrases.Caution(sheet.Bound.Sheet.Group));
    }

    private List<Turn> Turned(List<int> turning, Cell one, Cell two) =>
    [
        .. turning.Select(d =>
        {
            var term = sheet.Terms[sheet.FactCount + d];
            return new Turn(term.Name, phrases.Ask(sheet.Bound.Sheet.Name, term.Name), term.Values[one.Values[d]], term.Values[two.Values[place[d]]], By(here, one, d), By(there, two, place[d]));
        }),
    ];

    private static RuledBy By(Table table, Cell cell, int decision) =>
        RuledBy.Of(table.Sheet, table.Sheet.Bound.Clauses[cell.Clauses[decision]], table.Sheet.FactCount + decision);

    /// <summary>
    /// One fact changed that turns the ruling; best when it matters only in the code to be learnt, then when both codes agree afterwards, and
    /// better when it is not what the play is about. What is not told
    /// may not matter in the second play either.
    /// </summary>
    private Twin? Twin(int[] facts, List<int> kept, List<int> told, List<int> turning)
    {
        var (first, then) = (here.At(facts)!, there.At(facts)!);
        // a slide shows so many of them: what differs has to be among these
        var shown = turning.Take(PlayRows.TurnsInARow).ToList();
        (Twin Twin, int Score)? best = null;
        foreach (var fact in kept)
            for (var v = 0; v < sheet.Terms[fact].Values.Count; v++)
            {
                if (v == facts[fact] || (sheet.Domain[fact] & there.Sheet.Domain[fact] & 1UL << v) == 0) continue;
                var other = (int[])facts.Clone();
                other[fact] = v;
                if (here.At(other) is not { } one || there.At(other) is not { } two || teller.Given(fact, v) == teller.Given(fact, facts[fact])) continue;
                var (known, learnt) = (Turns(shown, first, one, d => d), Turns(shown, then, two, d => place[d]));
                if (known + learnt == 0) continue;
                var space = Enumerable.Range(0, facts.Length).Select(t => told.Contains(t) ? 1UL << other[t] : sheet.Domain[t] & there.Sheet.Domain[t]).ToArray();
                if (!Still(here, space, turning, one, d => d) || !Still(there, space, turning, two, d => place[d])) continue;
                var alike = turning.TrueForAll(d => one.Values[d] == two.Values[place[d]]);
                var score = (learnt > 0 ? 4 : 0) + (known == 0 ? 2 : 0) + (alike ? 3 : 0) - (teller.Leads.Contains(fact) ? 3 : 0);
                if (best is { } b && score <= b.Score) continue;
                best = (new(teller.Sentence(fact, facts[fact]), teller.Sentence(fact, v), [.. told.Select(t => teller.Given(t, other[t]))], Turned(turning, one, two)), score);
            }
        return best?.Twin;
    }

    private static int Turns(List<int> turning, Cell before, Cell after, Func<int, int> at) => turning.Count(d => before.Values[at(d)] != after.Values[at(d)]);
}
