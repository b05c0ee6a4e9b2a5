using System.Diagnostics;
using Umpirage.District.Diamonds;
using Umpirage.Paper;

namespace Umpirage.Bench;

/// <summary>Every diamond of the demonstration district for every division its leagues play: laid out, drawn and printed.</summary>
internal static class DiamondBench
{
    public static void Run()
    {
        var book = Shelf.Read();
        var divisions = book.Roster.PlayedAs.Values.Distinct().ToList();
        // the tables of the demonstration hold one line a diamond
        var diamonds = File.ReadLines(Path.Combine(Shelf.Root, "demo", "oslemoor", "diamonds.csv")).Count(l => l != "" && l[0] != '#') - 1;
        long bytes = 0;
        var watch = Stopwatch.StartNew();
        for (var d = 0; d < diamonds; d++)
            foreach (var division in divisions)
            {
                var layout = Layout.Of(Shelf.Code(book, division), [])!;
                bytes += PlanSvg.Of(layout, Window.Infield(layout)).Length + PlanDxf.Of(layout).Length + PlanPdf.Of(layout).Length;
            }
        var sheets = diamonds * divisions.Count;
        Console.WriteLine($"diamonds: {diamonds} x {divisions.Count} divisions laid out, drawn (SVG, DXF) and printed (PDF of 6 pages): {sheets / watch.Elapsed.TotalSeconds:F0} plans a second, {bytes / 1e6:F1} MB");
    }
}
