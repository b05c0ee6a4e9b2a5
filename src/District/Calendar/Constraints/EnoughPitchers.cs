namespace Umpirage.District.Calendar.Constraints;

/// <summary>A team that has fewer pitchers who may pitch on a day than it starts with. A wish: who will pitch before that day is not known.</summary>
public sealed class EnoughPitchers : Constraint
{
    public override string Name => "enough pitchers who may pitch";
    public override string Sentence => "Each team has, by the logs on record, enough pitchers who may pitch on the day.";
    public override IReadOnlyList<string> Sheets => ["rained-out game", "pitcher limits", "rest after pitching", "innings pitched", "pitching innings"];
    public override bool Hard => false;

    public override IEnumerable<Violation> Find(Schedule schedule)
    {
        if (schedule.Surroundings.Staff is not { } staff) yield break;
        foreach (var game in schedule.Standing)
        {
            if (!game.IsAhead) continue;
            var (code, address) = (schedule.CodeOf(game), schedule.AddressOf(game));
            foreach (var team in new[] { game.Visitor, game.Home })
                if (staff.Count(team, address, game.Division, game.Day) is { } count && count.May < code.PitchersToStart)
                    yield return Broken(team, [game], $"{count.May} of {count.OfAll} pitchers of {Said.Team(schedule, team)} may pitch on {Said.Day(game.Day)}, by the logs on record", $"{code.Written("pitchers to start with")} (legal is not safe)", $"rained-out game, {code.Source("pitchers to start with")}");
        }
    }
}
