using System.IO.Compression;
using Umpirage.Rules.Records;

namespace Umpirage.Tests.Records;

/// <summary>
/// A public season replayed. The information used here was obtained free of charge from and is copyrighted by Retrosheet; interested parties
/// may contact them at 20 Sunset Rd., Newark, DE 19711.
/// </summary>
public class SeasonTests
{
    [Fact]
    public void Every_game_of_the_2019_season_ends_as_it_did()
    {
        var (events, results) = (Folder.Shared("data", "retrosheet", "season2019.events.gz"), Folder.Shared("data", "retrosheet", "final_scores_2019.csv"));
        Assert.SkipWhen(events is null || results is null, "the public season lies beside the project in shared/data/retrosheet and is not here");
        using var scores = new StreamReader(results!);
        var tally = new ScoreTally(FinalScores.Read(scores));
        using var text = new StreamReader(new GZipStream(File.OpenRead(events!), CompressionMode.Decompress));
        var wrong = EventFile.Read(text).SelectMany(g => tally.Add(g)).ToList();
        Assert.True(wrong.Count == 0, string.Join("\n", wrong.Take(20)));
        Assert.Equal("2429 games: scores 2429, line scores 2429, outs 2429, left on base 2429 equal", tally.Line);
    }

    [Theory]
    // plays worked out by hand: what the code says, who moves where (0 batter; 4 home, 5 out)
    [InlineData("54(1)/FO/G", "1>5 0>1")]
    [InlineData("64(1)3/GDP", "1>5 0>5")]
    [InlineData("S8/L.2XH(82/TH);B-2(TH)", "2>5 0>2")]
    [InlineData("D9/G+.1-H;BX3(E9)(95/TH)", "1>4 0>5")]
    [InlineData("S7.1X3(E7)", "1>3 0>1")]
    [InlineData("K+WP.B-1", "0>1")]
    [InlineData("K+SB2", "1>2 0>5")]
    [InlineData("W.1-2", "1>2 0>1")]
    [InlineData("HR/8/F.1-H", "1>4 0>4")]
    [InlineData("SB3;SB2", "2>3 1>2")]
    [InlineData("CS2(26)", "1>5")]
    [InlineData("CS2(2E4)", "1>2")]
    [InlineData("PO1(13)", "1>5")]
    [InlineData("8(B)84(2)/LDP", "2>5 0>5")]
    public void A_play_is_read_as_written(string code, string moves)
    {
        var text = $"id,X\nplay,1,0,p1,00,,{code}\n";
        var game = EventFile.Read(new StringReader(text)).Single();
        Assert.Empty(game.Faults);
        var play = Assert.IsType<Umpirage.Rules.Games.Played>(game.Events.Single());
        Assert.Equal(moves, string.Join(" ", play.Moves.Select(m => $"{(int)m.From}>{(int)m.To}")));
    }

    [Fact]
    public void The_demonstration_game_is_followed_to_the_pitch_at_which_it_stopped()
    {
        var findings = new List<Finding>();
        var recorded = GameFile.Read("demo.game", File.ReadAllText(Folder.Of("demo", "pellwick-at-tarnholt.game")), findings);
        Assert.Empty(findings);
        var tally = new ScoreTally(null);
        Assert.Empty(tally.Add(recorded));
        var game = tally.Last;
        // counted by hand from the file: 14 to the plate, 4 runs, 9 outs, 1 left; 9, 2, 6 and 1 for the home side
        Assert.Equal((14, 4, 9, 1), (game.Visitors.Batters, game.Visitors.Runs, game.Visitors.OutsMade, game.Visitors.Left));
        Assert.Equal((9, 2, 6, 1), (game.Home.Batters, game.Home.Runs, game.Home.OutsMade, game.Home.Left));
        Assert.Equal("bottom 3, 0 out, bases empty, 2-1, visitors 4 home 2", game.InWords);
        Assert.Equal("#1", game.Batter);
        Assert.False(game.Alive);
    }

    [Fact]
    public void Spoiled_game_files_raise_no_exception()
    {
        var text = File.ReadAllText(Folder.Of("demo", "pellwick-at-tarnholt.game"));
        for (var seed = 0; seed < Folder.Count(2_000, 20_000); seed++)
        {
            var spoiled = Twin.Scramble.Of(new Random(seed), [text], 20_000);
            var tally = new ScoreTally(null);
            tally.Add(GameFile.Read("fuzz.game", spoiled, [])).ToList();
            Assert.True(tally.Last.Proves);
            foreach (var game in EventFile.Read(new StringReader(spoiled.Replace("#", "play,1,0,")))) new ScoreTally(null).Add(game).ToList();
        }
    }
}
