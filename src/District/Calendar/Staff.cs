using Umpirage.District.People;
using Umpirage.District.Pitchers;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Calendar;

/// <summary>
/// The pitchers of each team, by the logs on record: whoever on its roster has pitched, for any team. It counts who may pitch; games between
/// the last log and the day asked about are not foreseen.
/// </summary>
public sealed class Staff
{
    private readonly CalendarCodes rules;
    private readonly IReadOnlyDictionary<string, Division> divisions;
    private readonly Dictionary<string, List<Ledger>> pitchers = [];
    private readonly Dictionary<string, DateOnly> last = [];
    private readonly Dictionary<(string, string, DateOnly), int> counted = [];

    /// <param name="games">Every game that a log names.</param>
    public Staff(CalendarCodes rules, IReadOnlyDictionary<string, Division> divisions, IEnumerable<ScheduledGame> games, IEnumerable<RosterPlace> roster, IEnumerable<Appearance> logs)
    {
        (this.rules, this.divisions) = (rules, divisions);
        var known = games.ToDictionary(g => g.Key, Pitched);
        Ledgers = Ledger.All(logs, key => known[key]);
        foreach (var place in roster)
            if (Ledgers.TryGetValue(place.Player, out var ledger) && ledger.Outings.Any(o => o.Pitched))
            {
                if (!pitchers.TryGetValue(place.Team, out var list)) pitchers[place.Team] = list = [];
                list.Add(ledger);
                var day = ledger.Outings[^1].Day;
                if (!last.TryGetValue(place.Team, out var before) || before < day) last[place.Team] = day;
            }
    }

    /// <summary>By player.</summary>
    public IReadOnlyDictionary<string, Ledger> Ledgers { get; }

    /// <summary>A game as a ledger wants it.</summary>
    public PitchedGame Pitched(ScheduledGame game)
    {
        var code = CodeAddress.Read(divisions[game.Division].Code)!;
        return new(game.Key, code.Game, code.Division, (int)game.Start.TimeOfDay.TotalMinutes);
    }

    /// <summary>Pitchers of a team who may pitch on a day under a code, of how many; null for a team whose logs say nothing of the days before it.</summary>
    public (int May, int OfAll)? Count(string team, string address, string division, DateOnly day)
    {
        if (!pitchers.TryGetValue(team, out var staff) || last[team].DayNumber + Eligible.DaysAhead < day.DayNumber) return null;
        lock (counted)
        {
            if (!counted.TryGetValue((team, address, day), out var may))
            {
                var (code, own) = (rules.PitchingOn(address, day), rules.PitchingOn(divisions[division].Code, day));
                counted[(team, address, day)] = may = staff.Count(l => Eligible.Of(l, code, own, new(day)).Answer == MayPitch.Yes);
            }
            return (may, staff.Count);
        }
    }
}
