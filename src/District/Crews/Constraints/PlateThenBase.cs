using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>Plate, then bases: two plates running on one day are avoided.</summary>
public sealed record PlateThenBase() : CrewConstraint("plate rotation", "Two plates running on one day are avoided.", Hold.Wish)
{
    public override Citation Source => Common("plate and bases in turn");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        if (!seat.IsPlate) yield break;
        if (plan.DayOf(seat.Person, seat.Game.Day).TakeWhile(g => g.Seated is not { } s || s.Game.Key != seat.Game.Key).LastOrDefault() is { IsPlate: true } before) yield return Broken(seat, $"the plate straight after {before.InWords}");
    }
}
