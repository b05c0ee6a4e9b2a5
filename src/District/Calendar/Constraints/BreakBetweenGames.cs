namespace Umpirage.District.Calendar.Constraints;

/// <summary>A team's second game of a day that is planned before the break is over, where the code sets one.</summary>
public sealed class BreakBetweenGames : Constraint
{
    public override string Name => "break between games";
    public override string Sentence => "Between two games of one day a team has the break its code asks for.";
    public override IReadOnlyList<string> Sheets => ["games a day", "playing hours"];

    public override IEnumerable<Violation> Find(Schedule schedule)
    {
        foreach (var day in TeamDays.Of(schedule))
            for (var place = 1; place < day.Played.Count; place++)
            {
                var (before, game) = (day.Played[place - 1], day.Played[place]);
                var (code, minutes) = (schedule.CodeOf(game), (game.Start - schedule.End(before)).TotalMinutes);
                if (!code.HasBreak || minutes < 0 || code.Day(place, day.Rest, 0, (int)minutes).MustWait is not { } bar) continue;
                yield return Broken(day.Team, [before, game], $"{Said.Team(schedule, day.Team)} has {minutes:0} minutes between {before.Key} and {game.Key}", $"{code.Written("break between games")} at least", Said.Source(bar));
            }
    }
}
