using Umpirage.Rules.Games;

namespace Umpirage.Tests.Games;

/// <summary>Laws of the fold, on random legal games and on games spoiled at random.</summary>
public class GameLawTests
{
    /// <summary>A random legal game: plays made from the present state so that nobody passes anybody and outs stay within three.</summary>
    private static IEnumerable<GameEvent> Legal(Random random, Func<Game> now)
    {
        for (var n = random.Next(20, 120); n > 0; n--)
        {
            var game = now();
            if (random.Next(4) == 0) { yield return new Pitched(game.Count is { Balls: < 3, Strikes: < 2 } ? random.Next(2) == 0 ? Pitch.Ball : Pitch.CalledStrike : Pitch.Foul, n); continue; }
            var done = random.Next(5) != 0 || game.OnBase == 0;
            var moves = new List<Move>();
            var (outs, limit) = (0, 5); // limit: the runner ahead stands here or beyond
            var blocked = false;
            for (var from = 3; from >= (done ? 0 : 1); from--)
            {
                if (from > 0 && game.On((Place)from) == "") continue;
                if (game.Outs + outs < 3 && random.Next(4) == 0) { moves.Add(new((Place)from, Place.Out)); outs++; continue; }
                // home only when nobody ahead stays on a base; otherwise some base short of the runner ahead
                var most = blocked ? limit - 1 : 4;
                var least = from == 0 ? 1 : from;
                if (most < least) { if (game.Outs + outs >= 3) yield break; moves.Add(new((Place)from, Place.Out)); outs++; continue; }
                var to = random.Next(least, most + 1);
                moves.Add(new((Place)from, to == 4 ? Place.Home : (Place)to));
                if (to < 4) (limit, blocked) = (to, true);
            }
            if (moves.Count > 0) yield return new Played(done ? "#1" : null, done, moves, "made up", n) { NoRunCounts = random.Next(8) == 0 && game.Outs + outs == 3 };
        }
    }

    [Fact]
    public void The_scorebook_proves_in_every_state_of_random_legal_games()
    {
        var (games, plays) = (Folder.Count(3_000, 100_000), 0);
        for (var seed = 0; seed < games; seed++)
        {
            var game = Game.New;
            var reasons = new List<string>();
            // the naive book: counted here from the events alone
            var (batters, runs, outs, halves, inHalf) = (0, 0, 0, 0, 0);
            foreach (var happened in Legal(new Random(seed), () => game))
            {
                if (Scorekeeper.Apply(game, happened, reasons) is not { } next) { Assert.Fail($"seed {seed}: {string.Join("; ", reasons)} in {game.InWords}"); return; }
                if (happened is Played play)
                {
                    plays++;
                    batters += play.TurnDone ? 1 : 0;
                    runs += play.NoRunCounts ? 0 : play.Moves.Count(m => m.To == Place.Home);
                    var made = play.Moves.Count(m => m.To == Place.Out);
                    outs += made;
                    inHalf += made;
                    if (inHalf == 3) { halves++; inHalf = 0; Assert.NotEqual(game.Batting, next.Batting); Assert.Equal(0, next.OnBase); }
                }
                game = next;
                Assert.True(game.Proves, $"seed {seed}: {game.InWords}");
                Assert.Equal(inHalf, game.Outs);
                Assert.Equal((batters, runs, outs), (game.Visitors.Batters + game.Home.Batters, game.Visitors.Runs + game.Home.Runs, game.Visitors.OutsMade + game.Home.OutsMade));
                var on = new[] { game.First, game.Second, game.Third }.Count(b => b != "");
                Assert.Equal(batters - runs - outs, game.Visitors.Left + game.Home.Left + on);
            }
            Assert.Equal(1 + halves / 2, game.Inning);
        }
        TestContext.Current.TestOutputHelper?.WriteLine($"{games} random legal games, {plays} plays, the scorebook proved in every state");
    }

