using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>Where two leagues meet, an umpire of neither is better; a code may ask for it.</summary>
public sealed record Neutral() : CrewConstraint("neutrality", "Where two leagues meet, the umpire belongs to neither.", Hold.Wish)
{
    public override Citation Source => Common("neutral umpires between leagues and in tournaments");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        var (game, league) = (seat.Game, seat.Person.Person.League);
        if (game.Home.League == game.Visitor.League || (league != game.Home.League && league != game.Visitor.League) || game.Code.OwnLeague == "taken like any other") yield break;
        yield return Broken(seat, $"of the same league as {(league == game.Home.League ? game.Home : game.Visitor).Name}", game.Code.SourceOf("umpire of one of two leagues"), game.Code.OwnLeague == "not taken" ? Hold.Rule : Hold.Wish);
    }
}
