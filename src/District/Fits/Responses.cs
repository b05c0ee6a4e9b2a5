using System.Globalization;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Fits;

/// <summary>
/// Answers of people to questions: 1 right, 0 wrong, -1 not asked. Equal rows are kept once with their count. In a file: a heading line with the
/// questions' names, then a line for each person; blank means not asked; a column named "count" says how many people answered so.
/// </summary>
public sealed record Responses(IReadOnlyList<string> Items, IReadOnlyList<sbyte[]> Rows, IReadOnlyList<double> Counts)
{
    private const int MostFaults = 20;

    public double People => Counts.Sum();

    public static Responses Of(IReadOnlyList<string> items, IEnumerable<sbyte[]> rows, IEnumerable<double>? counts = null)
    {
        var (kept, weights) = (new List<sbyte[]>(), new List<double>());
        var places = new Dictionary<string, int>();
        using var weight = counts?.GetEnumerator();
        foreach (var row in rows)
        {
            var count = weight is not null && weight.MoveNext() ? weight.Current : 1;
            var key = string.Create(row.Length, row, (span, r) => { for (var i = 0; i < r.Length; i++) span[i] = (char)('1' + r[i]); });
            if (places.TryGetValue(key, out var at)) { weights[at] += count; continue; }
            places[key] = kept.Count;
            kept.Add(row);
            weights.Add(count);
        }
        return new(items, kept, weights);
    }

    /// <summary>Reads comma-separated answers. Null, with every fault, when a line cannot be read or nothing could be fitted.</summary>
    public static Responses? Read(string file, string text, List<Finding> findings)
    {
        var before = findings.Count;
        var lines = text.ReplaceLineEndings("\n").Split('\n');
        List<string> heads = [.. lines[0].Split(',').Select(h => h.Trim().Trim('"'))];
        var countAt = heads.FindIndex(h => Words.Same(h, "count"));
        var items = heads.Where((_, i) => i != countAt).ToList();
        void Fault(int line, string message) { if (findings.Count - before < MostFaults) findings.Add(new(FindingKind.UnreadableLine, file, line, message)); }
        foreach (var twice in items.GroupBy(i => i, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1)) Fault(1, $"there are {twice.Count()} columns named '{twice.Key}'; each question needs a name of its own");
        if (items.Count < 2) Fault(1, $"there are {items.Count} questions; at least two are needed, each a column with its name in the first line");
        var (rows, counts) = (new List<sbyte[]>(), new List<double>());
        for (var i = 1; i < lines.Length; i++)
        {
            if (lines[i].Trim() == "") continue;
            var cells = lines[i].Split(',');
            if (cells.Length != heads.Count) { Fault(i + 1, $"there are {cells.Length} values; the first line names {heads.Count} columns"); continue; }
            var (row, count, at) = (new sbyte[items.Count], 1.0, 0);
            for (var c = 0; c < cells.Length; c++)
            {
                var word = cells[c].Trim().Trim('"');
                if (c == countAt)
                {
                    if (!double.TryParse(word, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out count)) Fault(i + 1, $"the count is '{word}'; allowed is a number of people");
                    continue;
                }
                row[at++] = word switch { "1" => 1, "0" => 0, "" or "NA" => -1, _ => -2 };
                if (row[at - 1] == -2) Fault(i + 1, $"'{heads[c]}' is '{word}'; allowed is 1 (right), 0 (wrong), or nothing when it was not asked");
            }
            rows.Add(row);
            counts.Add(count);
        }
        if (findings.Count > before) return null;
        for (var j = 0; j < items.Count; j++)
        {
            var answers = rows.Zip(counts).Where(r => r.Second > 0 && r.First[j] >= 0).Select(r => r.First[j]).Distinct().ToList();
            if (answers.Count < 2) Fault(1, $"'{items[j]}' was {(answers.Count == 0 ? "never asked" : answers[0] == 1 ? "always answered rightly" : "always answered wrongly")}; such a question has no finite difficulty, leave its column out");
        }
        return findings.Count > before ? null : Of(items, rows, counts);
    }
}
