namespace Umpirage.District.Calendar;

/// <summary>Games as they are planned, with what they are held against. Games that were rained out or called off take up no place.</summary>
public sealed class Schedule
{
    /// <summary>Days on either side of a game within which other games of its teams can matter to it.</summary>
    private const int DaysNear = 8;

    private readonly Dictionary<string, ScheduledGame> byKey;
    private readonly Dictionary<string, List<ScheduledGame>> byTeam = [];
    private readonly Dictionary<(string, DateOnly), List<ScheduledGame>> byDiamond = [];

    public Schedule(Surroundings surroundings, IEnumerable<ScheduledGame> games)
    {
        Surroundings = surroundings;
        All = [.. games.OrderBy(g => g.Start).ThenBy(g => g.Key, StringComparer.Ordinal)];
        byKey = All.ToDictionary(g => g.Key);
        Standing = [.. All.Where(g => g.Stands)];
        foreach (var game in Standing)
        {
            ListOf(byTeam, game.Home).Add(game);
            if (game.Visitor != game.Home) ListOf(byTeam, game.Visitor).Add(game);
            ListOf(byDiamond, (game.Diamond, game.Day)).Add(game);
        }
    }

    public Surroundings Surroundings { get; }

    /// <summary>Every game, by start, then key.</summary>
    public IReadOnlyList<ScheduledGame> All { get; }

    /// <summary>Those that are played or to be played.</summary>
    public IReadOnlyList<ScheduledGame> Standing { get; }

    public ScheduledGame? Game(string key) => byKey.GetValueOrDefault(key);

    /// <summary>The standing games of each team, in the order of play.</summary>
    public IEnumerable<(string Team, IReadOnlyList<ScheduledGame> Played)> Teams => byTeam.Select(t => (t.Key, (IReadOnlyList<ScheduledGame>)t.Value));

    /// <summary>The standing games of each diamond on each day, in the order of play.</summary>
    public IEnumerable<IReadOnlyList<ScheduledGame>> DiamondDays => byDiamond.Values;

    public IReadOnlyList<ScheduledGame> OfTeam(string team) => byTeam.TryGetValue(team, out var games) ? games : [];

    public IReadOnlyList<ScheduledGame> On(string diamond, DateOnly day) => byDiamond.TryGetValue((diamond, day), out var games) ? games : [];

    /// <summary>The address of the code that governs a game.</summary>
    public string AddressOf(ScheduledGame game)
    {
        var s = Surroundings;
        return s.Rules.Address(s.Divisions[game.Division], s.Teams[game.Home].League, s.Teams[game.Visitor].League);
    }

    /// <summary>What the code that governs a game says of calendars on the game's day.</summary>
    public CalendarCode CodeOf(ScheduledGame game) => Surroundings.Rules.On(AddressOf(game), game.Day);

    /// <summary>When a game will be over, going by its planned length.</summary>
    public DateTime End(ScheduledGame game) => game.Start.AddMinutes(CodeOf(game).Minutes);

    /// <summary>The same with some games in the place of those with their keys.</summary>
    public Schedule With(params IReadOnlyCollection<ScheduledGame> games)
    {
        var keys = games.Select(g => g.Key).ToHashSet();
        return new(Surroundings, [.. All.Where(g => !keys.Contains(g.Key)), .. games]);
    }

    /// <summary>The same without some games.</summary>
    public Schedule Without(IReadOnlySet<string> keys) => new(Surroundings, All.Where(g => !keys.Contains(g.Key)));

    /// <summary>
    /// As much of the schedule as can matter to a game put in the place of the one with its key: its teams' games of the days around, everything
    /// between the two teams, their suspended games, and what is on its diamond that day.
    /// </summary>
    public Schedule Around(ScheduledGame game)
    {
        var near = new Dictionary<string, ScheduledGame>();
        foreach (var team in new[] { game.Home, game.Visitor })
            foreach (var other in OfTeam(team))
                if (other.Key != game.Key && (Math.Abs(other.Day.DayNumber - game.Day.DayNumber) <= DaysNear || (other.Has(game.Home) && other.Has(game.Visitor)) || other.Status == GameStatus.Suspended || other.RestOf is not null))
                    near[other.Key] = other;
        foreach (var other in On(game.Diamond, game.Day)) if (other.Key != game.Key) near[other.Key] = other;
        return new(Surroundings, near.Values.Append(game));
    }

    private static List<ScheduledGame> ListOf<TKey>(Dictionary<TKey, List<ScheduledGame>> lists, TKey key) where TKey : notnull
    {
        if (!lists.TryGetValue(key, out var list)) lists[key] = list = [];
        return list;
    }
}
