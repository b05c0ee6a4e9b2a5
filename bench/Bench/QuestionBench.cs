using Umpirage.Rules.Codes;
using Umpirage.Rules.Plays;

namespace Umpirage.Bench;

/// <summary>How long it takes to choose the first question, when nothing is known yet: the slowest moment of a session.</summary>
internal static class QuestionBench
{
    public static void Run()
    {
        var book = Shelf.Read();
        var times = new List<(string Sheet, double Time, int Lines)>();
        foreach (var sheet in book.Sheets)
        {
            var table = Table.Of(Shelf.Under(book, sheet.Name, $"{sheet.OnlyFor ?? "softball"}/12U"));
            var nothing = Situation.Unknown(table.Sheet);
            times.Add((sheet.Name, Shelf.Median(5, () => Questions.Next(table, nothing)), table.Cells.Count));
        }
        times = [.. times.OrderByDescending(t => t.Time)];
        Console.WriteLine($"next question with nothing known, over {times.Count} sheets: median {times[times.Count / 2].Time:F2} ms, slowest {times[0].Time:F2} ms ({times[0].Sheet}, {times[0].Lines} lines; bar 5 ms)");
        foreach (var (sheet, time, lines) in times.Take(4)) Console.WriteLine($"  {sheet}: {time:F2} ms, {lines} lines");
    }
}
