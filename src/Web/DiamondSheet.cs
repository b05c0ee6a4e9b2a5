using Microsoft.EntityFrameworkCore;
using NodaTime;
using Umpirage.District.Clock;
using Umpirage.District.Diamonds;
using Umpirage.District.People;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;
using Umpirage.Store;

namespace Umpirage.Web;

/// <summary>A diamond as the desk shows it: laid out for every division of the district, those that play on it first, and for the one that was asked.</summary>
public sealed record DiamondSheet(Diamond Diamond, Park Park, DateOnly Day, IReadOnlyList<(string Name, Layout Layout)> Here, IReadOnlyList<(string Name, Layout Layout)> Elsewhere, (string Name, Layout Layout)? Chosen, IReadOnlyList<string> Faults)
{
    /// <summary>When the sun is asked for on a day without a game: an evening game of the week.</summary>
    private const string UsualFrom = "17:30", UsualUntil = "20:00";

    private static readonly TimeSpan UsualGame = TimeSpan.FromHours(2);

    /// <summary>Null when there is no such diamond.</summary>
    public static DiamondSheet? Of(DistrictStore store, Shelf shelf, Sitting sitting, string key, DiamondAsked asked)
    {
        if (store.Diamonds.AsNoTracking().FirstOrDefault(d => d.Key == key) is not { } diamond) return null;
        var faults = new List<string>();
        var day = string.IsNullOrWhiteSpace(asked.On) ? sitting.Today : Typed.Day(asked.On) ?? sitting.Today;
        if (!string.IsNullOrWhiteSpace(asked.On) && Typed.Day(asked.On) is null) faults.Add($"day: found '{Typed.Cut(asked.On, 20)}'; allowed is a day written 2026-05-16");
        var played = store.Games.AsNoTracking().Where(g => g.Diamond == key).Select(g => g.Division).Distinct().ToHashSet();
        List<(string Name, Layout Layout)> here = [], elsewhere = [];
        foreach (var code in store.Divisions.AsNoTracking().OrderBy(d => d.Key).AsEnumerable().GroupBy(d => d.Code))
        {
            var findings = new List<Finding>();
            if (Casebook.Code(shelf.Book, code.Key, day, faults.Add) is not { } found || Layout.Of(found, findings) is not { } layout) { faults.AddRange(findings.Select(f => f.ToString())); continue; }
            // a diamond nobody plays on yet is for whoever's bases lie as its do
            List<Division> mine = played.Count > 0 ? code.Where(d => played.Contains(d.Key)).ToList() : layout.Measures.Feet("base distance") == diamond.BasePath ? [.. code] : [];
            if (mine.Count > 0) here.Add((Words.And([.. mine.Select(d => d.Key)]), layout));
            else elsewhere.Add((Words.And([.. code.Select(d => d.Key)]), layout));
        }
        var chosen = here.Concat(elsewhere).Where(l => l.Name == asked.Division).Concat(here).Concat(elsewhere).Cast<(string, Layout)?>().FirstOrDefault();
        return new(diamond, store.Parks.Find(diamond.Park)!, day, here, elsewhere, chosen, faults);
    }

    /// <summary>The hours of the day's games on the diamond; of an evening game when there is none.</summary>
    public (string From, string Until) Hours(DistrictStore store)
    {
        var (start, end) = (Day.ToDateTime(default), Day.AddDays(1).ToDateTime(default));
        var starts = store.Games.AsNoTracking().Where(g => g.Diamond == Diamond.Key && g.Start >= start && g.Start < end).Select(g => g.Start).ToList();
        return starts.Count == 0 ? (UsualFrom, UsualUntil) : ($"{starts.Min():HH:mm}", starts.Max().Add(UsualGame) is var over && over < end ? $"{over:HH:mm}" : "23:59");
    }

    /// <summary>The sun over the diamond; null, with the reasons if any, when nobody knows where it looks or the hours cannot be read.</summary>
    /// <param name="usual">The hours where none were asked for.</param>
    public SunPath? Sun((string From, string Until) usual, DiamondAsked asked, string zoneName, List<string> faults)
    {
        var before = faults.Count;
        string Or(string? typed, string other) => string.IsNullOrWhiteSpace(typed) ? other : Typed.Cut(typed, 20);
        var looks = string.IsNullOrWhiteSpace(asked.Looks) ? Diamond.Bearing : Compass.Read(Typed.Cut(asked.Looks, 20), faults);
        if (Spot.ZoneOf(zoneName, faults) is not { } zone || Day.Year is < Almanac.FirstYear or > Almanac.LastYear) return null;
        var date = LocalDate.FromDateOnly(Day);
        var (from, until) = (WallClock.Read(Or(asked.From, usual.From), date, zone, faults), WallClock.Read(Or(asked.Until, usual.Until), date, zone, faults));
        if (from > until) faults.Add($"the sun is asked for from {Or(asked.From, usual.From)} until {Or(asked.Until, usual.Until)}; the end comes after the beginning");
        return faults.Count > before || Chosen is not { } chosen || looks is null ? null : SunPath.Of(chosen.Layout, new(Park.Latitude, Park.Longitude, zone), date, from!.Value, until!.Value, looks.Value);
    }
}
