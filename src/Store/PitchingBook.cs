using Microsoft.EntityFrameworkCore;
using Umpirage.District.Calendar;
using Umpirage.District.Options;
using Umpirage.District.People;
using Umpirage.District.Pitchers;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.Store;

/// <summary>One player of a team on one day: the answer, what further pitching would cost, and advice beside the rule.</summary>
public sealed record Arm(RosterPlace Place, string Name, Ledger Ledger, PitchingCode Code, PitchingCode Own, Occasion Occasion, Eligibility Answer, IReadOnlyList<Cost> Costs, Advice Advice)
{
    /// <summary>The day of the newest line on record.</summary>
    public DateOnly? LastLine => Ledger.Outings.Count == 0 ? null : Ledger.Outings[^1].Day;

    /// <summary>The answer with these figures of the game asked about in the place of those on record.</summary>
    public (Eligibility Answer, IReadOnlyList<Cost> Costs) Now(Count count, bool underWay)
    {
        if (Occasion.Game is not { } game) return (Answer, Costs);
        var ledger = Ledger.With(game, Occasion.Day, Place.Team, count);
        var occasion = Occasion with { BatterUnderWay = underWay };
        return (Eligible.Of(ledger, Code, Own, occasion), Eligible.Costs(ledger, Code, Own, occasion));
    }
}

/// <summary>A team's arms on one day, under the code of its game that day, or of its division when it has none.</summary>
public sealed record TeamArms(Team Team, ScheduledGame? Game, string Code, IReadOnlyList<Arm> Arms);

/// <summary>Draws the ledgers of a district's teams from the store and asks who may pitch.</summary>
public static class PitchingBook
{
    private const int Year = 365, Few = 40;

    /// <param name="teams">Keys of teams; none for every team of an umpired division.</param>
    /// <param name="player">When given, only this one is asked about.</param>
    /// <param name="game">When given, each team is asked about this game and not about its first one that day.</param>
    public static IReadOnlyList<TeamArms> Of(DistrictStore store, PitchingCodes codes, DateOnly day, IReadOnlyCollection<string>? teams = null, string? game = null, string? player = null, bool costs = true)
    {
        var divisions = store.Divisions.AsNoTracking().ToDictionary(d => d.Key);
        var umpired = divisions.Values.Where(d => d.Crew > 0).Select(d => d.Key).ToHashSet();
        // a few teams are drawn by themselves, however large the store; many are drawn with everything at once
        var few = teams is { Count: <= Few };
        List<Team> asked = [.. (few ? store.Teams.Where(t => teams!.Contains(t.Key)) : store.Teams.Where(t => umpired.Contains(t.Division))).AsNoTracking().AsEnumerable()
            .Where(t => teams?.Contains(t.Key) ?? true).OrderBy(t => t.Division, StringComparer.Ordinal).ThenBy(t => t.Key, StringComparer.Ordinal)];
        var keys = asked.Select(t => t.Key).ToHashSet();
        var places = (few ? store.RosterPlaces.Where(r => keys.Contains(r.Team)) : store.RosterPlaces).AsNoTracking().AsEnumerable().Where(r => keys.Contains(r.Team) && (player is null || r.Player == player)).ToLookup(r => r.Team);
        var players = places.SelectMany(p => p).Select(r => r.Player).ToHashSet();
        var names = (few ? store.Players.Where(p => players.Contains(p.Key)) : store.Players).AsNoTracking().ToDictionary(p => p.Key, p => p.Name);
        var every = (few ? store.RosterPlaces.Where(r => players.Contains(r.Player)) : store.RosterPlaces).AsNoTracking().AsEnumerable().ToLookup(r => r.Player, r => r.Team);
        var from = day.AddDays(-Year);
        var lines = store.Appearances.AsNoTracking().Where(a => a.Day > from && a.Day <= day);
        if (few) lines = lines.Where(a => players.Contains(a.Player));
        var byPlayer = lines.AsEnumerable().ToLookup(l => l.Player);
        var (start, end) = (day.ToDateTime(default), day.AddDays(1).ToDateTime(default));
        var ofTheDay = store.Games.AsNoTracking().Where(g => g.Start >= start && g.Start < end);
        if (few) ofTheDay = ofTheDay.Where(g => keys.Contains(g.Home) || keys.Contains(g.Visitor));
        var today = ofTheDay.AsEnumerable().Where(g => g.IsAhead || g.Key == game).OrderBy(g => g.Start).ToList();
        var pitchedIn = byPlayer.SelectMany(l => l).Select(l => l.Game).ToHashSet();
        var games = (few ? store.Games.Where(g => pitchedIn.Contains(g.Key)) : store.Games).AsNoTracking().ToDictionary(g => g.Key);
        var near = keys.Concat(every.SelectMany(e => e)).Concat(today.SelectMany(g => new[] { g.Home, g.Visitor })).ToHashSet();
        var all = (few ? store.Teams.Where(t => near.Contains(t.Key)) : store.Teams).AsNoTracking().ToDictionary(t => t.Key);
        var of = all.Values.Select(t => t.League).ToHashSet();
        var leagues = (few ? store.Leagues.Where(l => of.Contains(l.Key)) : store.Leagues).AsNoTracking().ToDictionary(l => l.Key);
        PitchedGame Pitched(ScheduledGame g) => codes.Of(divisions[g.Division].Code, day)?.Code is { } code ? new(g.Key, code.Game, code.Division, (int)g.Start.TimeOfDay.TotalMinutes) : new(g.Key, "", "", 0);

        var sheets = new List<TeamArms>();
        foreach (var team in asked)
        {
            var here = today.FirstOrDefault(g => (game is null || g.Key == game) && (g.Home == team.Key || g.Visitor == team.Key));
            var address = here is null ? divisions[team.Division].Code : Governing.Code(codes.Book, divisions[here.Division], leagues[all[here.Home].League], leagues[all[here.Visitor].League]);
            if (codes.Of(address, day) is not { } code) continue;
            var arms = new List<Arm>();
            foreach (var place in places[team.Key].OrderBy(p => p.Jersey))
            {
                var ledger = Ledger.Of(place.Player, byPlayer[place.Player], key => Pitched(games[key]));
                var own = Own(every[place.Player].Select(t => divisions[all[t].Division]), code, codes, day) ?? code;
                var occasion = new Occasion(day, here is null ? null : Pitched(here));
                var year = ledger.Outings.Sum(o => o.Most.Innings);
                arms.Add(new(place, names[place.Player], ledger, code, own, occasion, Eligible.Of(ledger, code, own, occasion), costs ? Eligible.Costs(ledger, code, own, occasion) : [],
                    Advice.Of(ledger, own, occasion, year, every[place.Player].Count())));
            }
            sheets.Add(new(team, here, address, arms));
        }
        return sheets;
    }

