using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>How lessons are cut: minutes, seconds a slide, rows a slide, which groups an audience needs and in which order. Data: codes/lessons/plan.txt.</summary>
public sealed class LessonPlan
{
    private readonly Dictionary<string, int> numbers = new(StringComparer.Ordinal);

    public Dictionary<string, IReadOnlyList<string>> Audiences { get; } = new(StringComparer.OrdinalIgnoreCase);
    public Dictionary<string, string> Groups { get; } = new(StringComparer.OrdinalIgnoreCase);

    private static readonly string[] Needed =
        ["minutes", "seconds opening", "seconds pair", "seconds belief", "seconds numbers", "seconds only", "seconds closing", "rows table", "rows numbers", "rows only", "rows beliefs", "beliefs", "words a minute", "questions"];

    /// <summary>A number of the plan: "minutes", "seconds pair", "rows table".</summary>
    public int this[string name] => numbers[name];

    /// <summary>Seconds in which so many words are read.</summary>
    public int Reading(int words) => (int)Math.Ceiling(words * 60.0 / this["words a minute"]);

    /// <summary>Reads a plan; null, with every fault, when something is missing or cannot be read.</summary>
    public static LessonPlan? Read(string file, string text, Codebook book, List<Finding> findings)
    {
        var before = findings.Count;
        var plan = new LessonPlan();
        var groups = book.Sheets.Select(s => s.Group).Distinct().Order(StringComparer.Ordinal).ToList();
        void Fault(int line, string message) => findings.Add(new(FindingKind.UnreadableLine, file, line, message));
        foreach (var line in SourceLine.Of(text))
        {
            var colon = line.Text.IndexOf(':');
            var (key, rest) = colon < 0 ? (line.Text, "") : (line.Text[..colon].Trim(), line.Text[(colon + 1)..].Trim());
            if (Needed.Contains(key))
            {
                if (int.TryParse(rest, out var number) && number is > 0 and <= 1000) plan.numbers[key] = number;
                else Fault(line.Number, $"'{key}' is '{rest}'; allowed is a whole number from 1 to 1000");
            }
            else if (key.StartsWith("audience ", StringComparison.Ordinal))
            {
                List<string> named = [.. rest.Split(',').Select(g => g.Trim())];
                foreach (var unknown in named.Where(g => !groups.Contains(g))) Fault(line.Number, $"there is no group '{unknown}'; {Words.Offer(unknown, groups)}");
                plan.Audiences[key[9..].Trim()] = named;
            }
            else if (key.StartsWith("group ", StringComparison.Ordinal)) plan.Groups[key[6..].Trim()] = rest;
            else Fault(line.Number, $"cannot read '{line.Short}'; write 'audience NAME: group, group', 'group NAME: title', or one of {Words.And(Needed)} with a number");
        }
        foreach (var missing in Needed.Where(n => !plan.numbers.ContainsKey(n))) Fault(0, $"'{missing}' is missing");
        if (plan.Audiences.Count == 0) Fault(0, "no audience is named; write 'audience umpire: group, group'");
        foreach (var group in groups.Where(g => !plan.Groups.ContainsKey(g))) Fault(0, $"the group '{group}' has no title; write 'group {group}: title'");
        return findings.Count > before ? null : plan;
    }
}
