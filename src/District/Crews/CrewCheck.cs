namespace Umpirage.District.Crews;

/// <summary>Recounts every constraint on a plan, whoever made it.</summary>
public static class CrewCheck
{
    /// <summary>Everything that is not kept, by game and place.</summary>
    public static IReadOnlyList<Breach> All(CrewPlan plan) =>
        [.. plan.Seats.OrderBy(s => s.Game.Start).ThenBy(s => s.Game.Key, StringComparer.Ordinal).ThenBy(s => s.Place, StringComparer.Ordinal).SelectMany(s => Of(plan, s))];

    /// <summary>Everything that one place does not keep, safety first.</summary>
    public static IEnumerable<Breach> Of(CrewPlan plan, Seated seat)
    {
        foreach (var constraint in CrewConstraints.All)
            foreach (var breach in constraint.Find(plan, seat)) yield return breach;
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
