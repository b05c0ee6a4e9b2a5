using System.Globalization;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>A minor's game is over by the hour of the age band.</summary>
public sealed record HomeByThen() : CrewConstraint("youth curfew", "A minor's game is over by the hour of the age.", Hold.Safety)
{
    public override Citation Source => Common("youth curfews");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        if (seat.Person.IsMinor && seat.Game.Code.Hour(seat.Person.Person.Band, seat.Game.EndHour) is { } bar)
            yield return Broken(seat, $"{bar.Title}; it ends at {seat.Game.End.ToString("HH:mm", CultureInfo.InvariantCulture)}", bar.Source);
    }
}
