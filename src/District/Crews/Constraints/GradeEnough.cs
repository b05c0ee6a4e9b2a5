using Umpirage.District.People;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>The plate asks for a plate grade; a trainee works the bases beside a plate umpire.</summary>
public sealed record GradeEnough() : CrewConstraint("grade", "The plate is worked by somebody of plate grade.", Hold.Rule)
{
    public override Citation Source => Common("grades of umpires");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        if (seat.Person.Official is not { } official) { yield return Broken(seat, "no umpire: no grade on record"); yield break; }
        if (seat.IsPlate && official.Grade < Grade.Plate) yield return Broken(seat, $"{official.Grade.ToString().ToLowerInvariant()} grade, the plate asks for plate grade");
    }
}
