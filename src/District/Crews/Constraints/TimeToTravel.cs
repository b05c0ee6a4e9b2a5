using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>From the end of one game there is time to reach the next. Where games elsewhere are played is not known.</summary>
public sealed record TimeToTravel() : CrewConstraint("travel", "There is time to travel from the game before.", Hold.Rule, Passing: true)
{
    public override Citation Source => Common("a straight line at the code's speed, with minutes to pack and park");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        if (Before.Of(plan, seat).LastOrDefault(g => g.Seated is not null)?.Seated is not { } before || before.Game.Key == seat.Game.Key) yield break;
        var (has, needs) = ((seat.Game.Start - before.Game.End).TotalMinutes, Journey.Minutes(before.Game, seat.Game));
        if (has >= 0 && has < needs) yield return Broken(seat, $"{needs} min from {before.Game.Park.Name}, {has:0} are left", seat.Game.Code.SourceOf("travel speed"));
    }
}
