using System.Text;
using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Codes;

/// <summary>
/// The printed decision table: for each decision, the fewest lines that say every case, each with the rule that decides it; and the values
/// that the code gives to the sheet.
/// </summary>
public sealed record TableView(string Title, IReadOnlyList<string> Values, IReadOnlyList<string> Columns, IReadOnlyList<IReadOnlyList<string>> Rows)
{
    public static TableView Of(Table table)
    {
        var sheet = table.Sheet;
        List<string> values = [.. sheet.Values.Select(v => $"{v.Key.Name}: {v.Value.Value}   ({v.Value.Layer}; {v.Value.Citation})")];
        var rows = new List<IReadOnlyList<string>>();
        foreach (var decision in sheet.Bound.OwnDecisions)
            foreach (var entry in sheet.Entries[decision.Index - sheet.FactCount].Where(e => table.Fired[e.Clause]))
            {
                var clause = sheet.Bound.Clauses[entry.Clause];
                rows.Add([decision.Name, decision.Values[entry.Value], When(table, entry), clause.Id]);
            }
        return new($"{sheet.Bound.Sheet.Name}, {sheet.Code.Address}: {table.Cases} cases, {table.DistinctRulings} distinct rulings", values, ["decides", "is", "when", "by"], rows);
    }

    /// <summary>The conditions, and the ids of what takes the rule's place.</summary>
    private static string When(Table table, Entry entry)
    {
        var sheet = table.Sheet;
        var space = (ulong[])sheet.Domain.Clone();
        for (var i = 0; i < entry.Box.Terms.Length; i++) space[entry.Box.Terms[i]] &= entry.Box.Masks[i];
        List<string> over = [.. sheet.Bound.Overriders[entry.Clause].Where(o => table.Fired[o] && sheet.Entries[entry.Decision - sheet.FactCount].Any(e => e.Clause == o)).Select(o => sheet.Bound.Clauses[o].Id)];
        return Wording.Say(sheet, space) + (over.Count == 0 ? "" : $", unless {Words.Or(over)}");
    }

    public string Text
    {
        get
        {
            var text = new StringBuilder();
            text.AppendLine(Title).AppendLine();
            foreach (var value in Values) text.Append("  ").AppendLine(value);
            if (Values.Count > 0) text.AppendLine();
            var last = "";
            foreach (var row in Rows)
            {
                if (row[0] != last) text.AppendLine(row[0]);
                last = row[0];
                text.AppendLine($"  {row[1]}   [{row[3]}]").AppendLine($"      {row[2]}");
            }
            return text.ToString();
        }
    }
}
