namespace Umpirage.District.Crews;

/// <summary>Recounts every constraint on a plan, whoever made it.</summary>
public static class CrewCheck
{
    /// <summary>Everything that is not kept, by game and place.</summary>
    /// <param name="games">Only of these games; of all where none are named.</param>
    public static IReadOnlyList<Breach> All(CrewPlan plan, IReadOnlySet<string>? games = null) =>
        [.. plan.Seats.Where(s => games?.Contains(s.Game.Key) != false).OrderBy(s => s.Game.Start).ThenBy(s => s.Game.Key, StringComparer.Ordinal).ThenBy(s => s.Place, StringComparer.Ordinal).SelectMany(s => Of(plan, s))];

    /// <summary>Everything that one place does not keep, safety first.</summary>
    public static IEnumerable<Breach> Of(CrewPlan plan, Seated seat)
    {
        foreach (var constraint in CrewConstraints.All)
            foreach (var breach in constraint.Find(plan, seat)) yield return breach;
    }

    /// <summary>What a change of these people's places in these games would newly break: what bars it, and what is only wished otherwise.</summary>
    internal static (IReadOnlyList<Breach> Reasons, IReadOnlyList<Breach> Wishes) Newly(CrewPlan before, CrewPlan after, IReadOnlyList<CrewPerson> people, IReadOnlyList<CrewGame> games)
    {
        IEnumerable<Breach> Found(CrewPlan plan) => people.SelectMany(who => games.SelectMany(game => Around(plan, who, game)));
        var known = Found(before).ToHashSet();
        var newly = Found(after).Distinct().Where(b => !known.Contains(b)).ToList();
        return ([.. newly.Where(b => b.Hold != Hold.Wish)], [.. newly.Where(b => b.Hold == Hold.Wish)]);
    }

    /// <summary>Everything on a person's day and in a game's crew: all that giving the person that game could change, their week's offer included.</summary>
    public static IReadOnlyList<Breach> Around(CrewPlan plan, CrewPerson person, CrewGame game)
    {
        var monday = Constraints.AsOffered.Monday(game.Day);
        var near = plan.Of(person).Where(s => Constraints.AsOffered.Monday(s.Game.Day) == monday).ToHashSet();
        near.UnionWith(plan.CrewOf(plan.Game(game.Key)!));
        // where the person coordinates that day, minors hang on it
        foreach (var other in plan.CoordinatedBy(person)) if (other.Day == game.Day) near.UnionWith(plan.CrewOf(other));
        return [.. near.SelectMany(s => Of(plan, s))];
    }
}
