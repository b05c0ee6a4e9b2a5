using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>Enough minutes between two games of one day. Games that overlap are another matter.</summary>
public sealed record BreakBetween() : CrewConstraint("break between games", "Between two games lie enough minutes.", Hold.Rule, Passing: true)
{
    public override Citation Source => Common("workload caps of volunteer umpires");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        double? least = null;
        foreach (var game in Before.Of(plan, seat))
        {
            var minutes = Math.Max((seat.Game.Start - game.End).TotalMinutes, (game.Start - seat.Game.End).TotalMinutes);
            if (minutes >= 0 && (least is null || minutes < least)) least = minutes;
        }
        if (least is { } min && seat.Game.Code.Break(min) is { } bar) yield return Broken(seat, $"{bar.Title}: {min:0} min", bar.Source);
    }
}
