using Umpirage.District.People;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>Tested for the game, the division or a higher one, and the position; who is tested for the plate may work the bases.</summary>
public sealed record Certified() : CrewConstraint("certificate", "A certificate for this game, division and position is valid that day.", Hold.Rule)
{
    public override Citation Source => Common("certificates with their scope");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        var (game, day) = (seat.Game, seat.Game.Day);
        var same = seat.Person.Certificates.Where(c => Words.Same(c.Game, game.Code.Code.Game)).ToList();
        var position = CrewPlace.PositionOf(seat.Place);
        var fits = same.Where(c => c.Position == position || c.Position == Position.Plate).Where(c => plan.DivisionPlace(c.Division) >= game.Code.DivisionPlace).ToList();
        if (fits.Any(c => c.From <= day && day <= c.Until)) yield break;
        if (fits.Count > 0) yield return Broken(seat, $"the certificate for {(fits.All(c => c.Until < day) ? $"it ran out {CodeAddress.Day(fits.Max(c => c.Until))}" : $"it begins {CodeAddress.Day(fits.Min(c => c.From))}")}");
        else if (same.Count == 0) yield return Broken(seat, $"no certificate in {game.Code.Code.Game}");
        else yield return Broken(seat, $"certified for {Words.And([.. same.Select(c => $"{c.Position.ToString().ToLowerInvariant()} up to {c.Division}").Distinct()])} only, asked for {position.ToString().ToLowerInvariant()} in {game.Division.Key}");
    }
}
