using Umpirage.Rules.Games;

namespace Umpirage.Rules.Records;

/// <summary>What a public list of results says of a game.</summary>
public sealed record FinalScore(string Id, int VisitorRuns, int HomeRuns, int Outs, string VisitorLine, string HomeLine, int VisitorLeft, int HomeLeft);

/// <summary>Reads a list of results by its column names, and holds replayed games against it.</summary>
public static class FinalScores
{
    /// <summary>Throws <see cref="InvalidDataException"/> when a column is missing or a number cannot be read.</summary>
    public static IReadOnlyDictionary<string, FinalScore> Read(TextReader text)
    {
        var names = text.ReadLine()?.Split(',') ?? [];
        int At(string name) => Array.IndexOf(names, name) is >= 0 and var at ? at : throw new InvalidDataException($"the list of results has no column '{name}'");
        var (id, vr, hr, outs, vl, hl, vb, hb) = (At("game_id"), At("visitor_runs"), At("home_runs"), At("outs"), At("innings_line_visitor"), At("innings_line_home"), At("visitor_LOB"), At("home_LOB"));
        var scores = new Dictionary<string, FinalScore>();
        while (text.ReadLine() is { } line)
        {
            var f = line.Split(',');
            if (f.Length < names.Length) continue;
            scores[f[id]] = new(f[id], Number(vr), Number(hr), Number(outs), f[vl], f[hl], Number(vb), Number(hb));

            int Number(int column) => int.TryParse(f[column], out var value) ? value : throw new InvalidDataException($"{f[id]}: '{f[column]}' in the column '{names[column]}' is no number");
        }
        return scores;
    }

    /// <summary>A line score as printed: a digit an inning, ten and more in brackets, x for a half-inning that was not needed.</summary>
    public static string Line(Book book, int innings)
    {
        var line = string.Concat(book.ByInning.Select(r => r < 10 ? r.ToString() : $"({r})"));
        return book.ByInning.Length < innings ? line + "x" : line;
    }
}
