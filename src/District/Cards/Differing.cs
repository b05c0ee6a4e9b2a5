using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Cards;

/// <summary>
/// What differs today: the governing code held against the leagues' own codes, the book without local options, and the code the crew is used to. What
/// is special to this game comes first, then what is other than usual; within each by the consequence that the plan states.
/// </summary>
internal static class Differing
{
    /// <summary>More than these nobody says at the plate.</summary>
    private const int Most = 8;

    /// <summary>With so many the codes that the crew is used to are left out of it.</summary>
    private const int Enough = 6;

    private sealed record Other(string Name, Code Code, bool Today);

    public static IEnumerable<CardPart> Of(Making m)
    {
        var here = m.Code.Code;
        var others = Today(m).ToList();
        var lines = Lines(m, others).ToList();
        foreach (var (name, address) in m.Game.Usual)
        {
            if (lines.Count >= Enough || m.Codes.Of(address, m.Day, m.Findings) is not { } known) continue;
            others.Add(new(name, known.Code, false));
            lines = [.. Lines(m, others)];
        }
        others.RemoveAll(o => o.Code.Address.ToString() == here.Address.ToString());
        if (lines.Count == 0) { yield return new CardPart.Line(others.Count == 0 ? "Nothing is known to hold this game against." : $"Nothing: no value is other than {Words.Or([.. others.Select(o => o.Name)])}.", Strong: true); yield break; }
        // the sort keeps the order of consequence within each
        foreach (var (_, line) in lines.OrderBy(l => l.Today ? 0 : 1).Take(Most)) yield return line;
        yield return new CardPart.Line($"Held against {Words.And([.. others.Select(o => o.Name)])}{(lines.Count > Most ? $"; {lines.Count - Most} smaller ones are left out" : "")}.");
    }

    private static IEnumerable<(bool Today, CardPart.Line Line)> Lines(Making m, IReadOnlyList<Other> others)
    {
        foreach (var spoken in m.Plan.Order)
            if (spoken.Say(m.Code.Code) is { } words && Against(spoken, m.Code.Code, others) is { } against) yield return (against.Today, new(words, against.Words, Strong: true));
    }

    /// <summary>Both leagues' own codes where two leagues meet, and the book without local options.</summary>
    private static IEnumerable<Other> Today(Making m)
    {
        foreach (var (name, address) in m.Game.Benches) if (m.Codes.Of(address, m.Day, m.Findings) is { } own) yield return new(name, own.Code, true);
        var here = m.Code.Code;
        if (here.Stack.Count == 0) yield break;
        var book = new CodeAddress(here.Game, here.Division, here.Body is { } body ? [new(body.Name, [])] : [], null);
        if (m.Codes.Of(book.ToString(), m.Day, m.Findings) is { } bare) yield return new("the book", bare.Code, true);
    }

    /// <summary>"Wrenfall: 110 min; the book: none" where another code says otherwise; null where none does.</summary>
    private static (string Words, bool Today)? Against(Spoken spoken, Code here, IReadOnlyList<Other> others)
    {
        var now = spoken.Value(here);
        var differing = others.Select(o => (Other: o, Value: spoken.Value(o.Code))).Where(o => o.Value is { } v && now is { } n && !Same(n, v)).ToList();
        if (differing.Count == 0) return null;
        return (string.Join("; ", differing.GroupBy(d => d.Value!.Value.Word).Select(g => $"{Words.And([.. g.Select(d => d.Other.Name)])}: {Theirs(spoken, here, g.First().Other.Code)}")), differing.Any(d => d.Other.Today));
    }

    /// <summary>The other code's value; a bare yes or no is put in the plan's words, without those that both begin with.</summary>
    private static string Theirs(Spoken spoken, Code here, Code other)
    {
        var value = spoken.Value(other)!.Value.Word;
        if (value is not ("yes" or "no") || spoken.Say(other) is not { } said) return value;
        var begun = said[..(said.IndexOf(": ", StringComparison.Ordinal) is >= 0 and var colon ? colon + 2 : 0)];
        return begun != "" && spoken.Say(here)!.StartsWith(begun, StringComparison.Ordinal) ? said[begun.Length..] : char.IsUpper(said[1]) ? said : char.ToLowerInvariant(said[0]) + said[1..];
    }

    private static bool Same((string Word, Quantity? Quantity, string Layer) a, (string Word, Quantity? Quantity, string Layer) b) =>
        a.Quantity is { } x && b.Quantity is { } y ? x.Value.Equals(y.Value) : Words.Same(a.Word, b.Word);
}
