using Umpirage.District.Calendar;
using Umpirage.District.People;
using Umpirage.District.Pitchers;

namespace Umpirage.District.Demo;

/// <summary>Pitching logs of the games played so far: two or three pitchers a side, those first who have rested longest, most of them counted once, a few by two people who disagree.</summary>
internal static class Counts
{
    public static IEnumerable<Appearance> Of(IEnumerable<ScheduledGame> played, ILookup<string, RosterPlace> rosters, Dice dice)
    {
        var exceptions = 19;
        var last = new Dictionary<string, DateTime>();
        foreach (var game in played.OrderBy(g => g.Start))
            foreach (var team in new[] { game.Home, game.Visitor })
            {
                var arms = dice.Shuffled(rosters[team].Take(5)).OrderBy(p => last.GetValueOrDefault(p.Player)).Take(dice.In(4) ? 3 : 2).ToList();
                var innings = 6;
                for (var i = 0; i < arms.Count; i++)
                {
                    var share = i == arms.Count - 1 ? innings : dice.Between(1, Math.Max(1, innings - 2));
                    innings -= share;
                    var pitches = Math.Min(75, share * dice.Between(11, 17));
                    var log = new Appearance(game.Key, arms[i].Player, team, "home book", DateOnly.FromDateTime(game.Start), 1, pitches, Math.Max(0, pitches - dice.Between(1, 7)), share, 0, 3 * share);
                    last[arms[i].Player] = game.Start;
                    yield return log;
                    if (exceptions > 0 && dice.In(190)) { exceptions--; yield return log with { Counter = "visitors' book", Pitches = pitches + 2 }; }
                    if (innings <= 0) break;
                }
            }
    }
}
