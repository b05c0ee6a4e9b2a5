using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>The youth base is for learning: a minor has it. And a place has to be one of the division's.</summary>
public sealed record YouthPlaceForYouth() : CrewConstraint("place", "A place belongs to the division, and the youth base to a minor.", Hold.Rule)
{
    public override Citation Source => Common("the district's divisions as played");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        if (seat.Place == CrewPlace.YouthBase && !seat.Person.IsMinor) yield return Broken(seat, "the youth base is for a minor");
        if (!CrewPlace.Of(seat.Game.Division).Contains(seat.Place)) yield return Broken(seat, $"{seat.Game.Division.Key} has no place '{seat.Place}'");
    }
}
