using Umpirage.District.People;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>No child, kin, own team or post on either side.</summary>
public sealed record NoInterest() : CrewConstraint("interest", "The umpire has no child, kin or post with a team of the game or its league.", Hold.Rule)
{
    public override Citation Source => Common("no umpire in one's own cause");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        Team[] teams = [seat.Game.Home, seat.Game.Visitor];
        foreach (var team in teams)
        {
            foreach (var tie in seat.Person.Interests.Where(i => i.Kind == InterestOf.Team ? i.Of == team.Key : i.Of == team.League))
                yield return Broken(seat, $"{tie.Why}: {team.Name}");
            if (seat.Person.Roles.Any(r => r.Role == Role.Manager && r.Team == team.Key)) yield return Broken(seat, $"manages {team.Name}");
        }
    }
}
