using Microsoft.EntityFrameworkCore;
using Umpirage.District.Calendar;
using Umpirage.District.Crews;

namespace Umpirage.Store;

/// <summary>Publishes crews, so that they count as told, and freezes them, so that no search touches them.</summary>
public static class Publishing
{
    /// <summary>The games of a week that have not begun, called off or not, with the places that differ from what was told.</summary>
    public static IReadOnlyList<PlaceChange> Pending(CrewRecords records, DateOnly monday, DateTime now, DateTime at) =>
        Published.Of(records.Published).Against(records, records.Games.Where(g => g.Day >= monday && g.Day < monday.AddDays(7) && g.Start > now), at);

    /// <summary>Publishes the crews of a week as they stand. Returns the moment they are known by, or the reasons why nothing was published: nothing new, or a crew against a safety rule.</summary>
    public static (DateTime At, IReadOnlyList<string> Faults) Publish(DistrictStore store, DateOnly monday, DateTime now)
    {
        var at = WholeSecond.Now;
        var (_, faults) = Whole.Of(store, faults =>
        {
            var records = CrewReader.Read(store);
            var pending = Pending(records, monday, now, at);
            if (!pending.Any(c => c.Untold)) faults.Add("nothing differs from what was published");
            var plan = CrewPlan.Of(records, UmpiresCodes.For(store.Codes!()));
            var games = pending.Select(c => c.Game).ToHashSet();
            faults.AddRange(CrewCheck.All(plan, games).Where(b => b.Hold == Hold.Safety).Select(b => $"not published, a safety rule bars it: {b.Place} of {b.Game}: {b.Constraint}, {b.InWords}"));
            if (faults.Count == 0) store.AddRange(pending.Select(c => c.Now));
            return "";
        });
        return (at, faults);
    }

    /// <summary>Counts changed places of published games as told, since those concerned know: they said yes to a swap, or came when they were called.</summary>
    public static void Tell(DistrictStore store, IReadOnlyList<Assignment> changed)
    {
        var at = WholeSecond.Now;
        foreach (var place in changed.Where(c => store.Published.Any(p => p.Game == c.Game)))
            if (store.Games.Find(place.Game) is { } game) store.Put(new PublishedPlace(place.Game, place.Place, at, place.Person, game.Diamond, game.Start));
    }

    /// <summary>Freezes the crews of games, or thaws them. Returns faults; with any nothing is done.</summary>
    public static IReadOnlyList<string> Freeze(DistrictStore store, IReadOnlyCollection<string> games, bool freeze) => Whole.Of(store, faults =>
    {
        var at = WholeSecond.Now;
        foreach (var key in games.Distinct())
        {
            if (store.Games.Find(key) is null) { faults.Add($"there is no game '{key}'; {Rules.Ground.Words.Offer(key, [.. store.Games.Select(g => g.Key)])}"); continue; }
            var frozen = store.Frozen.Find(key);
            if (freeze && frozen is null) store.Add(new FrozenCrew(key, at));
            else if (!freeze && frozen is not null) store.Remove(frozen);
        }
        return "";
    }).Item2;
}
