using System.Globalization;
using Umpirage.Rules.Games;
using Umpirage.Rules.Ground;

namespace Umpirage.Rules.Calls;

/// <summary>
/// Reads how a game stood before a play, a fact or several a line: "bottom 3, 1 out, 2-1", "first #7", "at bat #9", "visitors 4, home 2".
/// What is not said is the start of a half-inning.
/// </summary>
public static class Scene
{
    public static Game Read(string file, IEnumerable<(string Text, int Line)> lines, List<Finding> findings)
    {
        var game = Game.New with { Started = true };
        foreach (var (text, line) in lines)
            foreach (var part in text.Split(',').Select(p => p.Trim()).Where(p => p != ""))
                if (One(game, part) is { } next) game = next;
                else findings.Add(new(FindingKind.UnreadableLine, file, line, $"cannot read '{part}'; write 'bottom 3', '1 out', '2-1', 'first #7', 'at bat #9', 'order #1 #2 #3', 'due #3', 'visitors 4'"));
        // the books begin here: those on base were put there before
        var on = game.OnBase;
        return game.With(game.Batting, game.BookOf(game.Batting).Inning(game.Inning) with { PlacedRunners = on + game.BookOf(game.Batting).Runs + game.Outs, OutsMade = game.Outs });
    }

    private static Game? One(Game game, string part)
    {
        var words = part.Split(' ');
        var count = words[0].Split('-');
        if (words.Length == 1 && count.Length == 2 && Small(count[0], 3, out var balls) && Small(count[1], 2, out var strikes)) return game with { Count = new(balls, strikes) };
        if (words is ["bases", "empty"]) return game;
        if (words.Length == 2 && words[1] is "out" or "outs" && Small(words[0] == "no" ? "0" : words[0], 2, out var outs)) return game with { Outs = outs };
        if (words.Length == 2 && words[0] is "top" or "bottom" && Small(words[1], 99, out var inning) && inning > 0) return game with { Inning = inning, Batting = words[0] == "top" ? Side.Visitors : Side.Home };
        if (words.Length == 2 && words[0] is "visitors" or "home" && Small(words[1], 99, out var runs)) return Runs(game, words[0] == "home" ? Side.Home : Side.Visitors, runs);
        if (words.Length == 2 && words[0] is "first" or "second" or "third" && words[1][0] == '#') return words[0] switch { "first" => game with { First = words[1] }, "second" => game with { Second = words[1] }, _ => game with { Third = words[1] } };
        if (words is ["at", "bat", ['#', ..]]) return game.With(game.Batting, game.LineupOf(game.Batting).Enter(1, words[2], "", true));
        if (words is ["due", ['#', ..]]) return game.LineupOf(game.Batting).SpotOf(words[1]) is > 0 and var spot ? game.WithDue(game.Batting, spot) : null;
        return words.Length > 1 && words[0] == "order" && words.Skip(1).All(w => w.StartsWith('#')) ? Order(game, words[1..]) : null;
    }

    private static Game Order(Game game, string[] players)
    {
        var lineup = Lineup.Empty;
        for (var i = 0; i < players.Length; i++) lineup = lineup.Enter(i + 1, players[i], "", true);
        return game.With(game.Batting, lineup);
    }

    private static Game Runs(Game game, Side side, int runs)
    {
        var book = game.BookOf(side).Inning(1);
        return game.With(side, book with { Runs = runs, PlacedRunners = runs, ByInning = book.ByInning.SetItem(0, runs) });
    }

    private static bool Small(string text, int most, out int value) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out value) && value <= most;
}
