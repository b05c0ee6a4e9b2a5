using Umpirage.District.People;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>Two who asked not to work together are in no crew together. The reason is nobody's business.</summary>
public sealed record KeptApart() : CrewConstraint("kept apart", "Two who asked for it are not put together.", Hold.Rule)
{
    public override Citation Source => Common("a request is kept without asking why");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        var day = seat.Game.Day;
        foreach (var pair in seat.Person.Pairings.Where(p => p.Kind == PairingKind.Apart && p.From <= day && day <= p.Until))
        {
            var other = pair.Person == seat.Person.Key ? pair.Other : pair.Person;
            if (other != seat.Person.Key && plan.CrewOf(seat.Game).Any(s => s.Person.Key == other)) yield return Broken(seat, $"not to be put together with {plan.Person(other)!.Name}");
        }
    }
}
