using System.Text;
using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>The crossover as a sheet to print: subjects in groups, numbers first, then what is ruled differently.</summary>
public static class CrossoverView
{
    private const int FewEnoughToName = 15;

    public static string Text(Code here, Code there, IReadOnlyList<SheetDifference> differences)
    {
        var text = new StringBuilder();
        text.AppendLine($"CROSSOVER   {here.Address}   /   {there.Address}").AppendLine();
        foreach (var group in differences.Where(d => !d.Same).GroupBy(d => d.Sheet.Group))
        {
            text.AppendLine(group.Key.ToUpperInvariant());
            foreach (var difference in group) Sheet(text, difference);
            text.AppendLine();
        }
        List<string> same = [.. differences.Where(d => d.Same).Select(d => d.Sheet.Name)];
        if (same.Count > 0) text.AppendLine(same.Count <= FewEnoughToName ? $"No difference: {Words.And(same)}." : $"No difference in {same.Count} other subjects.");
        return text.ToString();
    }

    private static void Sheet(StringBuilder text, SheetDifference difference)
    {
        text.AppendLine($"  {difference.Sheet.Name}{(difference.OnlyIn is { } game ? $": in {game} only. {difference.Sheet.About}" : "")}");
        foreach (var value in difference.Values) text.AppendLine($"    {value.Name}: {value.Here.Value} / {value.There.Value}");
        foreach (var ways in difference.Rulings.GroupBy(r => (r.When)))
        {
            text.AppendLine($"    {(ways.Key == "always" ? "always" : "when " + ways.Key)}");
            foreach (var ruling in ways) text.AppendLine($"      {ruling.Decision}: {ruling.Here} / {ruling.There}");
        }
    }
}
