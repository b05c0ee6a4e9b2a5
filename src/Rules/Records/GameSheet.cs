using System.Text;
using Umpirage.Rules.Games;

namespace Umpirage.Rules.Records;

/// <summary>
/// The sheet of a game that is over or suspended: line score, the proof of the scorebook, and everything needed to go on from this very
/// pitch: count, outs, who is on which base, who is due, line-ups, pitches by pitcher, conferences.
/// </summary>
public static class GameSheet
{
    public static string Text(RecordedGame recorded, Game game)
    {
        var text = new StringBuilder();
        var innings = Math.Max(game.Visitors.ByInning.Length, game.Home.ByInning.Length);
        text.AppendLine($"{recorded.Id}{(recorded.Code == "" ? "" : $", {recorded.Code}")}");
        foreach (var (side, name) in new[] { (Side.Visitors, recorded.Visitors), (Side.Home, recorded.Home) })
        {
            var book = game.BookOf(side);
            var on = game.Batting == side ? game.OnBase : 0;
            text.AppendLine($"  {(name == "" ? side.ToString() : name),-16} {FinalScores.Line(book, innings),-12} {book.Runs,3} runs   proof: {book.Batters + book.PlacedRunners} to the plate = {book.Runs} runs + {book.Left} left + {book.OutsMade} out{(on > 0 ? $" + {on} on base" : "")}");
        }
        if (game.Over) return text.Append("  over").ToString();
        text.AppendLine($"  goes on: {game.InWords}");
        foreach (var place in new[] { Place.First, Place.Second, Place.Third })
            if (game.On(place) != "") text.AppendLine($"    {Scorekeeper.Name(place)}: {game.On(place)}");
        text.AppendLine($"    at bat: {game.Batter} (spot {game.Due(game.Batting)}); next for the fielders: spot {game.Due(game.Fielding)}");
        foreach (var (pitcher, pitches) in game.PitchesBy.OrderBy(p => p.Key, StringComparer.Ordinal)) text.AppendLine($"    pitches: {pitcher} {pitches}");
        foreach (var side in new[] { Side.Visitors, Side.Home })
            if (game.LineupOf(side) is { DesignatedSpot: > 0 } pair) text.AppendLine($"    {(side == Side.Visitors ? "visitors" : "home")}: {pair.Flex} is FLEX for spot {pair.DesignatedSpot}, now {pair.At(pair.DesignatedSpot)}");
        if (game.Appeals != "") text.AppendLine($"    appeals on the last play: open {game.Appeals}");
        foreach (var stop in game.Stoppages) text.AppendLine($"    {stop}");
        foreach (var note in game.Notes) text.AppendLine($"    note: {note}");
        text.Append($"    conferences: defence {game.DefensiveConferences}, offence this half-inning {game.OffensiveConferences}");
        return text.ToString();
    }
}
