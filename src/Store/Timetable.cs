using Microsoft.EntityFrameworkCore;
using Umpirage.District.Calendar;
using Umpirage.Rules.Codes;

namespace Umpirage.Store;

/// <summary>Takes the schedule of a district out of its store, with all that it is held against.</summary>
public static class Timetable
{
    public static Surroundings Surroundings(DistrictStore store, Codebook book)
    {
        var divisions = store.Divisions.AsNoTracking().ToDictionary(d => d.Key);
        var rules = new CalendarCodes(book, store.Leagues.AsNoTracking().ToDictionary(l => l.Key));
        return new()
        {
            Rules = rules, Divisions = divisions, Teams = store.Teams.AsNoTracking().ToDictionary(t => t.Key), Parks = store.Parks.AsNoTracking().ToDictionary(p => p.Key),
            Diamonds = store.Diamonds.AsNoTracking().ToDictionary(d => d.Key), Blackouts = [.. store.Blackouts.AsNoTracking().OrderBy(b => b.From).ThenBy(b => b.Kind).ThenBy(b => b.Of)],
            Sunset = Sunsets.In(store.District.AsNoTracking().FirstOrDefault()?.Zone ?? "Etc/UTC"),
            Staff = new(rules, divisions, store.Games.AsNoTracking(), store.RosterPlaces.AsNoTracking(), store.Appearances.AsNoTracking()),
        };
    }

    public static Schedule Of(DistrictStore store, Codebook book) => new(Surroundings(store, book), store.Games.AsNoTracking());
}
