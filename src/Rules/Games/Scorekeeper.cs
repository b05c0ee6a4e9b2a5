namespace Umpirage.Rules.Games;

/// <summary>
/// Puts events into a game: the one bridge from what somebody says to what can have happened. An event that cannot have happened is refused
/// with every reason at once, and the game stays as it was.
/// </summary>
public static class Scorekeeper
{
    private const int OutsInHalf = 3;

    /// <summary>The game after the event, or null with the reasons.</summary>
    public static Game? Apply(Game game, GameEvent happened, List<string> reasons)
    {
        var before = reasons.Count;
        if (game.Over && happened is not Noted) { reasons.Add("the game is over"); return null; }
        var next = happened switch
        {
            Played play => Play(game, play, reasons),
            Pitched pitch => Pitch(game, pitch, reasons),
            Entered entered => Enter(game, entered, reasons),
            Placed placed => Put(game, placed, reasons),
            CourtesyRun run => Courtesy(game, run, reasons),
            Conference talk => talk.Defensive ? game with { DefensiveConferences = game.DefensiveConferences + 1 } : game with { OffensiveConferences = game.OffensiveConferences + 1 },
            CameToBat => game.With(game.Batting, game.BookOf(game.Batting).Inning(game.Inning)) with { Started = true },
            Noted noted => game with { Notes = game.Notes.Add(noted.Text) },
            Time time => game with { Alive = time.Alive, Stoppages = game.Stoppages.Add($"{(time.Alive ? "play" : "time")}: {time.Reason}") },
            Ended ended => ended.Game ? End(Close(game)) : Close(game),
            _ => game,
        };
        return reasons.Count > before ? null : next! with { Events = game.Events + 1 };
    }

    private static Game End(Game game) => game with { Over = true };

    private static Game Enter(Game game, Entered entered, List<string> reasons)
    {
        if (entered.Spot < 0) reasons.Add($"there is no spot {entered.Spot} in a batting order");
        if (entered.Player == "") reasons.Add("a player who enters needs a name or a number");
        if (entered.Spot < 0) return game;
        var lineup = game.LineupOf(entered.Side);
        var left = lineup.At(entered.Spot);
        var entering = lineup.Enter(entered.Spot, entered.Player, entered.Position, game.Started);
        if (entered.FlexFor > 0) entering = entering with { Flex = entered.Player, DesignatedSpot = entered.FlexFor };
        var next = game.With(entered.Side, entering);
        // a runner who is replaced while on base is followed by the one who takes the spot
        if (!game.Started || entered.Side != game.Batting || left == "" || left == entered.Player) return next;
        string Now(string on) => on == left ? entered.Player : on;
        return next with { First = Now(game.First), Second = Now(game.Second), Third = Now(game.Third) };
    }

    private static Game Put(Game game, Placed placed, List<string> reasons)
    {
        if (placed.Base is not (Place.First or Place.Second or Place.Third)) reasons.Add("a runner is placed on a base");
        else if (game.On(placed.Base) != "") reasons.Add($"{Name(placed.Base)} is taken by {game.On(placed.Base)}");
        else
        {
            var book = game.BookOf(game.Batting);
            return Base(game, placed.Base, placed.Player).With(game.Batting, book with { PlacedRunners = book.PlacedRunners + 1 }) with { Started = true };
        }
        return game;
    }

    private static Game Courtesy(Game game, CourtesyRun run, List<string> reasons)
    {
        if (game.PlaceOf(run.For) is { } place) return Base(game, place, run.Runner);
        reasons.Add($"{run.For} is on no base");
        return game;
    }

    private static Game Pitch(Game game, Pitched pitched, List<string> reasons)
    {
        var (balls, strikes) = (game.Count.Balls, game.Count.Strikes);
        switch (pitched.Pitch)
        {
            case Games.Pitch.Ball or Games.Pitch.IllegalPitch: balls++; break;
            case Games.Pitch.CalledStrike or Games.Pitch.SwingingStrike or Games.Pitch.FoulBunt: strikes++; break;
            case Games.Pitch.Foul: strikes = Math.Min(strikes + 1, 2); break;
        }
        if (!game.Alive) reasons.Add("the ball is dead; call play first");
        if (balls > 3) reasons.Add("that is ball four: write the walk");
        if (strikes > 2) reasons.Add("that is strike three: write the strikeout");
        var next = game with { Started = true, Count = new(balls, strikes), Appeals = "" };
        return pitched.Pitch == Games.Pitch.NoPitch ? next : Thrown(next);
    }

    /// <summary>One more pitch for whoever pitches. The pitch that ends a turn at bat counts with the play.</summary>
    private static Game Thrown(Game game)
    {
        var pitcher = game.LineupOf(game.Fielding).Field.GetValueOrDefault("pitcher", "");
        return pitcher == "" ? game : game with { PitchesBy = game.PitchesBy.SetItem(pitcher, game.PitchesBy.GetValueOrDefault(pitcher) + 1) };
    }

