using Umpirage.Rules.Games;

namespace Umpirage.Rules.Records;

/// <summary>Replays recorded games and counts how many agree with a list of results.</summary>
public sealed class ScoreTally(IReadOnlyDictionary<string, FinalScore>? scores)
{
    private int games, score, line, outs, left;

    /// <summary>Games in which something stands that cannot have happened, or in which the file and the replay part ways.</summary>
    public int Wrong { get; private set; }

    public bool AllEqual => scores is null || (score == games && line == games && outs == games && left == games);

    /// <summary>The game last replayed, as far as it could be followed.</summary>
    public Game Last { get; private set; } = Game.New;

    public string Line => $"{games} games: scores {score}, line scores {line}, outs {outs}, left on base {left} equal";

    /// <summary>Replays one game; returns what is wrong with it, and where it differs from its result.</summary>
    public IEnumerable<string> Add(RecordedGame recorded)
    {
        games++;
        var said = new List<string>(recorded.Faults);
        var game = Last = Follow(recorded, said);
        if (said.Count > 0) Wrong++;
        if (scores is not null)
        {
            if (!scores.TryGetValue(recorded.Id, out var result)) said.Add("stands in no result");
            else Compare(game, result, said);
        }
        return said.Select(s => $"{recorded.Id}: {s}");
    }

    private static Game Follow(RecordedGame recorded, List<string> said)
    {
        var game = Game.New;
        var reasons = new List<string>();
        for (var i = 0; i < recorded.Events.Count; i++)
        {
            if (recorded.Marks[i] is { Inning: var inning, Side: var side } && (game.Inning, game.Batting) != (inning, side))
            {
                said.Add($"line {recorded.Events[i].Line}: the file is in {(side == Side.Visitors ? "top" : "bottom")} {inning}, the replay in {game.InWords}");
                return game;
            }
            if (Scorekeeper.Apply(game, recorded.Events[i], reasons) is not { } next)
            {
                said.AddRange(reasons.Select(r => $"line {recorded.Events[i].Line}: {r}"));
                return game;
            }
            game = next;
            if (!game.Proves) { said.Add($"line {recorded.Events[i].Line}: the scorebook does not prove"); return game; }
        }
        return game;
    }

    private void Compare(Game game, FinalScore result, List<string> said)
    {
        void Count(bool equal, ref int count, string what) { if (equal) count++; else said.Add(what); }
        var innings = Math.Max(game.Visitors.ByInning.Length, game.Home.ByInning.Length);
        var (vl, hl) = (FinalScores.Line(game.Visitors, innings), FinalScores.Line(game.Home, innings));
        var (lv, lh) = (LeftBy(game, Side.Visitors), LeftBy(game, Side.Home));
        Count((game.Visitors.Runs, game.Home.Runs) == (result.VisitorRuns, result.HomeRuns), ref score, $"score {game.Visitors.Runs} to {game.Home.Runs}, result {result.VisitorRuns} to {result.HomeRuns}");
        Count(vl == result.VisitorLine && hl == result.HomeLine, ref line, $"line score {vl} {hl}, result {result.VisitorLine} {result.HomeLine}");
        Count(game.Visitors.OutsMade + game.Home.OutsMade == result.Outs, ref outs, $"outs {game.Visitors.OutsMade + game.Home.OutsMade}, result {result.Outs}");
        Count((lv, lh) == (result.VisitorLeft, result.HomeLeft), ref left, $"left on base {lv} and {lh}, result {result.VisitorLeft} and {result.HomeLeft}");
    }

    /// <summary>Left when half-innings ended, and those still on base when the game did.</summary>
    private static int LeftBy(Game game, Side side) => game.BookOf(side).Left + (game.Batting == side ? game.OnBase : 0);
}
