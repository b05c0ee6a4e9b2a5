namespace Umpirage.District.Calendar.Constraints;

/// <summary>Games of one team on one day, two or more, as the code counts them.</summary>
internal sealed record TeamDay(string Team, DateOnly Day, IReadOnlyList<ScheduledGame> Played, int DoubleheadersBefore)
{
    public RestOfSuspended Rest => Played[0].RestOf is not null ? RestOfSuspended.First : Played.Any(g => g.RestOf is not null) ? RestOfSuspended.NotFirst : RestOfSuspended.None;
}

/// <summary>Finds the days on which teams play more than once.</summary>
internal static class TeamDays
{
    /// <summary>A doubleheader counts in the seven days that end with the day itself.</summary>
    private const int DaysBefore = 6;

    public static IEnumerable<TeamDay> Of(Schedule schedule)
    {
        foreach (var (team, games) in schedule.Teams)
        {
            var double_ = new List<DateOnly>();
            for (var i = 0; i < games.Count;)
            {
                var next = i + 1;
                while (next < games.Count && games[next].Day == games[i].Day) next++;
                if (next - i > 1)
                {
                    var day = new TeamDay(team, games[i].Day, [.. games.Skip(i).Take(next - i)], double_.Count(d => d.DayNumber >= games[i].Day.DayNumber - DaysBefore));
                    yield return day;
                    if (Enumerable.Range(1, day.Played.Count - 1).Any(k => schedule.CodeOf(day.Played[k]).Day(k, day.Rest, 0, null).Second)) double_.Add(day.Day);
                }
                i = next;
            }
        }
    }

    /// <summary>What the code makes of the game in a place of the day.</summary>
    public static DayRuling Ruling(Schedule schedule, TeamDay day, int place, bool countDoubleheaders) =>
        schedule.CodeOf(day.Played[place]).Day(place, day.Rest, countDoubleheaders ? day.DoubleheadersBefore : 0, null);
}
