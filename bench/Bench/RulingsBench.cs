using System.Diagnostics;
using System.Linq.Expressions;
using NRules;
using NRules.RuleModel;
using NRules.RuleModel.Builders;
using RulesEngine.Models;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Plays;

namespace Umpirage.Bench;

/// <summary>A case as the general rule libraries see it: the facts, and the decisions one after another as they are made.</summary>
public sealed class Case
{
    public int[] F { get; set; } = [];
    public int Stage { get; set; }
    public string Rules { get; set; } = "";
}

/// <summary>
/// Rulings a second on one thread: our compiled tables against two general-purpose .NET rule libraries. All three are given the same two
/// subjects (double first base, leaving the base early), the same cases and have to give the same decisions; compiling is not counted.
/// Each library gets every way of setting a decision as one rule, with what overrides it as a negated condition, and decides in stages.
/// </summary>
internal static class RulingsBench
{
    public static void Run()
    {
        var book = Shelf.Read();
        CodeSheet[] sheets = [Shelf.Under(book, "double first base", "softball/12U@2026-05-16"), Shelf.Under(book, "leaving the base early", "softball/12U@2026-05-16")];
        var tables = sheets.Select(s => Table.Of(s)).ToArray();
        var random = new Random(1);
        var cases = tables.Select(t => Enumerable.Range(0, 2_000).Select(_ => Pick(random, t)).ToArray()).ToArray();

        var ours = Rate(cases, (k, f) => tables[k].Cells[tables[k].Line(f)].Values, 3_000_000);
        var nrules = new NRulesSide(sheets);
        var engine = new RulesEngineSide(sheets);
        Agree(tables, cases, nrules.Rule, "NRules");
        Agree(tables, cases, engine.Rule, "RulesEngine");
        var slow = Rate(cases, (k, f) => nrules.Rule(k, f, out _), 4_000);
        var slower = Rate(cases, (k, f) => engine.Rule(k, f, out _), 1_000);
        var oursExplained = Rate(cases, (k, f) => Explained(tables[k], f), 20_000);
        var slowExplained = Rate(cases, (k, f) => { var v = nrules.Rule(k, f, out var by); GC.KeepAlive(by); return v; }, 4_000);
        var slowerExplained = Rate(cases, (k, f) => { var v = engine.Rule(k, f, out var by); GC.KeepAlive(by); return v; }, 1_000);
        var fastest = Math.Max(slow, slower);
        Console.WriteLine("rulings a second, one thread, double first base and leaving the base early in turn, all answers equal on 4,000 cases:");
        Console.WriteLine($"  explanation off: Umpirage {ours:N0}; NRules {slow:N0}; RulesEngine {slower:N0}; ratio to the faster one {ours / fastest:N0} (bar 100)");
        var fastestExplained = Math.Max(slowExplained, slowerExplained);
        Console.WriteLine($"  explanation on:  Umpirage {oursExplained:N0} (the whole because-chain in words); NRules {slowExplained:N0}, RulesEngine {slowerExplained:N0} (names of the rules that fired); ratio {oursExplained / fastestExplained:N2}");
    }

    private static int[] Explained(Table table, int[] facts)
    {
        var situation = Situation.Unknown(table.Sheet);
        for (var t = 0; t < facts.Length; t++) situation.Known[t] = 1UL << facts[t];
        GC.KeepAlive(Because.Of(Umpire.Rule(table, situation)));
        return [];
    }

    private static int[] Pick(Random random, Table table)
    {
        var cell = table.Cells[random.Next(table.Cells.Count)];
        return [.. cell.Facts.Select(m => { var v = Enumerable.Range(0, 64).Where(i => (m >> i & 1) != 0).ToArray(); return v[random.Next(v.Length)]; })];
    }

    private delegate int[] Side(int sheet, int[] facts, out string by);

    private static void Agree(Table[] tables, int[][][] cases, Side side, string name)
    {
        for (var k = 0; k < tables.Length; k++)
            foreach (var facts in cases[k])
                if (!side(k, facts, out _).SequenceEqual(tables[k].At(facts)!.Values)) throw new InvalidOperationException($"{name} rules otherwise");
    }

    private static double Rate(int[][][] cases, Func<int, int[], int[]> rule, int count)
    {
        for (var i = 0; i < Math.Min(count, 2_000); i++) rule(i & 1, cases[i & 1][i % 2_000]);
        var best = 0.0;
        for (var run = 0; run < 3; run++)
        {
            var watch = Stopwatch.StartNew();
            for (var i = 0; i < count; i++) rule(i & 1, cases[i & 1][i % 2_000]);
            best = Math.Max(best, count / watch.Elapsed.TotalSeconds);
        }
        return best;
    }

