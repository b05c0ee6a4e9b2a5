using Umpirage.District.Pitchers;
using Umpirage.Rules.Plays;

namespace Umpirage.Tests.Pitchers;

/// <summary>The ledger against its twin on random logs: 20,000 in every run, a million with UMPIRAGE_LONG.</summary>
public class TwinTests(ITestOutputHelper output)
{
    private static readonly string[] Codes = ["BB 9-10", "BB 11-12", "BB 13-14", "BB 15-16", "SB 12U", "SB 14U", "baseball/18U+NFHS", "baseball/12U+USSSA", "baseball/14U+USSSA"];

    private static List<Appearance> Logs(Random dice, DateOnly today)
    {
        var lines = new List<Appearance>();
        // one in six is a long outing about a limit, and nothing before it
        if (dice.Next(6) == 0) return [Arms.Line(today, dice.Next(70, 115) is var many ? many : 0, many - dice.Next(0, 9), dice.Next(3, 8), 0, dice.Next(9, 20), $"G-{today:MMdd}-1")];
        for (var back = dice.Next(0, 9); back >= 0; back--)
        {
            if (dice.Next(3) == 0) continue;
            var day = today.AddDays(-back);
            for (var game = dice.Next(1, 3); game > 0; game--)
            {
                var pitches = dice.Next(4) == 0 ? dice.Next(0, 4) : dice.Next(0, 100);
                var line = Arms.Line(day, pitches, Math.Max(0, pitches - dice.Next(0, 8)), pitches == 0 ? 0 : dice.Next(0, 8), dice.Next(4) == 0 ? dice.Next(0, 6) : 0, dice.Next(0, 20), $"G-{day:MMdd}-{2 - game}");
                if (lines.Any(l => l.Game == line.Game)) continue;
                lines.Add(line);
                if (dice.Next(6) == 0) lines.Add(line with { Counter = "visitors' book", Pitches = pitches + dice.Next(0, 4), Innings = line.Innings });
                if (dice.Next(8) == 0) lines.Add(line with { Entry = 2, Pitches = Math.Max(0, pitches - 5), BeforeLastBatter = Math.Max(0, Math.Min(line.BeforeLastBatter, pitches - 5)) });
            }
        }
        return lines;
    }

    [Fact]
    public void The_ledger_says_what_a_pencil_would()
    {
        var logs = Environment.GetEnvironmentVariable("UMPIRAGE_LONG") is null ? 20_000 : 1_000_000;
        var twins = Codes.Select(c => (Code: Arms.Code(c), Twin: new LedgerTwin(Shelf.Codes, Arms.Code(c).Code))).ToList();
        var (yes, finish, no, catching) = (0, 0, 0, 0);
        Parallel.For(0, 20, part =>
        {
            var dice = new Random(part);
            for (var i = 0; i < logs / 20; i++)
            {
                var (code, twin) = twins[dice.Next(twins.Count)];
                var lines = Logs(dice, Arms.Saturday);
                var game = lines.Count > 0 && dice.Next(2) == 0 && lines[^1].Day == Arms.Saturday ? lines[^1].Game : "G-9999";
                var underWay = dice.Next(2) == 0;
                // starts stand in the order of the games' names
                var ledger = Ledger.Of("7", lines, key => new(key, code.Code.Game, code.Code.Division, key[^1]));
                var answer = Eligible.Of(ledger, code, code, new(Arms.Saturday, new(game, code.Code.Game, code.Code.Division, 999), underWay));
                var expected = twin.MayPitch(lines, Arms.Saturday, game, underWay);
                var barred = code.ByDivision && answer.Bars.Any(b => b.Sheet == "pitching in two divisions");
                if (!barred) Assert.True(expected == answer.Answer, $"{code.Code.Address}: {expected} by the twin, {answer.Answer} by the ledger\n{string.Join('\n', lines)}\n{string.Join('\n', answer.Bars)}");
                var may = twin.MayCatch(lines, Arms.Saturday);
                Assert.True(may == (answer.NoCatching is null), $"{code.Code.Address}: catching {may}\n{string.Join('\n', lines)}");
                if (answer.Answer == MayPitch.Yes) Interlocked.Increment(ref yes); else if (answer.Answer == MayPitch.No) Interlocked.Increment(ref no); else Interlocked.Increment(ref finish);
                if (!may) Interlocked.Increment(ref catching);
            }
        });
        output.WriteLine($"ledger and twin agree on {logs} random logs: {yes} may pitch, {finish} finish the batter, {no} may not; {catching} may not catch");
        Assert.True(yes > logs / 20 && no > logs / 20 && finish > logs / 2000 && catching > logs / 100);
    }
}
