using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Plays;

/// <summary>
/// What happened in one play, moment by moment, in the order it happened. The facts a sheet asks about follow from it; a fact whose moments
/// were not told stays unknown. More moments never make a known fact unknown.
/// </summary>
public static class Timeline
{
    /// <summary>Narrows a situation by what the moments tell. Unknown moments, moments told twice and contradictions are findings, all at once.</summary>
    public static Situation Tell(Situation situation, string file, IReadOnlyList<Phrase> moments, List<Finding> findings)
    {
        var bound = situation.Sheet.Bound;
        var place = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        List<string> known = [.. bound.Moments.SelectMany(m => m.Alternatives)];
        for (var i = 0; i < moments.Count; i++)
        {
            var moment = moments[i].Text;
            void Fault(FindingKind kind, string message) => findings.Add(new(kind, file, moments[i].Line, message));
            if (!known.Contains(moment, StringComparer.OrdinalIgnoreCase)) Fault(FindingKind.UnknownWord, $"there is no moment '{moment}' in '{bound.Sheet.Name}'; {Words.Offer(moment, known)}");
            else if (!place.TryAdd(moment, i)) Fault(FindingKind.ImpossiblePlay, $"'{moment}' is told twice");
            else if (bound.Moments.FirstOrDefault(m => m.Alternatives.Contains(moment, StringComparer.OrdinalIgnoreCase))?.Alternatives
                         .FirstOrDefault(a => !Words.Same(a, moment) && place.ContainsKey(a)) is { } other)
                Fault(FindingKind.ImpossiblePlay, $"'{moment}' cannot be when '{other}'");
        }
        foreach (var fact in bound.Facts)
            foreach (var telling in fact.Term.ToldBy)
            {
                if (!InOrder(telling.InOrder, place)) continue;
                var value = 1UL << fact.ValueIndex(telling.Value);
                if ((situation.Known[fact.Index] & value) != 0) situation = situation.With(fact.Index, value);
                else
                    findings.Add(new(FindingKind.ImpossiblePlay, file, moments[place[telling.InOrder[^1]]].Line,
                        $"the moments tell that {fact.Name} is {telling.Value}, which {((situation.Sheet.Domain[fact.Index] & value) == 0 ? $"cannot be under {situation.Sheet.Code.Address}" : "contradicts what was said")}"));
            }
        return situation;
    }

    private static bool InOrder(IReadOnlyList<string> pattern, Dictionary<string, int> place)
    {
        var last = -1;
        foreach (var moment in pattern)
        {
            if (!place.TryGetValue(moment, out var at) || at < last) return false;
            last = at;
        }
        return true;
    }
}
