namespace Umpirage.Tests.Twin;

/// <summary>The checker and its twin judge the same random sheets, case by case.</summary>
public class TwinTests
{
    [Fact]
    public void The_checker_agrees_with_brute_force_on_random_sheets()
    {
        var (sheets, broken, cases) = (Folder.Count(2_000, 20_000), 0, 0L);
        for (var seed = 0; seed < sheets; seed++)
        {
            var random = new Random(seed);
            var model = RandomSheet.Make(random);
            var text = model.Text(random);
            var book = Shelf.Of(text);
            Assert.True(book.Findings.Count == 0, $"seed {seed}: {string.Join("\n", book.Findings)}\n{text}");
            var findings = new List<Finding>();
            var bound = book.Bind(book.Sheets.Single(), [], findings);
            Assert.True(bound is not null, $"seed {seed}: {string.Join("\n", findings)}\n{text}");
            var under = CodeSheet.Of(bound, Shelf.Code(book, "softball/12U"), findings)!;
            var table = Table.Of(under);
            var twin = new Naive(model);
            var (anyBroken, possible) = (false, 0L);
            foreach (var facts in twin.Cases())
            {
                cases++;
                var (kind, values) = twin.Judge(facts);
                anyBroken |= kind == Naive.Kind.Broken;
                possible += kind == Naive.Kind.Ruled ? 1 : 0;
                var cell = table.At(facts);
                Assert.True(kind == Naive.Kind.Ruled ? cell is not null && Same(bound, cell, values) : cell is null,
                    $"seed {seed}, case {string.Join(",", facts)}: twin {kind} {string.Join(",", values)}, table {(cell is null ? "none" : string.Join(",", cell.Values))}\n{text}");
            }
            Assert.True(anyBroken == table.Faults.Count > 0, $"seed {seed}: twin broken {anyBroken}, faults {table.Faults.Count}\n{text}");
            Assert.True(possible == table.Cases, $"seed {seed}: twin counts {possible} cases, the table {table.Cases}\n{text}");
            if (anyBroken) broken++;
        }
        // both kinds of sheet must have been tried in number, or agreement proves little
        Assert.InRange(broken, sheets / 5, sheets * 4 / 5);
        TestContext.Current.TestOutputHelper?.WriteLine($"{sheets} sheets, {broken} with a gap or a conflict, {cases} cases, all judged alike");
    }

    private static bool Same(BoundSheet bound, Cell cell, int[] values)
    {
        for (var d = 0; d < values.Length; d++)
            if (cell.Values[bound.Find($"decision {d}")!.Index - bound.FactCount] != values[d]) return false;
        return true;
    }
}
