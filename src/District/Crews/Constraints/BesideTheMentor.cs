using Umpirage.District.People;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>Who is to work beside a mentor does: the mentor sits in the crew.</summary>
public sealed record BesideTheMentor() : CrewConstraint("mentor", "Who is to work beside a mentor has the mentor in the crew.", Hold.Rule)
{
    public override Citation Source => Common("after a bad day the next game is beside a mentor");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        var day = seat.Game.Day;
        var mentors = seat.Person.Pairings.Where(p => p.Kind == PairingKind.Mentor && p.Person == seat.Person.Key && p.From <= day && day <= p.Until).Select(p => p.Other).ToList();
        if (mentors.Count > 0 && !plan.CrewOf(seat.Game).Any(s => mentors.Contains(s.Person.Key)))
            yield return Broken(seat, $"until {CodeAddress.Day(seat.Person.Pairings.Where(p => p.Kind == PairingKind.Mentor && p.Person == seat.Person.Key).Max(p => p.Until))} only beside {Words.Or([.. mentors.Select(m => plan.Person(m)?.Name ?? m)])}");
    }
}
