using System.Diagnostics;
using System.IO.Compression;
using Umpirage.Rules.Games;
using Umpirage.Rules.Records;

namespace Umpirage.Cli.Verbs;

internal static class ReplayVerb
{
    private const int FewEnoughToShow = 20;

    public static int Run(Request request)
    {
        var words = request.Words.ToList();
        IReadOnlyDictionary<string, FinalScore>? scores = null;
        if (words.IndexOf("--against") is >= 0 and var at && at + 1 < words.Count)
        {
            using var reader = new StreamReader(words[at + 1]);
            scores = FinalScores.Read(reader);
            words.RemoveRange(at, 2);
        }
        var to = int.MaxValue;
        if (words.IndexOf("--to") is >= 0 and var cut && cut + 1 < words.Count && int.TryParse(words[cut + 1], out to)) words.RemoveRange(cut, 2);
        if (words.Count == 0) { Console.Error.WriteLine("name a game file: ./umpirage replay demo/game.game"); return Verb.Unusable; }
        var watch = Stopwatch.StartNew();
        var games = words.SelectMany(Games).Select(g => to == int.MaxValue ? g : Upto(g, to)).ToList();
        var tally = new ScoreTally(scores);
        foreach (var game in games)
        {
            foreach (var line in tally.Add(game)) Console.WriteLine(line);
            if (scores is null && games.Count <= FewEnoughToShow) Console.WriteLine(GameSheet.Text(game, tally.Last));
        }
        var wrong = tally.Wrong;
        if (scores is not null) Console.WriteLine($"{games.Count / watch.Elapsed.TotalSeconds:N0} games a second, reading included");
        Console.WriteLine(scores is null ? $"{games.Count} games, {wrong} with something that cannot have happened" : tally.Line);
        return wrong == 0 && tally.AllEqual ? Verb.Fine : Verb.No;
    }

    /// <summary>The game up to and with one line of its file: where an upheld protest or a suspended game goes on.</summary>
    private static RecordedGame Upto(RecordedGame game, int line)
    {
        var kept = game.Events.TakeWhile(e => e.Line <= line).ToList();
        return game with { Events = kept, Marks = [.. game.Marks.Take(kept.Count)] };
    }

    private static IEnumerable<RecordedGame> Games(string file)
    {
        if (file.EndsWith(".game", StringComparison.Ordinal)) { yield return GameFile.Read(file, File.ReadAllText(file), []); yield break; }
        using var stream = File.OpenRead(file);
        using var text = new StreamReader(file.EndsWith(".gz", StringComparison.Ordinal) ? new GZipStream(stream, CompressionMode.Decompress) : stream);
        foreach (var game in EventFile.Read(text)) yield return game;
    }
}
