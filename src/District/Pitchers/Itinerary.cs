namespace Umpirage.District.Pitchers;

/// <summary>One pitcher's way through the coming games: how much in each, and which edges it comes near.</summary>
public sealed record Itinerary(string Player, IReadOnlyList<int> Amounts, IReadOnlyList<string?> Edges);

/// <summary>A team's pitcher before the games: the ledger, and the code of the pitcher's own division.</summary>
public sealed record Starter(Ledger Ledger, PitchingCode Own);

/// <summary>Finds every way in which a pitcher may go through some games: each load is ruled with the loads before it on the ledger.</summary>
/// <param name="pitchesAnInning">What an inning is taken to cost.</param>
/// <param name="step">The loads looked at are multiples of this.</param>
public sealed class Itineraries(IReadOnlyList<ComingGame> games, string team, Unit unit, int pitchesAnInning, int step)
{
    /// <summary>Ways looked at for one pitcher; with more the step has to be larger.</summary>
    public const int Most = 3_000;

    /// <summary>How near is near an edge: a batter's worth of pitches (common practice, no source), or an inning.</summary>
    private int Near => unit switch { Unit.Pitches => 5, Unit.Outs => 3, _ => 1 };

    private readonly Dictionary<(string, DateOnly, string), IReadOnlyList<Cost>> steps = [];

    /// <summary>What the code counts: pitches, else innings, else outs; innings where it counts nothing.</summary>
    public static Unit UnitOf(PitchingCode code) =>
        code.Counts(Unit.Pitches) ? Unit.Pitches : code.Counts(Unit.Innings) || !code.Counts(Unit.Outs) ? Unit.Innings : Unit.Outs;

    /// <summary>What a game asks for, in the unit.</summary>
    public int Demand(ComingGame game) => game.Code.FullGame * PerInning;

    private int PerInning => unit switch { Unit.Pitches => pitchesAnInning, Unit.Outs => 3, _ => 1 };

    /// <summary>Null when there are more than <see cref="Most"/>.</summary>
    public IReadOnlyList<Itinerary>? Of(Starter starter)
    {
        var found = new List<Itinerary>();
        return Go(starter.Ledger, starter, 0, new int[games.Count], new string?[games.Count], found) ? found : null;
    }

    /// <summary>A ledger with a load of a game on it: the last batter is taken to begin with the last pitch.</summary>
    public Ledger With(Ledger ledger, ComingGame game, int amount)
    {
        var innings = (amount + PerInning - 1) / PerInning;
        var pitches = unit == Unit.Pitches ? amount : innings * pitchesAnInning;
        return ledger.With(game.Game, game.Day, team, new(pitches, pitches - 1, innings, 0, unit == Unit.Outs ? amount : 3 * innings));
    }

    /// <summary>Why a pitcher may not pitch in a game, by a ledger; nothing when the code allows it.</summary>
    public static IReadOnlyList<Bar> Bars(Ledger ledger, Starter starter, ComingGame game) =>
        Eligible.Of(ledger, game.Code, starter.Own, new(game.Day, game.Game)) is { Answer: not MayPitch.Yes } no ? no.Bars : [];

    private bool Go(Ledger ledger, Starter starter, int at, int[] amounts, string?[] edges, List<Itinerary> found)
    {
        if (at == games.Count)
        {
            found.Add(new(ledger.Player, [.. amounts], [.. edges]));
            return found.Count <= Most;
        }
        if (!Go(ledger, starter, at + 1, amounts, edges, found)) return false;
        var game = games[at];
        var occasion = new Occasion(game.Day, game.Game);
        var answer = Eligible.Of(ledger, game.Code, starter.Own, occasion);
        if (answer.Answer != MayPitch.Yes) return true;
        for (var amount = step; amount <= Demand(game) && Fits(answer, amount); amount += step)
        {
            (amounts[at], edges[at]) = (amount, Edge(answer, StepsOfRest(starter, game), amount));
            if (!Go(With(ledger, game, amount), starter, at + 1, amounts, edges, found)) return false;
        }
        (amounts[at], edges[at]) = (0, null);
        return true;
    }

    private bool Fits(Eligibility answer, int amount)
    {
        var innings = (amount + PerInning - 1) / PerInning;
        return answer.Rooms.All(r => r.Left is not { } left || left >= (r.Unit == unit ? amount : r.Unit switch { Unit.Innings => innings, Unit.Outs => 3 * innings, _ => innings * pitchesAnInning }));
    }

    /// <summary>A load that comes near a limit of the day, or near a number from which on it costs more rest.</summary>
    private string? Edge(Eligibility answer, IReadOnlyList<Cost> costs, int amount)
    {
        var inAll = amount + (answer.Rooms.FirstOrDefault(r => r.Unit == unit)?.Used ?? 0);
        if (answer.Rooms.FirstOrDefault(r => r.Unit == unit && r.Left is { } left && left - amount <= Near) is { } room) return room.Left == amount ? $"at the limit of {room.Limit} a day" : $"{room.Left - amount} below the limit of {room.Limit} a day";
        return costs.Where(c => c.Unit == unit && c.InAll > inAll && c.InAll <= inAll + Near).Select(c => $"{c.InAll - inAll} more, and the rest is {c.RestDays} {(c.RestDays == 1 ? "day" : "days")}").FirstOrDefault();
    }

    /// <summary>From how many of a day on the rest grows, for a pitcher who comes rested: the steps do not hang on the days before.</summary>
    private IReadOnlyList<Cost> StepsOfRest(Starter starter, ComingGame game)
    {
        var key = (game.Game.Key, game.Day, starter.Own.Code.Address.ToString());
        return steps.TryGetValue(key, out var known) ? known : steps[key] = Eligible.Costs(Ledger.Empty(starter.Ledger.Player), game.Code, starter.Own, new(game.Day, game.Game));
    }
}
