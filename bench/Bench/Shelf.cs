using System.Diagnostics;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Bench;

/// <summary>The project's codes, and a stopwatch that reports the median of several runs.</summary>
internal static class Shelf
{
    public static string Root { get; } = Find();
    public static DateOnly Day { get; } = new(2026, 5, 16);

    public static Codebook Read()
    {
        var codes = Path.Combine(Root, "codes");
        return Codebook.Read(("roster.txt", File.ReadAllText(Path.Combine(codes, "roster.txt"))),
            Directory.EnumerateFiles(codes, "*.*", SearchOption.AllDirectories).Where(f => f.EndsWith(".sheet", StringComparison.Ordinal) || f.EndsWith(".layer", StringComparison.Ordinal))
                .Order(StringComparer.Ordinal).Select(f => new SourceText(Path.GetFileName(f), File.ReadAllText(f))));
    }

    public static Codebook Of(string text) => Codebook.Read(("roster.txt", File.ReadAllText(Path.Combine(Root, "codes", "roster.txt"))), [("made-up.sheet", text)]);

    public static Code Code(Codebook book, string address) => Rules.Codes.Code.Of(book, CodeAddress.Read(address)!, Day, []) ?? throw new InvalidOperationException(address);

    public static CodeSheet Under(Codebook book, string sheet, string address) =>
        CodeSheet.Of(book.Bind(book.Sheet(sheet)!, [], [])!, Code(book, address), []) ?? throw new InvalidOperationException(sheet);

    /// <summary>Milliseconds: the median of several runs after two to warm up.</summary>
    public static double Median(int runs, Action act)
    {
        act();
        act();
        var times = new double[runs];
        for (var i = 0; i < runs; i++)
        {
            var watch = Stopwatch.StartNew();
            act();
            times[i] = watch.Elapsed.TotalMilliseconds;
        }
        Array.Sort(times);
        return times[runs / 2];
    }

    private static string Find()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
            if (File.Exists(Path.Combine(at.FullName, "Umpirage.slnx"))) return at.FullName;
        throw new InvalidOperationException("run inside the project's folder");
    }
}
