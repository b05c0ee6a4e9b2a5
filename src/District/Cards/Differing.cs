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

    /// <summary>Groups that have a card of their own.</summary>
    private static readonly string[] Elsewhere = ["equipment", "safety", "field"];

    private sealed record Other(string Name, Code Code, bool Today);

    public static IEnumerable<CardPart> Of(Making m)
    {
        var here = m.Code.Code;
        var others = Others(m).Where(o => o.Code.Address.ToString() != here.Address.ToString()).ToList();
        if (others.Count == 0) { yield return new CardPart.Line("Nothing is known to hold this game against: it is played as this division always plays.", Strong: true); yield break; }
        var found = new List<(bool Today, CardPart.Line Line)>();
        foreach (var spoken in m.Plan.Order)
            if (spoken.Say(here) is { } words && Against(spoken, here, others) is { } against) found.Add((against.Today, new(words, against.Words, Strong: true)));
        var listed = m.Plan.Order.Select(s => (s.Sheet, s.Parameter)).ToHashSet();
        foreach (var sheet in here.Book.Sheets.Where(s => s.Speaks(here.Game) && !Elsewhere.Contains(s.Group)).OrderBy(s => s.Name, StringComparer.Ordinal))
            foreach (var parameter in sheet.Parameters.Where(p => p.UsedBy is null && !listed.Contains((sheet.Name, p.Name))))
            {
                var plain = new Spoken(sheet.Name, parameter.Name, $"{Upper(sheet.Name)}, {parameter.Name}: {{value}}", new Dictionary<string, string>());
                if (Against(plain, here, others) is { } against) found.Add((against.Today, new(plain.Say(here)!, against.Words, Strong: true)));
            }
        if (found.Count == 0) { yield return new CardPart.Line($"Nothing: no value is other than {Words.Or([.. others.Select(o => o.Name)])}.", Strong: true); yield break; }
        // the sort keeps the order of consequence within each
        var sorted = found.OrderBy(f => f.Today ? 0 : 1).ToList();
        foreach (var (_, line) in sorted.Take(Most)) yield return line;
        var held = $"Held against {Words.And([.. others.Select(o => o.Name)])}.";
        yield return new CardPart.Line(sorted.Count > Most ? $"{sorted.Count - Most} smaller differences are left out. {held}" : held);
    }

    private static IEnumerable<Other> Others(Making m)
    {
        foreach (var (name, address) in m.Game.Benches) if (m.Codes.Of(address, m.Day, m.Findings) is { } own) yield return new(name, own.Code, true);
        var here = m.Code.Code;
        if (here.Stack.Count > 0)
        {
            var book = new CodeAddress(here.Game, here.Division, here.Body is { } body ? [new(body.Name, [])] : [], null);
            if (m.Codes.Of(book.ToString(), m.Day, m.Findings) is { } bare) yield return new("the book", bare.Code, true);
        }
        if (m.Game.Usual is var (usual, at) && m.Codes.Of(at, m.Day, m.Findings) is { } known) yield return new(usual, known.Code, false);
    }

    /// <summary>"Wrenfall: 110 min; the book: none" where another code says otherwise; null where none does.</summary>
    private static (string Words, bool Today)? Against(Spoken spoken, Code here, IReadOnlyList<Other> others)
    {
        var now = spoken.Value(here);
        var differing = others.Select(o => (Other: o, Value: spoken.Value(o.Code))).Where(o => o.Value is { } v && now is { } n && !Same(n, v)).ToList();
        if (differing.Count == 0) return null;
        return (string.Join("; ", differing.GroupBy(d => d.Value!.Value.Word).Select(g => $"{Words.And([.. g.Select(d => d.Other.Name)])}: {g.Key}")), differing.Any(d => d.Other.Today));
    }

    private static bool Same((string Word, Quantity? Quantity, string Layer) a, (string Word, Quantity? Quantity, string Layer) b) =>
        a.Quantity is { } x && b.Quantity is { } y ? x.Value.Equals(y.Value) : Words.Same(a.Word, b.Word);

    private static string Upper(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
