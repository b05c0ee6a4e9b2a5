using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Bench;

/// <summary>How long a whole crossover takes: every sheet, both games.</summary>
internal static class CrossoverBench
{
    public static void Run()
    {
        var book = Shelf.Read();
        var (here, there) = (Shelf.Code(book, "softball/12U"), Shelf.Code(book, "baseball/12U"));
        var findings = new List<Finding>();
        var differences = Crossover.Of(book, here, there, findings);
        var time = Shelf.Median(9, () => Crossover.Of(book, here, there, []));
        Console.WriteLine($"crossover softball 12U / baseball 12U, {differences.Count} sheets, {differences.Sum(d => d.Rulings.Count)} ruling lines, {differences.Sum(d => d.Values.Count)} values: {time:F1} ms median of 9 (bar 50 ms)");
        var longest = differences.Where(d => d.OnlyIn is null).Select(d => (d.Sheet.Name, Time: Shelf.Median(3, () => Crossover.Of(d.Sheet, Under(book, d.Sheet, here), Under(book, d.Sheet, there))))).OrderByDescending(d => d.Time).Take(3);
        foreach (var (name, ms) in longest) Console.WriteLine($"  {name}: {ms:F1} ms");
    }

    private static CodeSheet Under(Codebook book, Sheet sheet, Code code) => CodeSheet.Of(book.Bind(sheet, [], [])!, code, [])!;
}
