using System.Text;

namespace Umpirage.Tests.Twin;

/// <summary>
/// A small made-up sheet: a model that the twin judges directly, and the text that the program reads. The two share nothing else.
/// </summary>
internal sealed class RandomSheet
{
    public sealed record Test(int Term, int Parameter, string Op, int[] Values);

    public sealed class Law
    {
        public required string Id { get; init; }
        public int Parent { get; init; } = -1;
        public List<Test> When { get; } = [];
        public Dictionary<int, (int Value, int Parameter)> Then { get; } = [];
        public List<int> Beats { get; } = [];
    }

    public List<int> Facts { get; } = [];
    public List<bool> Ordered { get; } = [];
    public List<int> Decisions { get; } = [];
    /// <summary>For each word parameter the decision or fact it stands for, and its value in the code that is asked.</summary>
    public List<(int Term, int Value)> Parameters { get; } = [];
    public List<List<Test>> Impossible { get; } = [];
    public List<Law> Laws { get; } = [];

    public int Sizes(int term) => term < Facts.Count ? Facts[term] : Decisions[term - Facts.Count];

    public static RandomSheet Make(Random random)
    {
        var sheet = new RandomSheet();
        for (var f = random.Next(2, 5); f > 0; f--) { sheet.Facts.Add(random.Next(2, 5)); sheet.Ordered.Add(random.Next(3) == 0); }
        for (var d = random.Next(1, 4); d > 0; d--) { sheet.Decisions.Add(random.Next(2, 4)); sheet.Ordered.Add(false); }
        for (var p = random.Next(0, 3); p > 0; p--)
        {
            var term = random.Next(sheet.Facts.Count + sheet.Decisions.Count);
            sheet.Parameters.Add((term, random.Next(sheet.Sizes(term))));
        }
        for (var i = random.Next(0, 3); i > 0; i--) sheet.Impossible.Add(sheet.Tests(random, random.Next(1, 4), sheet.Facts.Count));
        // half the sheets have a rule that always holds for each decision, so that a good share have no gap
        var floor = random.Next(2) == 0;
        for (var d = 0; d < sheet.Decisions.Count; d++)
        {
            var rules = floor ? 1 + random.Next(0, 2) : random.Next(1, 5);
            for (var r = 0; r < rules; r++) sheet.Rule(random, d, always: floor && r == 0);
        }
        if (random.Next(3) == 0)
            for (var n = random.Next(1, 3); n > 0; n--)
            {
                var (a, b) = (random.Next(sheet.Laws.Count), random.Next(sheet.Laws.Count));
                // only from a later law to an earlier one, so that nothing beats itself
                if (a > b && !sheet.Laws[a].Beats.Contains(b)) sheet.Laws[a].Beats.Add(b);
            }
        return sheet;
    }

    private void Rule(Random random, int decision, bool always)
    {
        var visible = Facts.Count + decision;
        var rule = new Law { Id = $"R{Laws.Count}" };
        if (!always) rule.When.AddRange(Tests(random, random.Next(1, 4), visible));
        Set(random, rule, decision);
        Laws.Add(rule);
        var parent = Laws.Count - 1;
        for (var e = random.Next(0, 3); e > 0; e--)
        {
            var exception = new Law { Id = $"R{Laws.Count}", Parent = parent };
            exception.When.AddRange(Tests(random, random.Next(1, 3), visible));
            Set(random, exception, decision);
            Laws.Add(exception);
        }
    }

    private void Set(Random random, Law law, int decision)
    {
        var term = Facts.Count + decision;
        var parameter = Parameters.FindIndex(p => p.Term == term);
        law.Then[decision] = parameter >= 0 && random.Next(2) == 0 ? (Parameters[parameter].Value, parameter) : (random.Next(Decisions[decision]), -1);
        // now and then a law speaks of a later decision as well; an earlier one could go in a circle
        if (decision + 1 < Decisions.Count && random.Next(4) == 0) law.Then[decision + 1] = (random.Next(Decisions[decision + 1]), -1);
    }

