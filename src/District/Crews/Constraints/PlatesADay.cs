using System.Globalization;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>The most plates on one day, fewer in the danger band of the heat index.</summary>
public sealed record PlatesADay() : CrewConstraint("plates a day", "Nobody works more plates on one day than the code allows, fewer in great heat.", Hold.Safety)
{
    public override Citation Source => Common("workload caps of volunteer umpires");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        if (!seat.IsPlate) yield break;
        var before = Before.Of(plan, seat).Count(g => g.IsPlate);
        var heat = plan.HeatOn(seat.Game.Day);
        if (seat.Game.Code.Plates(before, heat) is not { } bar) yield break;
        var index = heat is { } f && seat.Game.Code.InDanger(f) ? string.Create(CultureInfo.InvariantCulture, $", heat index {f:0.0} F") : "";
        yield return Broken(seat, $"{bar.Title}; it would be number {before + 1}{index}", bar.Source);
    }
}
