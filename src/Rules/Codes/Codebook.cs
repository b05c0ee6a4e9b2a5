using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>
/// Everything that was read of the codes: sheets, layers, names. From it a <see cref="Code"/> is taken for one game, division, stack of
/// layers and day. It knows no files: it is handed names and texts.
/// </summary>
public sealed class Codebook
{
    private readonly Dictionary<string, Sheet> sheets = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, Layer> layers = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, BoundSheet?> bound = new(StringComparer.OrdinalIgnoreCase);

    public required Roster Roster { get; init; }
    public IReadOnlyCollection<Sheet> Sheets => sheets.Values;
    public IReadOnlyCollection<Layer> Layers => layers.Values;
    /// <summary>What was wrong with the texts as such. Faults of meaning are found by <see cref="Checker"/>.</summary>
    public List<Finding> Findings { get; } = [];

    /// <summary>Reads a roster, then sheets and layers, told apart by their names' ends.</summary>
    public static Codebook Read(SourceText roster, IEnumerable<SourceText> texts)
    {
        var findings = new List<Finding>();
        var book = new Codebook { Roster = Roster.Read(roster.File, roster.Text, findings) };
        book.Findings.AddRange(findings);
        foreach (var source in texts) book.Add(source.File, source.Text);
        return book;
    }

    public void Add(string file, string text)
    {
        if (file.EndsWith(".layer", StringComparison.Ordinal))
        {
            var layer = LayerReader.Read(file, text, Roster, Findings);
            if (!layers.TryAdd(layer.Name, layer)) Findings.Add(new(FindingKind.ImpossibleValue, file, 1, $"there is a second layer '{layer.Name}'"));
            return;
        }
        var sheet = SheetReader.Read(file, text, Roster, Findings);
        if (Findings.Any(f => f.File == file && f.Kind == FindingKind.TooEntangled)) return;
        if (!sheets.TryAdd(sheet.Name, sheet)) Findings.Add(new(FindingKind.ImpossibleValue, file, 1, $"there is a second sheet '{sheet.Name}'"));
    }

    public Sheet? Sheet(string name) => sheets.GetValueOrDefault(Words.Tidy(name));

    public Layer? Layer(string name) => layers.GetValueOrDefault(name);

    /// <summary>The sheet bound to its words, with what the given layers add; null when it has faults, which go to <paramref name="findings"/>.</summary>
    public BoundSheet? Bind(Sheet sheet, IReadOnlyList<Layer> stack, List<Finding> findings)
    {
        List<Addition> additions = [.. stack.SelectMany(l => l.Additions).Where(a => Words.Same(a.Sheet, sheet.Name))];
        var key = additions.Count == 0 ? sheet.Name : sheet.Name + "\n" + string.Join('\n', additions.Select(a => $"{a.Exception.Layer}/{a.Exception.Id}"));
        lock (bound)
        {
            if (bound.TryGetValue(key, out var known) && known is not null) return known;
            return bound[key] = new Binder(Sheet, findings).Bind(sheet, additions);
        }
    }
}