    /// <summary>The games ahead of a team from one day to another, each under the code that governs it; findings say of which codes nothing can be had.</summary>
    /// <param name="certain">Whether a game will be played for certain; one of a bracket may be only likely.</param>
    public static IReadOnlyList<ComingGame> Coming(DistrictStore store, PitchingCodes codes, string team, DateOnly from, DateOnly until, Func<string, bool> certain, List<Finding> findings)
    {
        var (start, end) = (from.ToDateTime(default), until.AddDays(1).ToDateTime(default));
        var coming = new List<ComingGame>();
        foreach (var game in store.Games.AsNoTracking().Where(g => (g.Home == team || g.Visitor == team) && g.Start >= start && g.Start < end).AsEnumerable().Where(g => g.IsAhead).OrderBy(g => g.Start).ThenBy(g => g.Key, StringComparer.Ordinal))
            if (codes.Of(GameCode.Of(store, codes.Book, game), game.Day, findings) is { } code)
                coming.Add(new(new(game.Key, code.Code.Game, code.Code.Division, (int)game.Start.TimeOfDay.TotalMinutes), game.Day, code, certain(game.Key)));
        return coming;
    }

    /// <summary>A team's arms that a plan may count on: whoever has pitched on record; where nobody has, the whole roster.</summary>
    public static IReadOnlyList<Arm> Planned(DistrictStore store, PitchingCodes codes, string team, DateOnly from)
    {
        List<Arm> arms = [.. Of(store, codes, from, [team], costs: false).SelectMany(s => s.Arms)];
        return arms.Any(a => a.Ledger.Outings.Count > 0) ? [.. arms.Where(a => a.Ledger.Outings.Any(o => o.Pitched))] : arms;
    }

    /// <summary>The code of the youngest of the player's divisions in the same game: where a birthday is not on record the stricter limit holds.</summary>
    private static PitchingCode? Own(IEnumerable<Division> divisions, PitchingCode code, PitchingCodes codes, DateOnly day)
    {
        PitchingCode? own = null;
        foreach (var division in divisions)
            if (codes.Of(division.Code, day) is { } other && other.Code.Game == code.Code.Game && (own is null || other.Rank < own.Rank)) own = other;
        return own;
    }
}
