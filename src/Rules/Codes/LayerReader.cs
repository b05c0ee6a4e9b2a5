using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>Reads a local layer: what it sets, which exceptions it adds, and, for an agreement, whose layer governs what.</summary>
public static class LayerReader
{
    public static Layer Read(string file, string text, Roster roster, List<Finding> findings)
    {
        string name = "", title = "", sheet = "";
        string? on = null;
        var kind = LayerKind.League;
        var changes = new List<(string Sheet, string Parameter, List<ValueLine> Lines, int Line)>();
        var additions = new List<Addition>();
        var deferrals = new List<Deferral>();
        string? deferring = null, rule = null;
        ClauseReader? clauses = null;
        void Fault(SourceLine line, string message) => findings.Add(new(FindingKind.UnreadableLine, file, line.Number, message));

        foreach (var line in SourceLine.Of(text))
        {
            var (key, value) = SheetReader.Split(line.Text, ':');
            if (Cut(line, "Layer:", out var rest)) { name = rest; continue; }
            if (Cut(line, "Sheet:", out rest)) { (sheet, deferring, rule) = (rest, null, null); continue; }
            if (Cut(line, "Set ", out rest)) { changes.Add((sheet, rest, [], line.Number)); (deferring, rule) = (null, null); continue; }
            if (Cut(line, "In rule ", out rest)) { (rule, deferring) = (rest, null); continue; }
            if (Cut(line, "From ", out rest) && !line.Text.Contains('=')) { (deferring, rule) = (rest, null); continue; }
            if (rule is not null && line.Text.StartsWith("Except ", StringComparison.Ordinal))
            {
                clauses = new(file, name, roster, findings);
                if (clauses.BeginLoose(line) is { } exception) additions.Add(new(sheet, rule, exception, line.Number));
                continue;
            }
            if (rule is not null && clauses is not null) { if (!clauses.Line(line)) Fault(line, $"cannot read '{line.Short}'"); continue; }
            if (deferring is not null)
            {
                if (line.Text == "everything else") deferrals.Add(new(deferring, null, null, line.Number));
                else if (value != "") deferrals.Add(new(deferring, key, value, line.Number));
                else Fault(line, "write 'sheet: parameter' or 'everything else'");
                continue;
            }
            if (changes.Count > 0 && line.Text.Contains('='))
            {
                if (ValueReader.Read(file, line, null, roster, gameNeeded: false, findings) is { } read) changes[^1].Lines.Add(read);
                continue;
            }
            switch (key)
            {
                case "kind" when Words.TryName<LayerKind>(value, out var known): kind = known; break;
                case "on": on = value; break;
                case "title": title = value; break;
                default: Fault(line, $"cannot read '{line.Short}'; a layer has 'Layer:', 'kind:', 'on:', 'title:', then 'Sheet:' with 'Set parameter' or 'In rule ID'"); break;
            }
        }
        if (name == "") findings.Add(new(FindingKind.UnreadableLine, file, 0, "the layer has no name; begin with 'Layer: name'"));
        var layer = new Layer { Name = name, File = file, Kind = kind, On = on, Title = title };
        layer.Changes.AddRange(changes.Select(c => new Change(c.Sheet, c.Parameter, c.Lines, c.Line)));
        layer.Additions.AddRange(additions);
        layer.Deferrals.AddRange(deferrals);
        return layer;
    }

    private static bool Cut(SourceLine line, string start, out string rest)
    {
        rest = line.Text.StartsWith(start, StringComparison.Ordinal) ? line.Text[start.Length..].Trim() : "";
        return rest != "";
    }
}