    private List<Test> Tests(Random random, int count, int visible)
    {
        var tests = new List<Test>();
        foreach (var term in Enumerable.Range(0, visible).OrderBy(_ => random.Next()).Take(count))
        {
            var parameter = Parameters.FindIndex(p => p.Term == term);
            if (parameter >= 0 && random.Next(2) == 0) { tests.Add(new(term, parameter, random.Next(2) == 0 ? "is" : "is not", [Parameters[parameter].Value])); continue; }
            if (Ordered[term] && random.Next(2) == 0)
            {
                var op = new[] { "is before", "is after", "is at least", "is at most" }[random.Next(4)];
                tests.Add(new(term, -1, op, [random.Next(Sizes(term))]));
                continue;
            }
            var values = Enumerable.Range(0, Sizes(term)).OrderBy(_ => random.Next()).Take(random.Next(1, Math.Max(2, Sizes(term)))).ToArray();
            tests.Add(new(term, -1, random.Next(4) == 0 ? "is not" : "is", values));
        }
        return tests;
    }

    private string Name(int term) => term < Facts.Count ? $"fact {term}" : $"decision {term - Facts.Count}";

    private static string Value(int value) => $"v{value}";

    private string Say(Test test) =>
        $"{Name(test.Term)} {test.Op} {(test.Parameter >= 0 ? $"[parameter {test.Parameter}]" : string.Join(" or ", test.Values.Select(Value)))}";

    /// <summary>The sheet as its author would write it, the laws of each decision in a random order.</summary>
    public string Text(Random random)
    {
        var text = new StringBuilder("Sheet: made up\ngroup: field\nabout: nothing\n\nFacts\n");
        for (var f = 0; f < Facts.Count; f++)
            text.AppendLine($"  fact {f} : {string.Join(Ordered[f] ? " < " : " | ", Enumerable.Range(0, Facts[f]).Select(Value))}").AppendLine("    ask: What?");
        if (Impossible.Count > 0) text.AppendLine("Impossible");
        for (var i = 0; i < Impossible.Count; i++) text.AppendLine($"  I{i}: cannot be").AppendLine(When(Impossible[i]));
        text.AppendLine("Decides");
        for (var d = 0; d < Decisions.Count; d++) text.AppendLine($"  decision {d} : {string.Join(" | ", Enumerable.Range(0, Decisions[d]).Select(Value))}");
        for (var p = 0; p < Parameters.Count; p++)
        {
            text.AppendLine($"Parameter parameter {p} : {string.Join(" | ", Enumerable.Range(0, Sizes(Parameters[p].Term)).Select(Value))}");
            text.AppendLine($"  softball = {Value(Parameters[p].Value)} | made up | our own").AppendLine("  baseball = v0 | made up | our own");
        }
        foreach (var (rule, index) in Laws.Select((l, i) => (l, i)).Where(l => l.l.Parent < 0).OrderBy(_ => random.Next()).ToList())
        {
            Write(text, rule, "Rule ");
            foreach (var exception in Laws.Where(l => l.Parent == index).OrderBy(_ => random.Next())) Write(text, exception, "  Except ");
        }
        return text.ToString();
    }

    private void Write(StringBuilder text, Law law, string head)
    {
        text.AppendLine($"{head}{law.Id}: made up").AppendLine("  cite: made up | our own");
        if (law.When.Count > 0) text.AppendLine(When(law.When));
        text.AppendLine("  then " + string.Join("\n   and ", law.Then.Select(t => $"decision {t.Key} is {(t.Value.Parameter >= 0 ? $"[parameter {t.Value.Parameter}]" : Value(t.Value.Value))}")));
        if (law.Beats.Count > 0) text.AppendLine($"  prevails over: {string.Join(", ", law.Beats.Select(b => Laws[b].Id))}");
    }

    private string When(List<Test> tests) => "  when " + string.Join("\n   and ", tests.Select(Say));
}
