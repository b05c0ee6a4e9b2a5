using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>No minor is left with one adult off the field: the coordinator is somebody else than the crew's adults. They do not ride together alone either.</summary>
public sealed record NeverOneAdult() : CrewConstraint("never with one adult alone", "Off the field no minor is left with one adult alone, on the way neither.", Hold.Safety)
{
    public override Citation Source => Common("safeguarding: two adults, observable and interruptible");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        if (!seat.Person.IsMinor) yield break;
        var adults = plan.CrewOf(seat.Game).Where(s => !s.Person.IsMinor).Select(s => s.Person).ToList();
        if (adults.Count == 0) yield break;
        if (seat.Game.Coordinator is { } named && adults.All(a => a.Key != named.Key)) yield break;
        if (adults.Count == 1) yield return Broken(seat, $"{adults[0].Name} would be the only adult with the minor before and after the game");
        else if (seat.Game.Coordinator is { } own) yield return Broken(seat, $"the coordinator {own.Name} is one of the umpires");
    }
}
