namespace Umpirage.District.Calendar.Constraints;

/// <summary>Two games on one diamond whose planned times overlap.</summary>
public sealed class OneGameOnADiamond : Constraint
{
    public override string Name => "one game at a time on a diamond";
    public override string Sentence => "A diamond has one game at a time, going by the planned length of a game.";
    public override IReadOnlyList<string> Sheets => ["playing hours"];

    public override IEnumerable<Violation> Find(Schedule schedule)
    {
        foreach (var games in schedule.DiamondDays)
            for (var i = 0; i < games.Count; i++)
            {
                var end = schedule.End(games[i]);
                for (var k = i + 1; k < games.Count && games[k].Start < end; k++)
                    yield return Broken(games[i].Diamond, [games[i], games[k]], $"{games[k].Key} begins at {Said.Clock(games[k].Start)} on {Said.Diamond(schedule, games[i].Diamond)}, where {games[i].Key} is planned until {Said.Clock(end)}",
                        $"from {Said.Clock(end)} on", $"playing hours, {schedule.CodeOf(games[i]).Source("planned length")}");
            }
    }
}
