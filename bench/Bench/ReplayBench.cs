using System.Diagnostics;
using System.IO.Compression;
using Umpirage.Rules.Records;

namespace Umpirage.Bench;

/// <summary>How fast a public season is replayed on one core, reading included. The season lies beside the project.</summary>
internal static class ReplayBench
{
    public static void Run()
    {
        var folder = Path.Combine(Shelf.Root, "..", "shared", "data", "retrosheet");
        if (!Directory.Exists(folder)) { Console.WriteLine("replay: the public season is not here"); return; }
        using var memory = new MemoryStream();
        using (var zip = new GZipStream(File.OpenRead(Path.Combine(folder, "season2019.events.gz")), CompressionMode.Decompress)) zip.CopyTo(memory);
        var scores = new StreamReader(Path.Combine(folder, "final_scores_2019.csv")).ReadToEnd();
        string line = "";
        var once = Stopwatch.StartNew();
        Season();
        var first = once.Elapsed.TotalSeconds;
        var time = Shelf.Median(5, Season) / 1000;
        Console.WriteLine($"replay of the 2019 season (data copyrighted by Retrosheet, used with its notice): {first:F2} s the first time, {time:F2} s median of 5, {2429 / time:N0} games a second (bar 2 s)");
        Console.WriteLine($"  {line}");

        void Season()
        {
            memory.Position = 0;
            var tally = new ScoreTally(FinalScores.Read(new StringReader(scores)));
            foreach (var game in EventFile.Read(new StreamReader(memory, leaveOpen: true))) _ = tally.Add(game).Count();
            line = tally.Line;
        }
    }
}
