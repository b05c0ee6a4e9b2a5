using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>
/// Proves a codebook: every sheet under every game, division, book, local layer and date on which anything changes. Reports all findings at
/// once; each gap and conflict with the smallest situation that shows it. Codes in which a sheet's values are the same are proven once.
/// </summary>
public static class Checker
{
    public static DateOnly Earliest { get; } = new(2000, 1, 1);

    /// <summary>Checks everything, or only the sheets named. Findings come in the order of files and lines.</summary>
    public static IReadOnlyList<Finding> Check(Codebook book, IReadOnlyCollection<string>? only = null)
    {
        var findings = new List<Finding>(book.Findings);
        foreach (var layer in book.Layers) LayerCheck.Check(book, layer, findings);
        foreach (var sheet in book.Sheets)
            if (only is null || only.Contains(sheet.Name, StringComparer.OrdinalIgnoreCase))
                new SheetCheck(book, sheet, findings).Run();
        return InOrder(findings.Where(f => only is null || book.Sheets.Any(s => s.File == f.File && only.Contains(s.Name, StringComparer.OrdinalIgnoreCase))));
    }

    /// <summary>Checks one layer: what it says itself, and every sheet it touches or that uses one it touches. The other sheets are as they were without it.</summary>
    public static IReadOnlyList<Finding> Check(Codebook book, Layer layer)
    {
        var named = layer.Changes.Select(c => c.Sheet).Concat(layer.Additions.Select(a => a.Sheet)).ToHashSet(StringComparer.OrdinalIgnoreCase);
        List<Sheet> touched = [.. book.Sheets.Where(s => named.Contains(s.Name) || s.Uses.Any(u => named.Contains(u.Sheet)))];
        var findings = new List<Finding>(book.Findings);
        LayerCheck.Check(book, layer, findings);
        foreach (var sheet in touched) new SheetCheck(book, sheet, findings).Run();
        // what the layer says comes first, then what it does to the sheets
        return [.. InOrder(findings.Where(f => f.File == layer.File)), .. InOrder(findings.Where(f => f.File != layer.File && touched.Any(s => s.File == f.File)))];
    }

    private static IReadOnlyList<Finding> InOrder(IEnumerable<Finding> findings) =>
        [.. findings.Distinct().OrderBy(f => f.File, StringComparer.Ordinal).ThenBy(f => f.Line).ThenBy(f => f.Kind)];

    /// <summary>The codes in which a sheet has to hold: each game and division, at large and under each book, and each local layer, at each date of change.</summary>
    public static IEnumerable<Code> Codes(Codebook book, Sheet sheet)
    {
        var lines = sheet.Parameters.SelectMany(p => p.Lines).ToList();
        foreach (var use in sheet.Uses) if (book.Sheet(use.Sheet) is { } other) lines.AddRange(other.Parameters.SelectMany(p => p.Lines));
        var local = book.Layers.SelectMany(l => l.Changes).Where(c => Words.Same(c.Sheet, sheet.Name)).SelectMany(c => c.Lines).ToList();
        var days = lines.Concat(local).SelectMany(l => new[] { l.Scope.From, l.Scope.Until?.AddDays(1) }).OfType<DateOnly>()
            .Where(d => d > Earliest).Append(Earliest).Distinct().Order().ToList();
        foreach (var game in book.Roster.Games.Where(sheet.Speaks))
            foreach (var division in book.Roster.Divisions)
                foreach (var layers in Stacks(book, game))
                    foreach (var day in days)
                        if (Code.Of(book, new(game, division, layers, day), day, []) is { } code) yield return code;
    }

    private static IEnumerable<IReadOnlyList<CodeAddress.Named>> Stacks(Codebook book, string game)
    {
        yield return [];
        foreach (var body in book.Roster.Bodies.Where(b => b.Game == game)) yield return [new(body.Name, [])];
        var leagues = book.Layers.Where(l => l.Kind == LayerKind.League).Select(l => l.Name).Take(2).ToList();
        foreach (var layer in book.Layers) yield return [new(layer.Name, layer.Deferrals.Count > 0 ? leagues : [])];
    }
}
