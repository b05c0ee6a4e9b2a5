using System.Text.Json;
using System.Text.RegularExpressions;
using CsCheck;
using Umpirage.District.Clock;

namespace Umpirage.Tests.Clock;

/// <summary>Laws of every clock, tried on random evenings.</summary>
public partial class ClockLawTests
{
    private static readonly string[] Signs = ["thunder", "flash", "flash to the ground", "flash in the clouds", "detector warning", "not before 20:30", "not before 19:15", "field fit", "field not fit", "heat 90 F 40 %", "note a word"];

    private static readonly Codebook Strict = Shelf.Codes, Loose = Evening.With(("lightning", "flash in the clouds", "does not stop play"));

    /// <summary>A game that can have been, with stops and a stop for good or without.</summary>
    private static readonly string[][] Games =
    [
        ["17:32 first pitch"],
        ["17:32 first pitch", "17:50 inning 1 top over, 1-0", "18:05 inning 1 bottom over, 1-1", "18:20 play stopped: rain", "18:40 play resumed", "18:50 score 2-1", "18:55 inning 2 top over, 2-1", "19:00 play stopped: injury"],
        ["17:32 first pitch", "18:20 play stopped: storm", "18:55 play resumed", "19:00 play stopped: ordered", "19:20 stopped for good"],
        [],
    ];

    private static readonly Gen<List<string>> Added =
        Gen.Select(Gen.Int[17 * 60, 19 * 60 + 10], Gen.Int[0, Signs.Length - 1]).Select((minute, sign) => $"{minute / 60:00}:{minute % 60:00} {Signs[sign]}").List[0, 8];

    [GeneratedRegex(@"\(line \d+\)")]
    private static partial Regex Line();

    private static string Code(Codebook book) => book == Strict ? "BB-12" : Evening.Hamlet;

    private static string Text(Codebook book, IEnumerable<string> lines) => Evening.Head(Code(book)) + string.Join('\n', lines) + "\n";

    [Fact]
    public void The_wait_never_gets_shorter_by_more_events() =>
        Gen.Select(Gen.Int[0, Games.Length - 1], Added, Added, Gen.Bool, Gen.Int[17 * 60, 21 * 60]).Sample((game, some, more, strict, minute) =>
        {
            var book = strict ? Strict : Loose;
            List<string> fewer = [.. Games[game], "17:00 note a word", .. some];
            var time = $"{minute / 60:00}:{minute % 60:00}";
            var (before, after) = (Evening.At(Text(book, fewer), time, book).Storm, Evening.At(Text(book, [.. fewer, .. more]), time, book).Storm);
            Assert.False(before.MustBeStopped && !after.MustBeStopped);
            if (before.EarliestRestart is { } restart) Assert.True(after.EarliestRestart!.At >= restart.At);
        }, iter: Folder.Count(300, 5_000));

    [Fact]
    public void As_long_as_the_wait_lasts_no_answer_says_play() =>
        Gen.Select(Gen.Int[0, Games.Length - 1], Added, Gen.Int[17 * 60, 21 * 60]).Sample((game, some, minute) =>
        {
            var reading = Evening.At(Text(Strict, [.. Games[game], "17:00 note a word", .. some]), $"{minute / 60:00}:{minute % 60:00}");
            if (!reading.Storm.MustBeStopped) return;
            Assert.Contains(ClockWords.Shelter, reading.DoNow);
            Assert.DoesNotContain(reading.DoNow, d => d.StartsWith("Play on", StringComparison.Ordinal) || d.StartsWith("Play may", StringComparison.Ordinal) || d.StartsWith("Nothing stands", StringComparison.Ordinal));
            if (reading.Storm.Ruling is { } ruling) Assert.False(ruling.MayBe("play", "may start again") || ruling.MayBe("play", "goes on"), string.Join("; ", ruling.Ruling));
        }, iter: Folder.Count(300, 5_000));

    [Fact]
    public void The_order_of_lines_does_not_matter() =>
        Gen.Select(Gen.Int[0, Games.Length - 1], Added, Gen.Int[0, 1_000_000]).Sample((game, some, seed) =>
        {
            List<string> lines = [.. Evening.Head(more: "dark: 20:00").Split('\n'), .. Games[game], "17:00 note a word", .. some];
            var shuffled = lines.ToArray();
            new Random(seed).Shuffle(shuffled);
            Assert.Equal(Told(lines), Told(shuffled));
        }, iter: Folder.Count(300, 5_000));

    private static string Told(IEnumerable<string> lines) => Line().Replace(JsonSerializer.Serialize(Evening.At(string.Join('\n', lines), "19:05")), "");
}
