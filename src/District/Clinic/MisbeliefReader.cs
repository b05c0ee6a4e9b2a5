using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>Reads misbeliefs. Data: codes/lessons/misbeliefs.txt.</summary>
public static class MisbeliefReader
{
    private const string Form = "a belief begins with 'Belief: what is believed', followed by 'sheet', 'in', 'given', 'believed' and 'source', each with a colon";

    /// <summary>Reads the file; every fault is told, and a belief with a fault is left out.</summary>
    public static IReadOnlyList<Misbelief> Read(string file, string text, Codebook book, List<Finding> findings)
    {
        var beliefs = new List<Misbelief>();
        var parts = new Dictionary<string, (string Text, int Line)>();
        void Fault(int line, string message) => findings.Add(new(FindingKind.UnreadableLine, file, line, message));
        foreach (var line in SourceLine.Of(text))
        {
            var colon = line.Text.IndexOf(':');
            var (key, rest) = colon < 0 ? (line.Text.Trim(), "") : (line.Text[..colon].Trim(), line.Text[(colon + 1)..].Trim());
            if (key == "Belief")
            {
                Add();
                parts = new() { [key] = (rest, line.Number) };
            }
            else if (parts.Count == 0 || key is not ("sheet" or "in" or "given" or "believed" or "source")) Fault(line.Number, $"cannot read '{line.Short}'; {Form}");
            else if (!parts.TryAdd(key, (rest, line.Number))) Fault(line.Number, $"'{key}' stands here a second time");
        }
        Add();
        return beliefs;

        void Add()
        {
            if (parts.Count == 0) return;
            var before = findings.Count;
            var begins = parts["Belief"].Line;
            foreach (var missing in new[] { "sheet", "in", "given", "believed", "source" }.Where(k => !parts.ContainsKey(k))) Fault(begins, $"the belief '{parts["Belief"].Text}' has no '{missing}'; {Form}");
            if (findings.Count > before) return;
            var sheet = book.Sheet(parts["sheet"].Text);
            if (sheet is null)
            {
                Fault(parts["sheet"].Line, $"there is no sheet '{parts["sheet"].Text}'; {Words.Offer(parts["sheet"].Text, [.. book.Sheets.Select(s => s.Name)])}");
                return;
            }
            List<string> games = [.. parts["in"].Text.Split(',').Select(g => g.Trim())];
            foreach (var game in games.Where(g => !book.Roster.Games.Contains(g, StringComparer.OrdinalIgnoreCase) || !sheet.Speaks(g))) Fault(parts["in"].Line, $"'{sheet.Name}' says nothing of '{game}'; write the games in which the belief is wrong");
            var at = parts["believed"].Text.IndexOf(" is ", StringComparison.Ordinal);
            var (decision, value) = at < 0 ? (parts["believed"].Text, "") : (parts["believed"].Text[..at].Trim(), parts["believed"].Text[(at + 4)..].Trim());
            var decided = sheet.Decisions.FirstOrDefault(d => Words.Same(d.Name, decision));
            if (decided is null) Fault(parts["believed"].Line, $"'{sheet.Name}' decides no '{decision}'; {Words.Offer(decision, [.. sheet.Decisions.Select(d => d.Name)])}");
            else if (!decided.Values.Contains(value, StringComparer.OrdinalIgnoreCase)) Fault(parts["believed"].Line, $"'{decision}' never comes out as '{value}'; it may be {Words.Or(decided.Values)}");
            if (findings.Count > before) return;
            beliefs.Add(new(parts["Belief"].Text, sheet.Name, games, [.. parts["given"].Text.Split(';').Select(g => g.Trim())], decision, value, parts["source"].Text, begins));
        }
    }
}
