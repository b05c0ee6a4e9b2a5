using System.Numerics;
using CsCheck;
using Umpirage.Tests.Twin;

namespace Umpirage.Tests.Laws;

/// <summary>Laws that hold of every code and every sheet, tried on our own sheets and on random ones.</summary>
public class LawTests
{
    private static IEnumerable<Table> Tables(string division = "12U") =>
        Shelf.Codes.Sheets.Select(s => Shelf.Table($"{s.OnlyFor ?? "softball"}/{division}", s.Name));

    [Fact]
    public void The_order_of_rules_never_changes_a_ruling()
    {
        for (var seed = 0; seed < Folder.Count(300, 3_000); seed++)
        {
            var model = RandomSheet.Make(new Random(seed));
            // the text puts rules and exceptions in a random order each time it is written
            var (one, two) = (Worked(model.Text(new Random(1))), Worked(model.Text(new Random(2))));
            foreach (var facts in new Naive(model).Cases())
                Assert.Equal(Said(one, facts), Said(two, facts));
        }

        static Table Worked(string text)
        {
            var book = Shelf.Of(text);
            return Table.Of(CodeSheet.Of(book.Bind(book.Sheets.Single(), [], [])!, Shelf.Code(book, "softball/12U"), [])!);
        }

        static string Said(Table table, int[] facts) => table.At(facts) is { } cell
            ? string.Join(";", table.Sheet.Bound.Decisions.Select((d, i) => $"{d.Name}={d.Values[cell.Values[i]]}").Order()) : "none";
    }

    [Fact]
    public void The_lines_of_a_table_are_every_case_once()
    {
        foreach (var table in Tables())
        {
            var random = new Random(3);
            for (var n = 0; n < 50; n++)
            {
                var facts = Enumerable.Range(0, table.Sheet.FactCount).Select(t => Pick(random, table.Sheet.Domain[t])).ToArray();
                var lines = table.Cells.Count(c => c.Facts.Select((m, t) => (m >> facts[t] & 1) != 0).All(x => x));
                Assert.Equal(table.At(facts) is null ? 0 : 1, lines);
            }
        }
    }

    [Fact]
    public void More_facts_never_add_a_ruling() => Gen.Int[0, 1_000_000].Sample(seed =>
    {
        var random = new Random(seed);
        var sheets = Shelf.Codes.Sheets.ToList();
        var sheet = sheets[random.Next(sheets.Count)];
        var table = Shelf.Table($"{sheet.OnlyFor ?? "baseball"}/14U", sheet.Name);
        var situation = Situation.Unknown(table.Sheet);
        var cell = table.Cells[random.Next(table.Cells.Count)];
        HashSet<string>? before = null;
        foreach (var fact in Enumerable.Range(0, table.Sheet.FactCount).OrderBy(_ => random.Next()))
        {
            situation = situation.With(fact, 1UL << Pick(random, cell.Facts[fact]));
            var now = Umpire.Lines(table, situation).Select(c => string.Join(",", c.Values)).ToHashSet();
            if (before is not null) Assert.Subset(before, now);
            before = now;
        }
        Assert.Single(before!);
    }, iter: Folder.Count(300, 5_000), threads: 1);

    [Fact]
    public void A_ruling_is_the_one_every_rule_asked_in_turn_gives()
    {
        foreach (var table in Tables("18U"))
        {
            var random = new Random(11);
            for (var n = 0; n < 30; n++)
            {
                var cell = table.Cells[random.Next(table.Cells.Count)];
                var all = new int[table.Sheet.Terms.Count];
                for (var t = 0; t < table.Sheet.FactCount; t++) all[t] = Pick(random, cell.Facts[t]);
                for (var d = 0; d < table.Sheet.Entries.Length; d++)
                {
                    var values = table.Sheet.Entries[d].Where(e => e.Holds(all)).Select(e => e.Value).Distinct().ToList();
                    Assert.Equal([cell.Values[d]], values);
                    all[table.Sheet.FactCount + d] = values[0];
                }
            }
        }
    }

    [Fact]
    public void A_change_that_would_turn_a_ruling_turns_it()
    {
        foreach (var table in Tables())
        {
            var random = new Random(5);
            var cell = table.Cells[random.Next(table.Cells.Count)];
            var situation = Situation.Unknown(table.Sheet);
            for (var t = 0; t < table.Sheet.FactCount; t++) situation = situation.With(t, 1UL << Pick(random, cell.Facts[t]));
            var now = Umpire.Rule(table, situation);
            foreach (var change in WhatIf.Nearest(now))
            {
                var changed = situation;
                foreach (var had in change.Had) changed = changed.With(had.Fact.Index, 1UL << had.Fact.ValueIndex(had.Value));
                var then = Umpire.Rule(table, changed);
                Assert.True(then.IsRuled);
                Assert.NotEqual(now.InWords, then.InWords);
            }
        }
    }

