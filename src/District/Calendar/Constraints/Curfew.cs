namespace Umpirage.District.Calendar.Constraints;

/// <summary>A game planned to end after the hour of its age.</summary>
public sealed class Curfew : Constraint
{
    public override string Name => "over in time for the age";
    public override string Sentence => "A game is over, by its planned length, at the hour named for its age.";
    public override IReadOnlyList<string> Sheets => ["playing hours"];

    public override IEnumerable<Violation> Find(Schedule schedule)
    {
        foreach (var game in schedule.Standing)
        {
            var code = schedule.CodeOf(game);
            var end = game.Start.AddMinutes(code.Minutes);
            // daylight is another constraint's matter
            if (code.NotPlannedThen((end - game.Start.Date).TotalHours, lit: true, 0) is not { } not) continue;
            yield return Broken(game.Diamond, [game], $"{game.Key} ({game.Division}) is over at {Said.Clock(end)}, by its planned {code.Written("planned length")}", $"over by {Said.Hour(code.LatestHour ?? 24)}", Said.Source(not.Bar));
        }
    }
}
