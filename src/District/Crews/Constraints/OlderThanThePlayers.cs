using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>A minor is clearly older than the players, counted from the youngest age of the band.</summary>
public sealed record OlderThanThePlayers() : CrewConstraint("age gap", "A minor is clearly older than the oldest players of the division.", Hold.Safety)
{
    public override Citation Source => Common("youth umpire programmes: clearly older than those who play");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        var (person, code) = (seat.Person, seat.Game.Code);
        if (!person.IsMinor) yield break;
        var olderBy = person.AtLeast - code.OldestPlayer;
        if (code.Players(person.Person.Band, olderBy) is { } bar)
            yield return Broken(seat, $"{bar.Title}: at least {person.AtLeast} by the age band, players up to {code.OldestPlayer}", bar.Source);
    }
}
