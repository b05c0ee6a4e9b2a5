using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>A value that two codes set differently.</summary>
public sealed record ValueDifference(string Name, Provenance Here, Provenance There);

/// <summary>Cases in which a decision comes out differently, said in the fewest words, earlier decisions taken as facts.</summary>
public sealed record RulingDifference(string Decision, string When, string Here, string There, ulong[] Space);

/// <summary>What changes in one subject between two codes; <paramref name="OnlyIn"/> names the game when the other does not know the subject.</summary>
public sealed record SheetDifference(Sheet Sheet, string? OnlyIn, IReadOnlyList<ValueDifference> Values, IReadOnlyList<RulingDifference> Rulings)
{
    public bool Same => OnlyIn is null && Values.Count == 0 && Rulings.Count == 0;
}

/// <summary>
/// The crossover: two divisions, editions or games compared sheet by sheet and decision by decision. Complete: in any case possible in both
/// codes, the first decision that differs stands in a line.
/// </summary>
public static class Crossover
{
    /// <summary>Compares every sheet; sheets with gaps or missing values are left out and named in <paramref name="findings"/>.</summary>
    public static IReadOnlyList<SheetDifference> Of(Codebook book, Code here, Code there, List<Finding> findings)
    {
        var differences = new List<SheetDifference>();
        foreach (var sheet in book.Sheets.OrderBy(s => s.Group, StringComparer.Ordinal).ThenBy(s => s.Name, StringComparer.Ordinal))
        {
            var (a, b) = (sheet.Speaks(here.Game), sheet.Speaks(there.Game));
            if (a != b) differences.Add(new(sheet, a ? here.Game : there.Game, [], []));
            if (!a || !b) continue;
            if (book.Bind(sheet, here.Stack, findings) is not { } boundHere || book.Bind(sheet, there.Stack, findings) is not { } boundThere) continue;
            if (CodeSheet.Of(boundHere, here, findings) is not { } one || CodeSheet.Of(boundThere, there, findings) is not { } two) continue;
            differences.Add(Of(sheet, one, two));
        }
        return differences;
    }

    /// <summary>Compares one sheet under two codes.</summary>
    public static SheetDifference Of(Sheet sheet, CodeSheet one, CodeSheet two)
    {
        List<ValueDifference> values = [.. one.Values.Where(v => Shown(one.Bound, v.Key) && two.Values.TryGetValue(v.Key, out var other) && !Equal(v.Value, other))
            .Select(v => new ValueDifference(v.Key.Name, v.Value, two.Values[v.Key]))];
        return new(sheet, null, values, new SheetCrossover(one, two).Rulings());
    }

    /// <summary>A number, or a word that only plans read, is told as a value; a word that rules read is told by what it does.</summary>
    private static bool Shown(BoundSheet bound, Parameter parameter) =>
        parameter.Sheet == bound.Sheet.Name && (parameter.Unit is not null || parameter.UsedBy is not null);

    private static bool Equal(Provenance a, Provenance b) =>
        a.Quantity is { } x && b.Quantity is { } y ? x.Value.Equals(y.Value) : Words.Same(a.Value, b.Value);
}