    [Fact]
    public void Spoiled_games_are_refused_with_a_reason_or_keep_the_proof()
    {
        var (refused, kept) = (0, 0);
        for (var seed = 0; seed < Folder.Count(2_000, 10_000); seed++)
        {
            var random = new Random(seed);
            var game = Game.New;
            var events = new List<GameEvent>();
            foreach (var happened in Legal(random, () => game)) { game = Scorekeeper.Apply(game, happened, [])!; events.Add(happened); }
            for (var n = random.Next(1, 6); n > 0 && events.Count > 0; n--) Spoil(random, events);
            var replay = Replay.Of(Game.New, events);
            Assert.True(replay.Game.Proves, $"seed {seed}: {replay.Game.InWords} {replay.Game.Visitors} {replay.Game.Home} after {string.Join(" | ", events.Take(replay.Followed).TakeLast(3))}");
            if (replay.Whole) { kept++; continue; }
            refused++;
            Assert.NotEmpty(replay.Reasons);
            Assert.True(replay.Followed < events.Count);
            // the state so far is the one before the event that went wrong
            Assert.Equal(Replay.Of(Game.New, events.Take(replay.Followed)).Game.InWords, replay.Game.InWords);
        }
        Assert.True(refused > 100 && kept > 10, $"{refused} refused, {kept} kept");
    }

    private static void Spoil(Random random, List<GameEvent> events)
    {
        var at = random.Next(events.Count);
        switch (random.Next(6))
        {
            case 0: events.RemoveAt(at); break;
            case 1: events.Insert(at, events[random.Next(events.Count)]); break;
            case 2: var other = random.Next(events.Count); (events[at], events[other]) = (events[other], events[at]); break;
            case 3: events.Insert(at, new Placed("#9", (Place)random.Next(6), 1)); break;
            case 4: events.Insert(at, new Entered((Side)random.Next(2), random.Next(-2, 15), random.Next(3) == 0 ? "" : "#" + random.Next(20), "pitcher", 1)); break;
            default:
                events[at] = new Played(random.Next(2) == 0 ? "#3" : null, random.Next(2) == 0, [.. Enumerable.Range(0, random.Next(5)).Select(_ => new Move((Place)random.Next(6), (Place)random.Next(6), random.Next(4) == 0 ? "#7" : null))], "spoiled", 1);
                break;
        }
    }

    [Fact]
    public void Taking_back_and_doing_again_leads_to_the_same_game()
    {
        for (var seed = 0; seed < 200; seed++)
        {
            var game = Game.New;
            var states = new List<(Game Before, GameEvent Happened)>();
            foreach (var happened in Legal(new Random(seed), () => game)) { states.Add((game, happened)); game = Scorekeeper.Apply(game, happened, [])!; }
            foreach (var (before, happened) in Enumerable.Reverse(states))
            {
                var again = Scorekeeper.Apply(before, happened, [])!;
                Assert.Equal((game.InWords, game.Visitors.Left, game.Home.Left, game.Events), (again.InWords, again.Visitors.Left, again.Home.Left, again.Events));
                game = before;
            }
            Assert.Equal(0, game.Events);
        }
    }

    [Fact]
    public void Every_reason_comes_at_once()
    {
        var reasons = new List<string>();
        Assert.Null(Scorekeeper.Apply(Game.New, new Played("#1", true, [new(Place.First, Place.Home), new(Place.Second, Place.Second), new(Place.Third, Place.Plate)], "made up", 1), reasons));
        Assert.Equal(["nobody is on first", "nobody is on second", "nobody is on third", "the batter's turn is over, but nobody says where she went"], reasons);
    }

    [Fact]
    public void Reasons_given_before_do_not_keep_a_play_out()
    {
        List<string> reasons = ["said of another game"];
        Assert.Equal("#1", Scorekeeper.Apply(Game.New, new Played("#1", true, [new(Place.Plate, Place.First)], "made up", 1), reasons)?.First);
        Assert.Equal(["said of another game"], reasons);
    }
}
