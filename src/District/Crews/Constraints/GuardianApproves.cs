using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>A minor umpires only while a guardian on record says so.</summary>
public sealed record GuardianApproves() : CrewConstraint("guardian's approval", "A minor works only with a guardian's approval that holds that day.", Hold.Safety)
{
    public override Citation Source => Common("youth umpire programmes: a guardian's agreement");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        var person = seat.Person;
        if (!person.IsMinor || person.Approvals.Any(a => person.Guardians.Contains(a.Guardian) && a.From <= seat.Game.Day && seat.Game.Day <= a.Until && plan.Person(a.Guardian)?.IsMinor != true)) yield break;
        yield return Broken(seat, person.Guardians.Count == 0 ? "no guardian on record" : "no guardian's approval holds that day");
    }
}
