namespace Umpirage.District.Calendar.Constraints;

/// <summary>A team in two games at once, or without the time to get from one park to the other.</summary>
public sealed class TeamInOnePlace : Constraint
{
    public override string Name => "a team in one place at a time";
    public override string Sentence => "A team plays one game at a time, and has time to get from one park to the next.";
    public override IReadOnlyList<string> Sheets => ["playing hours", "rained-out game"];

    public override IEnumerable<Violation> Find(Schedule schedule)
    {
        foreach (var (team, games) in schedule.Teams)
            for (var i = 0; i + 1 < games.Count; i++)
                for (var k = i + 1; k < games.Count && games[k].Start.Date <= games[i].Start.Date.AddDays(1); k++)
                {
                    var (first, second, code) = (games[i], games[k], schedule.CodeOf(games[i]));
                    var end = schedule.End(first);
                    if (second.Start >= end.AddHours(12)) break;
                    var (from, to) = (schedule.Surroundings.ParkOf(first.Diamond), schedule.Surroundings.ParkOf(second.Diamond));
                    var there = end.AddMinutes(Travel.Minutes(from, to, code));
                    if (second.Start >= there) continue;
                    yield return second.Start < end
                        ? Broken(team, [first, second], $"{Said.Team(schedule, team)} would be in two games at {Said.Clock(second.Start)}: {first.Key} is planned until {Said.Clock(end)}", $"from {Said.Clock(there)} on", $"playing hours, {code.Source("planned length")}")
                        : Broken(team, [first, second], string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Said.Team(schedule, team)} has {(second.Start - end).TotalMinutes:0} minutes from {from.Name} to {to.Name}, {Travel.Km(from, to):0.0} km as the crow flies"),
                            $"{Travel.Minutes(from, to, code)} minutes: {code.Written("speed between parks")} and {code.Written("spare time between parks")}", $"rained-out game, {code.Source("speed between parks")}");
                }
    }
}
