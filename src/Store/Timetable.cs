using Microsoft.EntityFrameworkCore;
using Umpirage.District.Calendar;
using Umpirage.Rules.Codes;

namespace Umpirage.Store;

/// <summary>Takes the schedule of a district out of its store, with all that it is held against.</summary>
public static class Timetable
{
    public static Surroundings Surroundings(DistrictStore store, Codebook book) => Surroundings(store, new CalendarCodes(book, store.Leagues.AsNoTracking().ToDictionary(l => l.Key)));

    /// <param name="pitchers">Without the pitching logs the wish for enough pitchers is not looked at, and much less is read.</param>
    public static Surroundings Surroundings(DistrictStore store, CalendarCodes rules, bool pitchers = true)
    {
        var divisions = store.Divisions.AsNoTracking().ToDictionary(d => d.Key);
        return new()
        {
            Rules = rules, Divisions = divisions, Teams = store.Teams.AsNoTracking().ToDictionary(t => t.Key), Parks = store.Parks.AsNoTracking().ToDictionary(p => p.Key),
            Diamonds = store.Diamonds.AsNoTracking().ToDictionary(d => d.Key), Blackouts = [.. store.Blackouts.AsNoTracking().OrderBy(b => b.From).ThenBy(b => b.Kind).ThenBy(b => b.Of)],
            Sunset = Sunsets.In(store.District.AsNoTracking().FirstOrDefault()?.Zone ?? "Etc/UTC"),
            Staff = pitchers ? new(rules, divisions, store.Games.AsNoTracking(), store.RosterPlaces.AsNoTracking(), store.Appearances.AsNoTracking()) : new(rules, divisions, [], [], []),
        };
    }

    public static Schedule Of(DistrictStore store, Codebook book) => new(Surroundings(store, book), store.Games.AsNoTracking());
}
