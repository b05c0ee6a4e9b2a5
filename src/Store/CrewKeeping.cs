using Microsoft.EntityFrameworkCore;
using Umpirage.District.Calendar;
using Umpirage.District.Crews;

namespace Umpirage.Store;

/// <summary>Writes found crews: all of them in one transaction, or nothing when anything changed since the search began.</summary>
public static class CrewKeeping
{
    /// <summary>Returns the reasons why nothing was written; none when the crews stand.</summary>
    /// <param name="before">The plan that the search began with.</param>
    /// <param name="found">The plan that it found.</param>
    /// <param name="games">The games whose crews were sought.</param>
    public static IReadOnlyList<string> Keep(DistrictStore store, CrewPlan before, CrewPlan found, IReadOnlyList<CrewGame> games) => Whole.Of(store, faults =>
    {
        var keys = games.Select(g => g.Key).ToList();
        var now = store.Games.AsNoTracking().Where(g => keys.Contains(g.Key)).ToDictionary(g => g.Key);
        foreach (var game in games.Where(g => now.GetValueOrDefault(g.Key) != g.Game)) faults.Add($"{game.Key} was changed since; search again");
        foreach (var frozen in store.Frozen.AsNoTracking().Where(f => keys.Contains(f.Game)).OrderBy(f => f.Game)) faults.Add($"{frozen.Game} was frozen since; search again");
        var held = store.Assignments.Where(a => keys.Contains(a.Game)).AsEnumerable().Where(a => a.Person is not null).ToDictionary(a => (a.Game, a.Place), a => a.Person!);
        var was = games.SelectMany(before.CrewOf).ToDictionary(s => (s.Game.Key, s.Place), s => s.Person.Key);
        foreach (var (game, place) in held.Keys.Union(was.Keys).Where(k => held.GetValueOrDefault(k) != was.GetValueOrDefault(k)).Order())
            faults.Add($"the {place} of {game} was changed since: {held.GetValueOrDefault((game, place)) ?? "nobody"} has it, and {was.GetValueOrDefault((game, place)) ?? "nobody"} had it when the search began; search again");
        if (faults.Count > 0) return "";
        foreach (var place in found.Assignments(games)) store.Put(place);
        return "kept";
    }).Item2;
}
