using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>Checks a local layer against the sheets: names that exist, and nothing that the layer below does not permit.</summary>
internal static class LayerCheck
{
    public static void Check(Codebook book, Layer layer, List<Finding> findings)
    {
        void Fault(FindingKind kind, int line, string message) => findings.Add(new(kind, layer.File, line, message));
        if (layer.On is { } on && book.Layer(on) is null && !book.Roster.Bodies.Any(b => Words.Same(b.Name, on)))
            Fault(FindingKind.UnknownWord, 0, $"stands on '{on}', which is no layer and no book; {Words.Offer(on, [.. book.Layers.Select(l => l.Name), .. book.Roster.Bodies.Select(b => b.Name)])}");
        foreach (var change in layer.Changes)
        {
            if (Parameter(change.Sheet, change.Parameter, change.Line) is not { } parameter) continue;
            if (layer.Kind > parameter.OpenTo)
                Fault(FindingKind.ForbiddenChange, change.Line, $"a {Kind(layer.Kind)} may not change '{parameter.Name}' of '{change.Sheet}'; it is open to {Kind(parameter.OpenTo)} only");
            if (change.Lines.Count == 0) Fault(FindingKind.BlankCell, change.Line, $"'{parameter.Name}' is set to nothing; {ValueReader.Form}");
            foreach (var line in change.Lines) ValueReader.Checked(layer.File, line.Line, parameter, line.Value, findings);
        }
        foreach (var deferral in layer.Deferrals)
        {
            if (deferral.From is not ("host" or "visitor" or "district"))
                Fault(FindingKind.UnknownWord, deferral.Line, $"'From {deferral.From}': it may be host, visitor or district");
            if (deferral.Sheet is not null) Parameter(deferral.Sheet, deferral.Parameter!, deferral.Line);
        }
        foreach (var addition in layer.Additions)
        {
            if (book.Sheet(addition.Sheet) is not { } sheet) { Fault(FindingKind.UnknownWord, addition.Line, $"there is no sheet '{addition.Sheet}'; {Words.Offer(addition.Sheet, [.. book.Sheets.Select(s => s.Name)])}"); continue; }
            if (sheet.Rules.FirstOrDefault(r => Words.Same(r.Id, addition.Rule)) is { } rule && layer.Kind > rule.OpenTo)
                Fault(FindingKind.ForbiddenChange, addition.Line, $"a {Kind(layer.Kind)} may not add an exception to {rule.Id} of '{sheet.Name}'; it is open to {Kind(rule.OpenTo)} only");
            if (addition.Exception.Cites.Count == 0) Fault(FindingKind.MissingCitation, addition.Line, $"{addition.Exception.Id} has no source; add 'cite: source | status'");
        }

        Parameter? Parameter(string sheetName, string name, int line)
        {
            if (book.Sheet(sheetName) is not { } sheet) { Fault(FindingKind.UnknownWord, line, $"there is no sheet '{sheetName}'; {Words.Offer(sheetName, [.. book.Sheets.Select(s => s.Name)])}"); return null; }
            var parameter = sheet.Parameters.FirstOrDefault(p => Words.Same(p.Name, name));
            if (parameter is null) Fault(FindingKind.UnknownWord, line, $"the sheet '{sheetName}' has no parameter '{name}'; {Words.Offer(name, [.. sheet.Parameters.Select(p => p.Name)])}");
            return parameter;
        }
    }

    private static string Kind(LayerKind kind) => kind.ToString().ToLowerInvariant();
}
