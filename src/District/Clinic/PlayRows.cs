namespace Umpirage.District.Clinic;

/// <summary>Plays of one subject in a table: what all of them tell is said once, above them.</summary>
public sealed record PlayRows(string Sheet, IReadOnlyList<string> Common, IReadOnlyList<(Contrast Contrast, string Told)> Rows)
{
    // the first ruling that differs and what follows from it first; the handout has them all
    public const int TurnsInARow = 2;

    // what all plays of the subject tell is all there is to this one
    private const string NoMore = "Whatever else was so.";

    // characters that fit in a line across a slide, of its first column and of its two others, at the size of DeckPage's tables
    private const int Across = 98, PlayWide = 49, RulingWide = 20;

    /// <summary>Plays in order, those of one subject together.</summary>
    public static IReadOnlyList<PlayRows> Of(IReadOnlyList<Contrast> contrasts)
    {
        var groups = new List<PlayRows>();
        foreach (var group in contrasts.GroupBy(c => c.Sheet))
        {
            List<Contrast> plays = [.. group];
            List<string> common = plays.Count == 1 ? [] : [.. plays[0].Told.Where(t => plays.TrueForAll(p => p.Told.Contains(t)))];
            groups.Add(new(group.Key, common, [.. plays.Select(p => (p, p.Told.Except(common).Any() ? string.Join(' ', p.Told.Except(common)) : NoMore))]));
        }
        return groups;
    }

    /// <summary>Lines that these plays take in a table.</summary>
    internal int Lines => Rows.Count == 1
        ? Math.Max(Wrapped(Sheet.Length + 2 + Rows[0].Told.Length, PlayWide), Ruled(Rows[0].Contrast))
        : Wrapped(Sheet.Length + 2 + Common.Sum(c => c.Length + 1), Across) + Rows.Sum(r => Math.Max(Wrapped(r.Told.Length, PlayWide), Ruled(r.Contrast)));

    /// <summary>Words that the room reads.</summary>
    internal int Words => Sheet.Split(' ').Length + Common.Sum(Count) + Rows.Sum(r => Count(r.Told) + r.Contrast.Turns.Take(TurnsInARow).Sum(t => 2 * Count(t.Decision) + Count(t.Here) + Count(t.There)));

    internal static int Count(string text) => text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length;

    private static int Ruled(Contrast row) => Math.Max(Ruled(row, t => t.Here), Ruled(row, t => t.There));
    private static int Ruled(Contrast row, Func<Turn, string> side) => row.Turns.Take(TurnsInARow).Sum(t => Wrapped(t.Decision.Length + 2 + side(t).Length, RulingWide));
    private static int Wrapped(int length, int wide) => (length + wide - 1) / wide;
}
