using System.Numerics;
using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>Says a space of cases in the sheet's own words, leaving out what is free.</summary>
public static class Wording
{
    /// <summary>"departure is before release; pitch is not hit", or "always".</summary>
    public static string Say(CodeSheet sheet, ulong[] space)
    {
        var parts = new List<string>();
        for (var t = 0; t < space.Length; t++)
            if ((space[t] & sheet.Domain[t]) != sheet.Domain[t]) parts.Add(One(sheet.Terms[t], space[t] & sheet.Domain[t], sheet.Domain[t]));
        return parts.Count == 0 ? "always" : string.Join("; ", parts);
    }

    /// <summary>The shortest way to name some values of one term.</summary>
    public static string One(BoundTerm term, ulong mask, ulong domain)
    {
        var values = Names(term, mask);
        var rest = Names(term, domain & ~mask);
        if (values.Count == 1) return $"{term.Name} is {values[0]}";
        if (term.Term.Ordered && Run(mask))
        {
            var (first, last) = (BitOperations.TrailingZeroCount(mask), 63 - BitOperations.LeadingZeroCount(mask));
            var (low, high) = (BitOperations.TrailingZeroCount(domain), 63 - BitOperations.LeadingZeroCount(domain));
            if (first == low) return $"{term.Name} is at most {term.Values[last]}";
            if (last == high) return $"{term.Name} is at least {term.Values[first]}";
        }
        return rest.Count < values.Count ? $"{term.Name} is not {Words.Or(rest)}" : $"{term.Name} is {Words.Or(values)}";
    }

    private static bool Run(ulong mask) => BitOperations.PopCount(mask) == 64 - BitOperations.LeadingZeroCount(mask) - BitOperations.TrailingZeroCount(mask);

    private static List<string> Names(BoundTerm term, ulong mask)
    {
        var names = new List<string>();
        for (var v = 0; v < term.Values.Count; v++) if ((mask >> v & 1) != 0) names.Add(term.Values[v]);
        return names;
    }

    /// <summary>Frees every term that can be freed while <paramref name="still"/> remains true: the fewest words that say it.</summary>
    public static ulong[] Widen(CodeSheet sheet, ulong[] space, Func<ulong[], bool> still)
    {
        var wide = (ulong[])space.Clone();
        for (var t = wide.Length - 1; t >= 0; t--)
        {
            if (wide[t] == sheet.Domain[t]) continue;
            var kept = wide[t];
            wide[t] = sheet.Domain[t];
            if (still(wide)) continue;
            wide[t] = kept;
            for (var v = 0; v < sheet.Terms[t].Values.Count; v++)
            {
                var bit = 1UL << v & sheet.Domain[t];
                if (bit == 0 || (wide[t] & bit) != 0) continue;
                wide[t] |= bit;
                if (!still(wide)) wide[t] &= ~bit;
            }
        }
        return wide;
    }
}
