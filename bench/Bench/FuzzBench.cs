using System.Diagnostics;
using System.Runtime.InteropServices;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Plays;
using Umpirage.Tests.Twin;

namespace Umpirage.Bench;

/// <summary>A million scrambled inputs of up to 64 kB: sheets, layers and plays. Counts exceptions and finds the slowest in CPU time.</summary>
internal static class FuzzBench
{
    public static void Run()
    {
        var count = int.Parse(Environment.GetEnvironmentVariable("FUZZ") ?? "1000000");
        var first = int.Parse(Environment.GetEnvironmentVariable("FUZZ_FROM") ?? "0");
        var book = Shelf.Read();
        var roster = ("roster.txt", File.ReadAllText(Path.Combine(Shelf.Root, "codes", "roster.txt")));
        string[] Texts(string folder, string pattern) => [.. Directory.EnumerateFiles(Path.Combine(Shelf.Root, folder), pattern, SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(File.ReadAllText)];
        var (sheets, layers, plays) = (Texts("codes", "*.sheet"), Texts("codes", "*.layer"), Texts("casebook", "*.play"));
        var (slowest, slowestSeed, exceptions, size) = (0.0, -1, 0, 0L);
        var sync = new object();
        Parallel.For(first, first + count, new ParallelOptions { MaxDegreeOfParallelism = 2 }, seed =>
        {
            var random = new Random(seed);
            var (kind, text) = (seed % 8) switch
            {
                7 => (2, Scramble.Of(random, plays, 65_536)),
                6 => (1, Scramble.Of(random, layers, 65_536)),
                _ => (0, Scramble.Of(random, sheets, 65_536)),
            };
            void Act()
            {
                switch (kind)
                {
                    case 2: Casebook.Hold(book, PlayReader.Read("fuzz.play", text, []), Shelf.Day); break;
                    case 1: Checker.Check(Codebook.Read(roster, [("a.sheet", sheets[seed % sheets.Length]), ("b.layer", text)]), ["no such sheet"]); break;
                    default: Checker.Check(Codebook.Read(roster, [("a.sheet", text)])); break;
                }
            }
            var spent = 0.0;
            try
            {
                var watch = Stopwatch.StartNew();
                Act();
                spent = watch.Elapsed.TotalMilliseconds;
                // a slow one may only have waited for the processor: measured again, its own processor time counts
                if (spent > 40) spent = ProcessorTime(Act);
            }
            catch (Exception fault)
            {
                lock (sync) if (exceptions++ < 5) Console.WriteLine($"  seed {seed}: {fault.GetType().Name}: {fault.Message} {fault.StackTrace?.Split('\n').FirstOrDefault()}");
            }
            lock (sync)
            {
                size += text.Length;
                if (spent > slowest) (slowest, slowestSeed) = (spent, seed);
                if (spent > 60) Console.WriteLine($"  seed {seed}: {spent:F0} ms, kind {kind}, {text.Length} characters");
            }
        });
        Console.WriteLine($"fuzz: {count:N0} scrambled sheets, layers and plays, {size / 1e6:N0} MB, up to 64 kB each: {exceptions} exceptions; slowest {slowest:F0} ms (seed {slowestSeed}; bar 100 ms)");
    }

    /// <summary>Milliseconds of processor time of this thread alone, the least of three runs.</summary>
    private static double ProcessorTime(Action act)
    {
        var least = double.MaxValue;
        for (var run = 0; run < 3; run++)
        {
            var before = Clock();
            act();
            least = Math.Min(least, Clock() - before);
        }
        return least;
    }

    private static double Clock()
    {
        const int ThreadCpuTime = 3;
        clock_gettime(ThreadCpuTime, out var time);
        return time.Seconds * 1e3 + time.Nanoseconds / 1e6;
    }

    private struct Time { public long Seconds, Nanoseconds; }

    [DllImport("libc")]
    private static extern int clock_gettime(int clock, out Time time);
}
