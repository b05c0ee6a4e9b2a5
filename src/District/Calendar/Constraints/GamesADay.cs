namespace Umpirage.District.Calendar.Constraints;

/// <summary>More games on one day than the code allows a team. The rest of a suspended game, finished first, counts as the code says.</summary>
public sealed class GamesADay : Constraint
{
    public override string Name => "games a day";
    public override string Sentence => "A team plays no more games on one day than its code allows; the rest of a suspended game may come before them.";
    public override IReadOnlyList<string> Sheets => ["games a day"];

    public override IEnumerable<Violation> Find(Schedule schedule)
    {
        foreach (var day in TeamDays.Of(schedule))
            for (var place = 1; place < day.Played.Count; place++)
                if (TeamDays.Ruling(schedule, day, place, countDoubleheaders: false).Barred is { } bar)
                {
                    var unfinished = day.Rest == RestOfSuspended.NotFirst ? ", the rest of a suspended game not first among them" : "";
                    yield return Broken(day.Team, [.. day.Played.Take(place + 1)], $"game number {place + 1} of {Said.Team(schedule, day.Team)} on {Said.Day(day.Day)}{unfinished}", "two games on one day, and the rest of a suspended one before them", Said.Source(bar));
                    break;
                }
    }
}
