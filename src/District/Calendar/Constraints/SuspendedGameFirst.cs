namespace Umpirage.District.Calendar.Constraints;

/// <summary>Two teams that meet again while a suspended game between them is not finished.</summary>
public sealed class SuspendedGameFirst : Constraint
{
    public override string Name => "a suspended game first";
    public override string Sentence => "A suspended game is finished before its teams meet again.";
    public override IReadOnlyList<string> Sheets => ["suspended game"];

    public override IEnumerable<Violation> Find(Schedule schedule)
    {
        foreach (var stopped in schedule.Standing)
        {
            if (stopped.Status != GameStatus.Suspended) continue;
            var pair = schedule.OfTeam(stopped.Home).Where(g => g.Has(stopped.Visitor) && g.Key != stopped.Key && g.Start > stopped.Start).ToList();
            var (rest, next) = (pair.FirstOrDefault(g => g.RestOf == stopped.Key), pair.FirstOrDefault(g => g.RestOf is null));
            if (next is null || (rest is not null && rest.Start <= next.Start) || schedule.CodeOf(stopped) is not { SuspendedFirst: true } code) continue;
            yield return Broken(stopped.Home, rest is null ? [stopped, next] : [stopped, next, rest], $"{Said.Team(schedule, stopped.Visitor)} and {Said.Team(schedule, stopped.Home)} meet on {Said.Day(next.Day)} in {next.Key}, and {stopped.Key}, stopped on {Said.Day(stopped.Day)}, {(rest is null ? "has no day to be finished" : $"is finished only on {Said.Day(rest.Day)} at {Said.Clock(rest.Start)}")}",
                "the rest of the suspended game first", $"suspended game, {code.Source("finished before the next meeting")}");
        }
    }
}
