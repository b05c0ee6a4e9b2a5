using Umpirage.District.Crews;
using Umpirage.District.Crews.Constraints;
using Umpirage.District.People;
using Umpirage.Store;

namespace Umpirage.Web;

/// <summary>A week's umpired games with their crews, as far as the viewer may see them.</summary>
/// <param name="Unseen">Games of the week whose crews are not published yet and not the viewer's to see.</param>
/// <param name="Sets">The viewer sets crews: sees what the check finds and why places are open.</param>
/// <param name="Checked">What the check finds in games that lie ahead, by game.</param>
/// <param name="Differing">Places of games that lie ahead which are not as they were published.</param>
public sealed record CrewBoard(DateOnly Monday, CrewPlan Plan, IReadOnlyList<CrewGame> Games, int Unseen, bool Sets, Lazy<ILookup<string, Breach>> Checked, Lazy<ILookup<string, PlaceChange>> Differing)
{
    private const int Week = 7;

    public static CrewBoard Of(DistrictStore store, Shelf shelf, Viewer viewer, DateOnly day, DateTime now)
    {
        var monday = AsOffered.Monday(day);
        var sight = CrewSight.Of(viewer, now);
        var plan = CrewDesk.Plan(store, shelf, sight);
        var sees = sight.Sees(plan.Records);
        var week = plan.Games.Where(g => g.Day >= monday && g.Day < monday.AddDays(Week) && CrewPlace.Of(g.Division).Count > 0 && viewer.May(Deed.SeeCrews, league: g.Home.League)).OrderBy(g => g.Start).ThenBy(g => g.Key, StringComparer.Ordinal).ToLookup(g => sees(g.Game));
        List<CrewGame> games = [.. week[true]];
        var sets = viewer.May(Deed.SetCrews);
        return new(monday, plan, games, week[false].Count(), sets, new(() => (sets ? games.Where(g => g.Start > now).SelectMany(plan.CrewOf).SelectMany(s => CrewCheck.Of(plan, s)) : []).ToLookup(b => b.Game)),
            new(() => (sets ? Publishing.Pending(plan.Records, monday, now, DateTime.UtcNow) : []).ToLookup(c => c.Game)));
    }

    public ILookup<string, Breach> Breaches => Checked.Value;
    public ILookup<string, PlaceChange> Pending => Differing.Value;

    public IReadOnlySet<string> Frozen { get; } = Plan.Records.Frozen.Select(f => f.Game).ToHashSet();

    /// <summary>Games of which people were told something else, or nothing yet.</summary>
    public int Untold => Pending.Count(p => p.Any(c => c.Untold));

    public IEnumerable<DateOnly> Nights => Games.Select(g => g.Day).Distinct();

    public IReadOnlyList<CrewGame> On(DateOnly night) => [.. Games.Where(g => g.Day == night)];

    /// <summary>The night asked for, or the first from today on that has games, or the week's first.</summary>
    public DateOnly Night(DateOnly? asked, DateOnly today) =>
        asked is { } night && Nights.Contains(night) ? night : Nights.Where(n => n >= today).Concat(Nights).FirstOrDefault(Monday);
}
