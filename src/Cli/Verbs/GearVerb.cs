using Umpirage.District.Gear;
using Umpirage.Rules.Ground;

namespace Umpirage.Cli.Verbs;

/// <summary>Gear looked over under one code.</summary>
internal static class GearVerb
{
    public static int Run(Request request)
    {
        if (request.Words.Count != 1) { Console.Error.WriteLine("name a list of gear: ./umpirage gear demo/plate-meeting.gear"); return Verb.Unusable; }
        var file = request.Words[0];
        if (!File.Exists(file)) { Console.Error.WriteLine($"there is no file '{file}'"); return Verb.Unusable; }
        var findings = new List<Finding>();
        var list = GearFile.Read(file, File.ReadAllText(file), findings);
        string[] sheets = [.. list.Items.SelectMany(i => i.Kind.Measured is { } m ? new[] { i.Kind.Sheet, m.Sheet } : [i.Kind.Sheet]).Distinct()];
        // what can be looked at is looked at even where a line cannot be read: every fault is told at once
        var looked = list.Code == "" ? null : Inspector.Inspect(Library.Codes(request, sheets, address: ""), list, file, request.Today, findings);
        foreach (var finding in findings.OrderBy(f => f.Line)) Console.Error.WriteLine(finding);
        if (looked is null || findings.Count > 0) return Verb.Unusable;
        if (request.Json) Json.Write(looked.Select(l => new { item = l.Item.Name, l.Conforms, l.Mark, reasons = l.Reasons.Select(r => r.InWords), l.Do, costs = l.Costs.Select(c => c.InWords), l.Rulings, removal = l.Removal?.InWords }));
        else Console.Write(GearSheet.Text(list, looked));
        return looked.All(l => l.Conforms) ? Verb.Fine : Verb.No;
    }
}