    [Fact]
    public void A_layer_that_fills_a_value_rules_as_a_sheet_with_that_value_would()
    {
        var text = File.ReadAllText(Folder.Of("tests", "Tests", "Codes", "good", "leaving-early.sheet"));
        const string Layer = "Layer: Hilltop\nkind: league\ntitle: Hilltop options\nSheet: leaving early\nSet earliest departure\n  softball = before release | by-laws 1 | our own\n";
        var layered = Codebook.Read(("roster.txt", Shelf.RosterText), [("a.sheet", text), ("b.layer", Layer)]);
        var copied = Shelf.Of(text.Replace("softball = after release |", "softball = before release |"));
        var (one, two) = (Shelf.Table("softball/12U+Hilltop", "leaving early", layered), Shelf.Table("softball/12U", "leaving early", copied));
        Assert.Equal(two.Cells.Select(c => string.Join(",", c.Facts) + ":" + string.Join(",", c.Values)), one.Cells.Select(c => string.Join(",", c.Facts) + ":" + string.Join(",", c.Values)));
        Assert.Equal("Hilltop options", one.Sheet.Values.Values.First(v => v.Value == "before release").Layer);
    }

    [Fact]
    public void An_exception_changes_rulings_only_inside_its_rule()
    {
        var tried = 0;
        for (var seed = 0; seed < 2_000 && tried < Folder.Count(200, 1_000); seed++)
        {
            var model = RandomSheet.Make(new Random(seed));
            var at = model.Laws.FindIndex(l => l.Parent >= 0);
            if (at < 0 || model.Decisions.Count > 1 || model.Laws.Any(l => l.Beats.Count > 0)) continue;
            tried++;
            var (exception, parent) = (model.Laws[at], model.Laws[model.Laws[at].Parent]);
            var twin = new Naive(model);
            var with = twin.Cases().Select(c => (Case: c, Ruling: twin.Judge(c))).ToList();
            exception.Then.Clear(); // a law that says nothing is as good as none, and keeps the numbers of the others
            var without = new Naive(model);
            foreach (var (facts, ruling) in with)
            {
                var bare = without.Judge(facts);
                if (ruling.Kind == bare.Kind && ruling.Values.SequenceEqual(bare.Values)) continue;
                Assert.True(parent.When.All(t => Fits(t, facts)) && exception.When.All(t => Fits(t, facts)));
            }
        }
        Assert.True(tried > 50);

        static bool Fits(RandomSheet.Test test, int[] facts) => test.Op switch
        {
            "is" => test.Values.Contains(facts[test.Term]), "is not" => !test.Values.Contains(facts[test.Term]), "is before" => facts[test.Term] < test.Values[0],
            "is after" => facts[test.Term] > test.Values[0], "is at least" => facts[test.Term] >= test.Values[0], _ => facts[test.Term] <= test.Values[0],
        };
    }

    [Fact]
    public void A_pack_read_back_rules_every_line_as_the_table_does()
    {
        foreach (var address in new[] { "softball/12U@2026-05-16", "baseball/18U+NFHS@2019-04-01" })
        {
            var findings = new List<Finding>();
            var code = Casebook.Code(Shelf.Codes, address, Shelf.Today, _ => { })!;
            var pack = Pack.Of(Shelf.Codes, code, findings);
            Assert.Empty(findings);
            var back = Pack.Read(pack.Write());
            Assert.Equal(pack.Address, back.Address);
            var random = new Random(1);
            foreach (var packed in back.Sheets)
            {
                var table = Shelf.Table(address, packed.Name);
                foreach (var cell in table.Cells)
                {
                    var facts = cell.Facts.Select(m => Pick(random, m)).ToArray();
                    var outcome = packed.At(facts)!;
                    for (var d = 0; d < cell.Values.Length; d++) Assert.Equal((cell.Values[d], cell.Clauses[d]), (outcome[2 * d], outcome[2 * d + 1]));
                }
                Assert.Equal(table.Sheet.Bound.Facts.Select(f => f.Term.Question), packed.Facts.Select(f => f.Question));
            }
        }
    }

    [Fact]
    public void Bytes_that_are_no_pack_are_refused() => Assert.Throws<InvalidDataException>(() => Pack.Read([1, 2, 3, 4]));

    private static int Pick(Random random, ulong mask)
    {
        var values = Enumerable.Range(0, 64).Where(v => (mask >> v & 1) != 0).ToList();
        return values[random.Next(values.Count)];
    }
}
