namespace Umpirage.District.Calendar.Constraints;

/// <summary>More days with two games within seven days than the code allows a team.</summary>
public sealed class DoubleheadersInSevenDays : Constraint
{
    public override string Name => "doubleheaders in seven days";
    public override string Sentence => "A team plays no more doubleheaders in any seven days than its code allows.";
    public override IReadOnlyList<string> Sheets => ["games a day"];

    public override IEnumerable<Violation> Find(Schedule schedule)
    {
        foreach (var day in TeamDays.Of(schedule))
            for (var place = 1; place < day.Played.Count; place++)
            {
                var code = schedule.CodeOf(day.Played[place]);
                if (!code.CountsDoubleheaders || TeamDays.Ruling(schedule, day, place, countDoubleheaders: false).Barred is not null || TeamDays.Ruling(schedule, day, place, countDoubleheaders: true).Barred is not { } bar) continue;
                var earlier = schedule.OfTeam(day.Team).Where(g => g.Day < day.Day && g.Day.DayNumber >= day.Day.DayNumber - 6).GroupBy(g => g.Day).Where(d => d.Count() > 1).SelectMany(d => d);
                yield return Broken(day.Team, [.. earlier, .. day.Played.Take(place + 1)], $"doubleheader number {day.DoubleheadersBefore + 1} of {Said.Team(schedule, day.Team)} in the seven days to {Said.Day(day.Day)}",
                    $"{code.Written("doubleheaders in seven days")} in seven days", Said.Source(bar));
                break;
            }
    }
}
