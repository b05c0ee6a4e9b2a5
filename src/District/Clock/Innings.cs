using NodaTime;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clock;

/// <summary>Asks the sheets on game length what a moment of the game means.</summary>
internal static class Innings
{
    /// <summary>What becomes of the game if it is stopped for good now.</summary>
    public static StopOutcome IfStopped(GameSoFar game, ClockRules rules, List<Finding> findings)
    {
        var ruling = SheetRuling.Of(rules.Regulation, [.. Facts(game), "play is stopped for good"], findings);
        var outcomes = ruling.Values("game");
        return new(ruling.Values("enough played"), outcomes, [.. outcomes.Select(o => ClockWords.Score(o, game.Now, game.AtLastEven))], ruling);
    }

    /// <summary>Whether the last inning is complete and the game over, whatever the clock says.</summary>
    public static bool IsOver(GameSoFar game, ClockRules rules, List<Finding> findings) =>
        game.FirstPitch is not null && SheetRuling.Of(rules.Regulation, [.. Facts(game), .. Nothing(game), "play is goes on"], findings).Is("game", "over");

    /// <summary>The sheet 'time limit' on this moment: of the hard stop when it is past, otherwise of the last new inning; null without a limit.</summary>
    public static SheetRuling? TimeLimit(GameSoFar game, ClockRules rules, Instant? last, Instant? hard, StopOutcome outcome, List<Finding> findings)
    {
        if (rules.NoNewInningAfter is null && rules.HardStopAfter is null) return null;
        var stopped = hard <= game.At;
        // at the very minute of the limit a new inning may still begin
        var ran = stopped ? hard : last < game.At ? last : null;
        List<string> given = [$"kind of limit is {(stopped ? "drop dead" : rules.OneMoreInning ? "finish plus one" : "no new inning")}"];
        if (ran is null) given.Add("time ran out is not yet");
        else
        {
            var (half, begun) = game.HalfAt(ran.Value, rules.InningBeginsAtTheLastOut);
            var inning = begun ? half.Inning : half.Inning - 1;
            given.Add($"time ran out is in the {(begun && !half.Bottom ? "visitors'" : "home")} half");
            given.Add($"now is {(game.Completed < inning ? "in that inning" : game.Completed > inning ? "one more inning is complete" : "that inning is complete")}");
        }
        given.Add($"half is {(game.Half.Bottom ? "home side to bat" : "visitors batting")}");
        if (game.Now is { } now) given.Add($"score is {now.Standing}");
        if (outcome.Official is [var enough]) given.Add($"short game played is {enough}");
        return SheetRuling.Of(rules.TimeLimit, given, findings);
    }

    private static List<string> Facts(GameSoFar game)
    {
        List<string> facts = [$"innings both sides completed is {Math.Min(40, game.Completed)}"];
        facts.Add(game.Half.Bottom ? "since then is visitors' turn over" : "since then is nothing more or visitors at bat");
        if (game.AtLastEven is { } even) facts.Add($"score at the last even inning is {even.Standing}");
        if (game.Now is { } now) facts.Add($"score now is {now.Standing}");
        return facts;
    }

    private static IEnumerable<string> Nothing(GameSoFar game) => game is { LastHalf: not null, Half.Bottom: false, PlayedSince: false } ? ["since then is nothing more"] : [];
}
