namespace Umpirage.District.Crews;

/// <summary>Who goes where when a crew is missing shortly before a game, how it starts, who stands by, and why the others not.</summary>
/// <param name="OneUmpireUntil">The plate is there, the bases not yet: one umpire works alone until then.</param>
/// <param name="StartsLate">Nobody has the plate in time: the game can begin then.</param>
public sealed record CallUp(CrewGame Game, IReadOnlyList<(string Place, Substitute Who)> Called, IReadOnlyList<string> StillOpen, DateTime? OneUmpireUntil, DateTime? StartsLate,
    IReadOnlyList<Substitute> Backups, IReadOnlyList<Substitute> Rejected)
{
    /// <summary>Fills the open places that the division requires one after the other, the plate first.</summary>
    /// <param name="places">Only these of the open ones.</param>
    public static CallUp Of(CrewPlan plan, CrewGame game, Calling calling, IReadOnlyCollection<string>? places = null)
    {
        var called = new List<(string, Substitute)>();
        var open = new List<string>();
        IReadOnlyList<Substitute> last = [];
        foreach (var place in plan.Open(game).Where(p => CrewPlace.IsRequired(p) && places?.Contains(p) != false))
        {
            last = Subs.For(plan, game, place, calling);
            if (last.FirstOrDefault(s => s.Standing is Standby.Legal) is not { } best) { open.Add(place); continue; }
            called.Add((place, best));
            plan = plan.With(game, place, best.Person);
        }
        last = [.. last.Where(s => called.All(c => c.Item2.Person.Key != s.Person.Key))];
        var (plate, others) = (called.Where(c => c.Item1 == CrewPlace.Plate).Select(c => c.Item2.Arrives).FirstOrDefault(), called.Where(c => c.Item1 != CrewPlace.Plate).Select(c => c.Item2.Arrives).Max());
        return new(game, called, open, others > game.Start && plate is not null ? others : null, plate > game.Start ? plate : null,
            [.. last.Where(s => s.Standing is Standby.Backup or Standby.Moved or Standby.Legal)], [.. last.Where(s => s.Standing == Standby.No)]);
    }
}
