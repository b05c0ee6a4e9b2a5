using Umpirage.Rules.Codes;
using Umpirage.Rules.Games;
using Umpirage.Rules.Plays;

namespace Umpirage.Rules.Calls;

/// <summary>Carries a ruling out on a game: outs, awards, returns, the count, runs that count or do not.</summary>
public static class Effects
{
    /// <summary>What the ruling does, in the sheet's words; only what is decided for certain.</summary>
    public static IReadOnlyList<string> Words(Ruling ruling) =>
        [.. ruling.Situation.Sheet.Bound.Effects.Where(e => e.When.All(c => Holds(ruling, c))).SelectMany(e => e.Effects).Distinct()];

    /// <summary>Whether all that the ruling does to the game is decided, though a side question may be open.</summary>
    public static bool Certain(Ruling ruling) =>
        ruling.IsPossible && ruling.Situation.Sheet.Bound.Effects.All(e => e.When.All(c => Holds(ruling, c)) || e.When.Any(c => Fails(ruling, c)));

    private static bool Holds(Ruling ruling, Condition condition) => (ruling.Known(condition.Term) & ~Mask(ruling, condition)) == 0;

    private static bool Fails(Ruling ruling, Condition condition) => (ruling.Known(condition.Term) & Mask(ruling, condition)) == 0;

    private static ulong Mask(Ruling ruling, Condition condition) =>
        CodeSheet.Mask(ruling.Situation.Sheet.Terms[condition.Term], condition, ruling.Situation.Sheet.Values);

    /// <summary>
    /// The game after the ruling. <paramref name="written"/> is what happened on the field; it counts unless the ruling sets it aside.
    /// <paramref name="subject"/> is the runner the play is about. Null with every reason when the two do not fit together.
    /// </summary>
    public static Game? Apply(Game start, WrittenPlay written, Ruling ruling, Place subject, List<string> reasons)
    {
        var words = Words(ruling);
        bool Says(string word) => words.Contains(word);
        var play = written.Play;
        var batter = Says("due batter out") ? start.Batter : play?.Batter ?? start.Batter;
        var keeps = !Says("no play");
        // a pitch that is set aside was never thrown
        var before = keeps ? written.AfterPitches(start, reasons) : start;
        if (before is null) return null;
        // where each ends up, by where it began; Plate: nobody says
        var to = new Place[(int)Place.Home];
        if (keeps && play is not null)
            foreach (var move in play.Moves) to[(int)(move.Runner is { } runner ? before.PlaceOf(runner) ?? Place.Plate : move.From)] = move.To;
        // nearest home and next behind the runner, as they stand before the ruling; Plate: the batter
        var (nearest, behind) = (Place.Plate, Place.Plate);
        for (var place = Place.Third; place > Place.Plate; place--)
        {
            if (before.On(place) == "") continue;
            if (nearest == Place.Plate) nearest = place;
            if (behind == Place.Plate && place < subject && to[(int)place] != Place.Out) behind = place;
            var name = place == subject ? "runner" : "others";
            if (Says($"{name} back") || Says($"{name} stays")) to[(int)place] = place;
            if (Says($"{name} up one")) to[(int)place] = Up(place, 1);
            if (Says($"{name} up two")) to[(int)place] = Up(place, 2);
            if (place == subject && Says("runner out")) to[(int)place] = Place.Out;
            if (place == subject && Says("runner scores")) to[(int)place] = Place.Home;
        }
        if (Says("runner nearest home out") && nearest != Place.Plate) to[(int)nearest] = Place.Out;
        var behindOut = Says("runner behind out");
        if (behindOut && behind != Place.Plate) to[(int)behind] = Place.Out;
        var (balls, strikes) = before.Count;
        if (Says("add a ball")) balls++;
        if (Says("add a strike") || (Says("add a foul") && strikes < 2)) strikes++;
        if ((behindOut && behind == Place.Plate) || strikes > 2 || (subject == Place.Plate && Says("runner out")) || Says("batter out") || Says("due batter out")) to[0] = Place.Out;
        else if (balls > 3 || Says("batter to first")) to[0] = Place.First;
        else if (Says("batter to second")) to[0] = Place.Second;
        else if (Says("batter to third")) to[0] = Place.Third;
        else if (Says("batter scores")) to[0] = Place.Home;
        var done = to[0] != Place.Plate;
        var moves = new List<Move>();
        for (var from = 3; from >= 0; from--)
            if (to[from] != Place.Plate && (from > 0 || done)) moves.Add(new((Place)from, to[from]));
        // those who were put back or kept stay by force of the ruling; those not named are moved along only by force
        moves.RemoveAll(m => m.From == m.To && to[0] == Place.First && Forced(before, m.From));
        var count = done ? default : new Count(balls, strikes);
        var carried = new Played(batter, done, moves, "by the ruling", 0) { NoRunCounts = Says("runs do not count") || (keeps && play is { NoRunCounts: true }) };
        var game = moves.Count == 0 && !done ? before : Scorekeeper.Apply(before with { Count = done ? before.Count : count }, carried, reasons);
        return game is null ? null : game.Batting == before.Batting && !done ? game with { Count = count } : game;
    }

    private static Place Up(Place from, int bases) => (Place)Math.Min((int)from + bases, (int)Place.Home);

    private static bool Forced(Game game, Place place) => place switch { Place.First => true, Place.Second => game.First != "", _ => game.First != "" && game.Second != "" };
}
