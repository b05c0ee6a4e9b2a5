using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>The most games on one day, games elsewhere counted; what comes last is one too many.</summary>
public sealed record GamesADay() : CrewConstraint("games a day", "Nobody works more games on one day than the code allows, those elsewhere counted.", Hold.Safety)
{
    public override Citation Source => Common("workload caps of volunteer umpires");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        var before = Before.Of(plan, seat).Count;
        if (seat.Game.Code.Games(seat.Person.Person.Band, before) is { } bar) yield return Broken(seat, $"{bar.Title}; it would be number {before + 1}", bar.Source);
    }
}
