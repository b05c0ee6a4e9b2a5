using Umpirage.District.People;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>A game with a minor in its crew has a named adult who coaches neither team and is at one game at a time.</summary>
public sealed record AdultCoordinator() : CrewConstraint("adult coordinator", "A minor's game has a named adult coordinator, no coach of that game, at one game at a time.", Hold.Safety)
{
    public override Citation Source => Common("youth umpire programmes: a named adult at the game");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        if (!seat.Person.IsMinor) yield break;
        var game = seat.Game;
        if (game.Coordinator is not { } adult) { yield return Broken(seat, "no adult coordinator is named for the game"); yield break; }
        if (adult.IsMinor) yield return Broken(seat, $"the coordinator {adult.Name} is no adult");
        if (adult.Roles.Any(r => r.Role == Role.Manager && (r.Team == game.Home.Key || r.Team == game.Visitor.Key))) yield return Broken(seat, $"the coordinator {adult.Name} manages a team of the game");
        if (plan.CoordinatedBy(adult).FirstOrDefault(o => o.Key != game.Key && o.Start < game.End && game.Start < o.End) is { } other)
            yield return Broken(seat, $"the coordinator {adult.Name} has {other.Key} at the same time");
        if (plan.Of(adult).FirstOrDefault(s => s.Game.Key != game.Key && s.Game.Start < game.End && game.Start < s.Game.End) is { } works)
            yield return Broken(seat, $"the coordinator {adult.Name} umpires {works.Game.Key} at the same time");
    }
}
