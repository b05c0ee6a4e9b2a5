using Umpirage.District.Crews;
using Umpirage.District.Crews.Constraints;
using Umpirage.District.People;
using Umpirage.Store;

namespace Umpirage.Web;

/// <summary>A week's umpired games with their crews, as far as the viewer may see them.</summary>
/// <param name="Sets">The viewer sets crews: sees what the check finds and why places are open.</param>
/// <param name="Breaches">What the check finds in games that lie ahead, by game.</param>
public sealed record CrewBoard(DateOnly Monday, CrewPlan Plan, IReadOnlyList<CrewGame> Games, bool Sets, ILookup<string, Breach> Breaches)
{
    private const int Week = 7;

    public static CrewBoard Of(DistrictStore store, UmpiresCodes codes, Viewer viewer, DateOnly day, DateTime now)
    {
        var monday = AsOffered.Monday(day);
        var plan = CrewPlan.Of(CrewReader.Read(store), codes, alsoPast: true);
        List<CrewGame> games = [.. plan.Games.Where(g => g.Day >= monday && g.Day < monday.AddDays(Week) && CrewPlace.Of(g.Division).Count > 0 && viewer.May(Deed.SeeCrews, league: g.Home.League)).OrderBy(g => g.Start).ThenBy(g => g.Key, StringComparer.Ordinal)];
        var sets = viewer.May(Deed.SetCrews);
        var breaches = sets ? games.Where(g => g.Start > now).SelectMany(plan.CrewOf).SelectMany(s => CrewCheck.Of(plan, s)) : [];
        return new(monday, plan, games, sets, breaches.ToLookup(b => b.Game));
    }

    public IEnumerable<DateOnly> Nights => Games.Select(g => g.Day).Distinct();

    public IReadOnlyList<CrewGame> On(DateOnly night) => [.. Games.Where(g => g.Day == night)];

    /// <summary>The night asked for, or the first from today on that has games, or the week's first.</summary>
    public DateOnly Night(DateOnly? asked, DateOnly today) =>
        asked is { } night && Nights.Contains(night) ? night : Nights.Where(n => n >= today).Concat(Nights).FirstOrDefault(Monday);
}
