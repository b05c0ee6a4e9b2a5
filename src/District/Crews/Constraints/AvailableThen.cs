using System.Globalization;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews.Constraints;

/// <summary>The whole game lies in one of the hours that the umpire gave, and on a day when the umpire is not away.</summary>
public sealed record AvailableThen() : CrewConstraint("availability", "The game lies in the hours that the umpire gave, on no day away.", Hold.Rule)
{
    public override Citation Source => Common("hours as the umpire gave them");

    public override IEnumerable<Breach> Find(CrewPlan plan, Seated seat)
    {
        var game = seat.Game;
        if (seat.Person.Aways.FirstOrDefault(a => a.On(game.Day)) is { } away)
        {
            yield return Broken(seat, away.From == away.Until ? $"is away on {CodeAddress.Day(away.From)}" : $"is away from {CodeAddress.Day(away.From)} to {CodeAddress.Day(away.Until)}");
            yield break;
        }
        var hours = seat.Person.Hours.Where(h => h.Day == game.Start.DayOfWeek).ToList();
        // an hour past midnight belongs to no day of the week that anybody gave
        if (game.End.Date == game.Start.Date && hours.Any(h => h.From <= TimeOnly.FromDateTime(game.Start) && TimeOnly.FromDateTime(game.End) <= h.Until)) yield break;
        var end = game.End.ToString("HH:mm", CultureInfo.InvariantCulture);
        yield return Broken(seat, hours.Count == 0 ? $"gave no hours on {game.Start.DayOfWeek}"
            : $"gave {Words.And([.. hours.Select(h => $"{h.From:HH:mm} to {h.Until:HH:mm}")])} on {game.Start.DayOfWeek}; the game lasts from {game.Start.ToString("HH:mm", CultureInfo.InvariantCulture)} to {end}");
    }
}
