namespace Umpirage.Tests.Codes;

/// <summary>The crossover between the two games at 12U, held against every case of every sheet that both games share.</summary>
public class CrossoverTests
{
    private static (IReadOnlyList<SheetDifference> Differences, List<Finding> Findings) Compare(string here, string there)
    {
        var findings = new List<Finding>();
        return (Crossover.Of(Shelf.Codes, Shelf.Code(Shelf.Codes, here), Shelf.Code(Shelf.Codes, there), findings), findings);
    }

    [Theory]
    [InlineData("softball/12U@2026-05-16", "baseball/12U@2026-05-16")]
    [InlineData("softball/18U+NFHS@2017-04-01", "softball/18U+NFHS@2026-04-01")]
    [InlineData("baseball/18U+OBR@2026-05-16", "baseball/18U+NFHS@2026-05-16")]
    public void Every_case_that_differs_stands_in_a_line_and_every_line_is_true(string here, string there)
    {
        var (differences, findings) = Compare(here, there);
        Assert.Empty(findings);
        var (cases, differing) = (0L, 0L);
        foreach (var difference in differences.Where(d => d.OnlyIn is null))
        {
            var (one, two) = (Shelf.Table(here, difference.Sheet.Name), Shelf.Table(there, difference.Sheet.Name));
            var used = new HashSet<RulingDifference>();
            foreach (var facts in Cases(one, two))
            {
                if (one.At(facts) is not { } a || two.At(facts) is not { } b) continue;
                cases++;
                var said = Enumerable.Range(0, a.Values.Length).Where(d => one.Sheet.Terms[one.Sheet.FactCount + d].Own).ToList();
                var first = said.FirstOrDefault(d => a.Values[d] != b.Values[d], -1);
                // a decision taken over from another sheet is told in that sheet's own part
                if (Enumerable.Range(0, first < 0 ? 0 : first).Any(d => a.Values[d] != b.Values[d])) continue;
                if (first < 0) continue;
                differing++;
                var decision = one.Sheet.Terms[one.Sheet.FactCount + first];
                var line = difference.Rulings.FirstOrDefault(r => r.Decision == decision.Name && Covers(r.Space, one, facts, a)
                    && r.Here == decision.Values[a.Values[first]] && r.There == decision.Values[b.Values[first]]);
                Assert.True(line is not null, $"{difference.Sheet.Name}: {string.Join(", ", facts.Select((v, t) => $"{one.Sheet.Terms[t].Name} is {one.Sheet.Terms[t].Values[v]}"))}: {decision.Name} differs and no line says so");
                // no other line may cover this case for this decision with something else
                foreach (var other in difference.Rulings.Where(r => r.Decision == decision.Name && Covers(r.Space, one, facts, a)))
                    Assert.Equal((line!.Here, line.There), (other.Here, other.There));
                used.UnionWith(difference.Rulings.Where(r => r.Decision == decision.Name && Covers(r.Space, one, facts, a)));
            }
        }
        Assert.True(differing > 0);
        TestContext.Current.TestOutputHelper?.WriteLine($"{here} / {there}: {cases:N0} cases enumerated, {differing:N0} differ first in an own decision, every one in a line");
    }

    [Fact]
    public void A_case_ruled_alike_stands_in_no_line_for_that_decision()
    {
        var (differences, _) = Compare("softball/12U@2026-05-16", "baseball/12U@2026-05-16");
        foreach (var difference in differences.Where(d => d.OnlyIn is null && d.Rulings.Count > 0))
        {
            var (one, two) = (Shelf.Table("softball/12U@2026-05-16", difference.Sheet.Name), Shelf.Table("baseball/12U@2026-05-16", difference.Sheet.Name));
            foreach (var facts in Cases(one, two))
            {
                if (one.At(facts) is not { } a || two.At(facts) is not { } b || !a.Values.SequenceEqual(b.Values)) continue;
                Assert.DoesNotContain(difference.Rulings, r => Covers(r.Space, one, facts, a));
            }
        }
    }

    [Fact]
    public void A_code_compared_with_itself_shows_nothing() =>
        Assert.All(Compare("softball/14U@2026-05-16", "softball/14U@2026-05-16").Differences, d => Assert.True(d.Same));

    [Fact]
    public void The_leap_became_legal_between_two_editions()
    {
        // NFHS release of 12 July 2023: from 2024 both feet may be off the ground
        var (differences, _) = Compare("softball/18U+NFHS@2023-04-01", "softball/18U+NFHS@2024-04-01");
        Assert.Contains(differences, d => d.Sheet.Name == "delivery" && d.Rulings.Count > 0);
    }

    /// <summary>Every case of a sheet, fact by fact; of very large ones each line's corners, so that every line of either table is still seen.</summary>
    private static IEnumerable<int[]> Cases(Table one, Table two)
    {
        var domain = one.Sheet.Domain.Take(one.Sheet.FactCount).ToArray();
        var size = domain.Aggregate(1.0, (n, d) => n * System.Numerics.BitOperations.PopCount(d));
        Assert.True(size < 3_000_000, $"{one.Sheet.Bound.Sheet.Name} has {size:N0} cases");
        var values = domain.Select(d => Enumerable.Range(0, 64).Where(v => (d >> v & 1) != 0).ToArray()).ToArray();
        var at = new int[domain.Length];
        while (true)
        {
            yield return [.. at.Select((i, t) => values[t][i])];
            var t0 = 0;
            while (t0 < at.Length && ++at[t0] == values[t0].Length) at[t0++] = 0;
            if (t0 == at.Length) yield break;
        }
    }

    private static bool Covers(ulong[] space, Table table, int[] facts, Cell cell)
    {
        for (var t = 0; t < facts.Length; t++) if ((space[t] >> facts[t] & 1) == 0) return false;
        for (var d = 0; d < cell.Values.Length; d++)
        {
            // decisions from the line's own on are not part of its situation
            var term = table.Sheet.FactCount + d;
            if (space[term] != table.Sheet.Domain[term] && (space[term] >> cell.Values[d] & 1) == 0) return false;
        }
        return true;
    }
}