    private static Game Play(Game game, Played play, List<string> reasons)
    {
        var before = reasons.Count;
        // where each runner and the batter end up; a runner not named stays
        Span<Place> to = [Place.Plate, game.First == "" ? Place.Plate : Place.First, game.Second == "" ? Place.Plate : Place.Second, game.Third == "" ? Place.Plate : Place.Third];
        var batter = play.Batter ?? game.Batter;
        Span<bool> moved = stackalloc bool[4];
        foreach (var move in play.Moves)
        {
            var from = move.Runner is { } runner ? (int?)game.PlaceOf(runner) ?? (play.TurnDone && batter == runner ? 0 : -1) : (int)move.From;
            if (from < 0) { reasons.Add($"{move.Runner} is on no base"); continue; }
            if (from > 3) { reasons.Add("a move starts at the plate or on a base"); continue; }
            if (moved[from]) { reasons.Add($"the runner from {Name((Place)from)} moves twice"); continue; }
            moved[from] = true;
            if (from > 0 && game.On((Place)from) == "") { reasons.Add($"nobody is on {Name((Place)from)}"); continue; }
            if (from == 0 && !play.TurnDone) { reasons.Add("the batter moves only when her turn is over"); continue; }
            if (move.To == Place.Plate) { reasons.Add($"the runner on {Name((Place)from)} cannot go back to bat"); continue; }
            to[from] = move.To;
        }
        if (play.TurnDone && batter == "") reasons.Add("nobody says who bats");
        if (play.TurnDone && !moved[0]) reasons.Add("the batter's turn is over, but nobody says where she went");
        if (play.TurnDone && to[0] == Place.First) Force(to, moved);
        Possible(game, play, to, reasons);
        if (reasons.Count > before) return game;

        var (outs, runs) = (0, 0);
        var next = game with { First = "", Second = "", Third = "", Started = true };
        for (var from = 3; from >= 0; from--)
        {
            if (to[from] == Place.Out) outs++;
            else if (to[from] == Place.Home) runs++;
            else if (to[from] is Place.First or Place.Second or Place.Third) next = Base(next, to[from], from == 0 ? batter : game.On((Place)from));
        }
        if (game.Outs + outs > OutsInHalf) { reasons.Add($"{game.Outs + outs} outs in a half-inning"); return game; }
        var book = game.BookOf(game.Batting).Inning(game.Inning);
        var counted = play.NoRunCounts ? 0 : runs;
        // a run that does not count leaves its runner on base in the book
        book = book.Score(counted, game.Inning) with { Batters = book.Batters + (play.TurnDone ? 1 : 0), OutsMade = book.OutsMade + outs, Left = book.Left + runs - counted };
        next = next.With(game.Batting, book) with { Outs = game.Outs + outs, Count = play.TurnDone ? default : game.Count };
        if (play.TurnDone) next = Advance(Thrown(next), batter);
        next = next with { Appeals = next.Outs == OutsInHalf ? "until the fielders have left" : "until the next pitch or play" };
        return next.Outs == OutsInHalf ? Close(next) : next;
    }

    /// <summary>A batter who takes first moves along whoever has to make room and is not said to have gone elsewhere.</summary>
    private static void Force(Span<Place> to, ReadOnlySpan<bool> moved)
    {
        for (var from = 1; from < 4 && !moved[from] && to[from] == (Place)from && to[from - 1] == (Place)from; from++) to[from] = (Place)(from + 1);
    }

    /// <summary>Nobody passes a runner ahead, and no base holds two at rest.</summary>
    private static void Possible(Game game, Played play, ReadOnlySpan<Place> to, List<string> reasons)
    {
        for (var from = 0; from < 4; from++)
        {
            if (to[from] is Place.Plate or Place.Out or Place.Home) continue;
            for (var ahead = from + 1; ahead < 4; ahead++)
            {
                if (to[ahead] is Place.Plate or Place.Out or Place.Home) continue;
                if (to[from] == to[ahead]) reasons.Add($"{Name(to[from])} would hold two runners");
                else if (to[from] > to[ahead]) reasons.Add($"the runner from {Name((Place)from)} would pass the one ahead");
            }
        }
        // a run scored from behind a runner who stays on base passes him
        for (var from = 0; from < 3; from++)
            if (to[from] == Place.Home)
                for (var ahead = from + 1; ahead < 4; ahead++)
                    if (to[ahead] is Place.First or Place.Second or Place.Third) reasons.Add($"the runner from {Name((Place)from)} scores past the one on {Name((Place)ahead)}");
    }

    private static Game Advance(Game game, string batter)
    {
        var lineup = game.LineupOf(game.Batting);
        if (lineup.Spots.Length == 0) return game;
        var spot = lineup.SpotOf(batter);
        return game.WithDue(game.Batting, lineup.After(spot == 0 ? game.Due(game.Batting) : spot));
    }

    /// <summary>Ends the half-inning: whoever is on base is left there, the other side comes to bat.</summary>
    private static Game Close(Game game)
    {
        var book = game.BookOf(game.Batting).Inning(game.Inning);
        var closed = game.With(game.Batting, book with { Left = book.Left + game.OnBase }) with { First = "", Second = "", Third = "", Outs = 0, Count = default, OffensiveConferences = 0 };
        return game.Batting == Side.Visitors ? closed with { Batting = Side.Home } : closed with { Batting = Side.Visitors, Inning = game.Inning + 1 };
    }

    private static Game Base(Game game, Place place, string player) => place switch
    {
        Place.First => game with { First = player }, Place.Second => game with { Second = player }, _ => game with { Third = player },
    };

    public static string Name(Place place) => place switch
    {
        Place.Plate => "the plate", Place.First => "first", Place.Second => "second", Place.Third => "third", Place.Home => "home", _ => "out",
    };
}