    /// <summary>All ways of setting a decision, as (stage, value, clause, test).</summary>
    internal static IEnumerable<(int Stage, Entry Entry)> Ways(CodeSheet sheet) => sheet.Entries.SelectMany((e, stage) => e.Select(x => (stage, x)));

    private sealed class NRulesSide
    {
        private readonly ISession[] sessions;
        private readonly int[] stages;
        private readonly int[] facts;

        public NRulesSide(CodeSheet[] sheets)
        {
            stages = [.. sheets.Select(s => s.Entries.Length)];
            facts = [.. sheets.Select(s => s.FactCount)];
            sessions = [.. sheets.Select(s => new RuleCompiler().Compile(Ways(s).Select((w, i) => Rule(s, w.Stage, w.Entry, i))).CreateSession())];
        }

        private static IRuleDefinition Rule(CodeSheet sheet, int stage, Entry entry, int number)
        {
            var builder = new RuleBuilder();
            builder.Name($"{sheet.Bound.Clauses[entry.Clause].Id}-{number}");
            var pattern = builder.LeftHandSide().Pattern(typeof(Case), "c");
            var c = Expression.Parameter(typeof(Case), "c");
            Expression test = Expression.AndAlso(Expression.Equal(Expression.Property(c, nameof(Case.Stage)), Expression.Constant(stage)), Test(c, entry.Box));
            foreach (var hole in entry.Holes) test = Expression.AndAlso(test, Expression.Not(Test(c, hole)));
            pattern.Condition(Expression.Lambda<Func<Case, bool>>(test, c));
            var id = sheet.Bound.Clauses[entry.Clause].Id;
            Expression<Action<IContext, Case>> act = (context, c) => Decide(context, c, sheet.FactCount + stage, entry.Value, id);
            builder.RightHandSide().Action(act);
            return builder.Build();
        }

        private static void Decide(IContext context, Case c, int term, int value, string id)
        {
            // two rules that agree may both be on the agenda: the second finds the stage passed
            if (c.F.Length <= term || c.F[term] >= 0) return;
            c.F[term] = value;
            c.Rules = id;
            c.Stage++;
            context.Update(c);
        }

        private static Expression Test(ParameterExpression c, Box box)
        {
            Expression all = Expression.Constant(true);
            for (var i = 0; i < box.Terms.Length; i++)
            {
                var at = Expression.ArrayIndex(Expression.Property(c, nameof(Case.F)), Expression.Constant(box.Terms[i]));
                var shifted = Expression.And(Expression.RightShift(Expression.Constant(box.Masks[i]), at), Expression.Constant(1UL));
                all = Expression.AndAlso(all, Expression.NotEqual(shifted, Expression.Constant(0UL)));
            }
            return all;
        }

        public int[] Rule(int k, int[] given, out string by)
        {
            var c = new Case { F = [.. given, .. Enumerable.Repeat(-1, stages[k])] };
            sessions[k].Insert(c);
            sessions[k].Fire();
            sessions[k].Retract(c);
            by = c.Rules;
            return c.F[facts[k]..];
        }
    }

    private sealed class RulesEngineSide
    {
        private readonly RulesEngine.RulesEngine[] engines;
        private readonly CodeSheet[] sheets;

        public RulesEngineSide(CodeSheet[] sheets)
        {
            this.sheets = sheets;
            engines = [.. sheets.Select(s => new RulesEngine.RulesEngine([.. Enumerable.Range(0, s.Entries.Length).Select(stage => new Workflow
            {
                WorkflowName = $"stage {stage}",
                Rules = [.. s.Entries[stage].Select((e, i) => new Rule { RuleName = $"{i}", Expression = Test(e) })],
            })]))];
        }

        private static string Test(Entry entry) => string.Join(" && ", entry.Holes.Select(h => $"!({Test(h)})").Prepend($"({Test(entry.Box)})"));

        private static string Test(Box box) => box.Terms.Length == 0 ? "true" : string.Join(" && ", box.Terms.Select((t, i) =>
            $"({string.Join(" || ", Enumerable.Range(0, 64).Where(v => (box.Masks[i] >> v & 1) != 0 && v < 16).Select(v => $"c.F[{t}] == {v}"))})"));

        public int[] Rule(int k, int[] given, out string by)
        {
            var sheet = sheets[k];
            var c = new Case { F = [.. given, .. new int[sheet.Entries.Length]] };
            by = "";
            for (var stage = 0; stage < sheet.Entries.Length; stage++)
            {
                var results = engines[k].ExecuteAllRulesAsync($"stage {stage}", new RuleParameter("c", c)).AsTask().GetAwaiter().GetResult();
                var entry = sheet.Entries[stage][results.FindIndex(r => r.IsSuccess)];
                c.F[sheet.FactCount + stage] = entry.Value;
                by = sheet.Bound.Clauses[entry.Clause].Id;
            }
            return c.F[sheet.FactCount..];
        }
    }
}
