using System.Globalization;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>Nobody is in two games at once, nor twice in one crew, nor coordinates one while umpiring another.</summary>
public sealed record OneGameAtATime() : CrewConstraint("one game at a time", "Nobody is in two games at once.", Hold.Rule, Passing: true)
{
    public override Citation Source => Common("nobody can be in two places");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        var own = seat.Game;
        foreach (var game in Before.Of(plan, seat))
        {
            if (game.End > own.Start && game.Start < own.End)
                yield return Broken(seat, game.Seated?.Game.Key == own.Key ? $"in the same crew as {game.Seated.Place}" : $"on {game.InWords} until {game.End.ToString("HH:mm", CultureInfo.InvariantCulture)}");
        }
        if (plan.CoordinatedBy(seat.Person).FirstOrDefault(g => g.Key != own.Key && g.End > own.Start && g.Start < own.End) is { } watches)
            yield return Broken(seat, $"coordinator of {watches.Key} until {watches.End.ToString("HH:mm", CultureInfo.InvariantCulture)}");
    }
}
