using System.Diagnostics;
using System.Text;
using Umpirage.Rules.Codes;

namespace Umpirage.Bench;

/// <summary>How long a proof takes: both whole codes, and a made-up sheet of 60 facts and 2,000 rules.</summary>
internal static class CheckBench
{
    public static void Run()
    {
        var watch = Stopwatch.StartNew();
        var cold = Checker.Check(Shelf.Read()).Count;
        var first = watch.Elapsed.TotalMilliseconds;
        var warm = Shelf.Median(5, () => Checker.Check(Shelf.Read()));
        Console.WriteLine($"check, both whole codes: {first:F0} ms the first time, reading and start-up of the code included; {warm:F0} ms median of 5 ({Shelf.Read().Sheets.Count} sheets, {cold} findings; bar 2,000 ms)");

        var text = MadeUp(60, 2000, 1);
        var book = Shelf.Of(text);
        var under = Shelf.Under(book, "made up", "softball/12U");
        var table = Table.Of(under);
        var split = Shelf.Median(5, () => Table.Of(under));
        var whole = Shelf.Median(3, () => Checker.Check(Shelf.Of(text)));
        Console.WriteLine($"check, made-up sheet of 60 facts and 2,000 rules: {whole:F0} ms reading, binding and proving in both games; {split:F0} ms the proof of one code ({table.Cells.Count} lines, {table.Faults.Count} faults, {table.Work:N0} steps; bar 1,000 ms)");
    }

    /// <summary>A sheet that splits the space of its facts at random into as many parts as it has rules: no gap, no conflict.</summary>
    public static string MadeUp(int facts, int rules, int seed)
    {
        var random = new Random(seed);
        var sizes = Enumerable.Range(0, facts).Select(_ => random.Next(2, 5)).ToArray();
        var parts = new List<ulong[]> { sizes.Select(s => (1UL << s) - 1).ToArray() };
        while (parts.Count < rules)
        {
            var at = random.Next(parts.Count);
            var fact = random.Next(facts);
            var mask = parts[at][fact];
            if (System.Numerics.BitOperations.PopCount(mask) < 2) continue;
            var one = mask & (ulong)random.Next(1, 16);
            if (one == 0 || one == mask) continue;
            var other = (ulong[])parts[at].Clone();
            parts[at][fact] = one;
            other[fact] = mask & ~one;
            parts.Add(other);
        }
        var text = new StringBuilder("Sheet: made up\ngroup: field\nabout: nothing.\nFacts\n");
        for (var f = 0; f < facts; f++) text.Append($"  f{f} : {string.Join(" | ", Enumerable.Range(0, sizes[f]).Select(v => "v" + v))}\n    ask: What?\n");
        text.Append("Decides\n  d : a | b | c\n");
        for (var r = 0; r < rules; r++)
        {
            text.Append($"Rule R{r}: made up\n  cite: made up | our own\n  when ");
            text.Append(string.Join("\n   and ", Enumerable.Range(0, facts).Where(f => parts[r][f] != (1UL << sizes[f]) - 1)
                .Select(f => $"f{f} is {string.Join(" or ", Enumerable.Range(0, sizes[f]).Where(v => (parts[r][f] >> v & 1) != 0).Select(v => "v" + v))}")));
            text.Append($"\n  then d is {"abc"[random.Next(3)]}\n");
        }
        return text.ToString();
    }
}
