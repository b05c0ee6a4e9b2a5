namespace Umpirage.District.Calendar.Constraints;

/// <summary>A game on a diamond without lights that is planned into the dark.</summary>
public sealed class Daylight : Constraint
{
    /// <summary>A day's minutes: where the sun does not set there is light enough.</summary>
    private const double AllDay = 1440;

    public override string Name => "daylight on a diamond without lights";
    public override string Sentence => "On a diamond without lights a game is over while there is daylight, counted to sunset.";
    public override IReadOnlyList<string> Sheets => ["playing hours"];

    public override IEnumerable<Violation> Find(Schedule schedule)
    {
        foreach (var game in schedule.Standing)
        {
            if (schedule.Surroundings.Diamonds[game.Diamond].Lit) continue;
            var code = schedule.CodeOf(game);
            var end = game.Start.AddMinutes(code.Minutes);
            if (schedule.Surroundings.SunsetAt(game.Diamond, game.Day) is not { } sunset) continue;
            // the hour of the age is another constraint's matter, and does not hide this one
            var hour = Math.Min((end - game.Start.Date).TotalHours, code.LatestHour ?? AllDay);
            if (code.NotPlannedThen(hour, lit: false, (sunset - end).TotalMinutes) is not { } not) continue;
            yield return Broken(game.Diamond, [game], $"{game.Key} is over at {Said.Clock(end)} on {Said.Diamond(schedule, game.Diamond)}, which has no lights; the sun sets at {Said.Clock(sunset)}", $"over {code.Written("daylight to spare")} before sunset", Said.Source(not.Bar));
        }
    }
}
