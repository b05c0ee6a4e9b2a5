using Umpirage.District.People;

namespace Umpirage.District.Calendar;

/// <summary>Everything a schedule is held against but the games themselves. Sunset is the park's own, in the district's clock; none where the sun does not set.</summary>
public sealed class Surroundings
{
    public required CalendarCodes Rules { get; init; }
    public required IReadOnlyDictionary<string, Team> Teams { get; init; }
    public required IReadOnlyDictionary<string, Division> Divisions { get; init; }
    public required IReadOnlyDictionary<string, Park> Parks { get; init; }
    public required IReadOnlyDictionary<string, Diamond> Diamonds { get; init; }
    public IReadOnlyList<Blackout> Blackouts { get; init; } = [];
    public required Func<Park, DateOnly, DateTime?> Sunset { get; init; }

    /// <summary>The pitchers of the teams and what they pitched; none when nobody counts.</summary>
    public Staff? Staff { get; init; }

    private readonly Dictionary<(string, DateOnly), DateTime?> sunsets = [];

    public Park ParkOf(string diamond) => Parks[Diamonds[diamond].Park];

    /// <summary>When the sun sets over a diamond, in the district's clock.</summary>
    public DateTime? SunsetAt(string diamond, DateOnly day)
    {
        var park = ParkOf(diamond);
        lock (sunsets)
        {
            if (!sunsets.TryGetValue((park.Key, day), out var known)) sunsets[(park.Key, day)] = known = Sunset(park, day);
            return known;
        }
    }

    /// <summary>What closes a game's day: the district's, its leagues', its teams', its park's or its diamond's.</summary>
    public Blackout? Closing(ScheduledGame game)
    {
        if (Blackouts.Count == 0) return null;
        var day = DateOnly.FromDateTime(game.Start);
        var (home, visitor) = (Teams[game.Home], Teams[game.Visitor]);
        foreach (var b in Blackouts)
            if (b.On(day) && b.Kind switch
            {
                BlackoutOf.District => true,
                BlackoutOf.League => b.Of == home.League || b.Of == visitor.League,
                BlackoutOf.Team => b.Of == home.Key || b.Of == visitor.Key,
                BlackoutOf.Park => b.Of == Diamonds[game.Diamond].Park,
                _ => b.Of == game.Diamond,
            }) return b;
        return null;
    }

    /// <summary>The same with days on which something is closed, besides those there were or instead of them.</summary>
    public Surroundings Closed(IEnumerable<Blackout> closed, bool keep = true) => new()
    {
        Rules = Rules, Teams = Teams, Divisions = Divisions, Parks = Parks, Diamonds = Diamonds, Sunset = Sunset, Staff = Staff, Blackouts = [.. keep ? Blackouts : [], .. closed],
    };
}
