namespace Umpirage.District.Calendar;

/// <summary>
/// The usual times of a schedule: on each diamond the starts it has on that day of the week, and those that diamonds with as much light have at
/// least <see cref="Often"/> times on that day of the week.
/// </summary>
public sealed class Slots
{
    /// <summary>How often a start has to stand in a schedule to be a usual one.</summary>
    public const int Often = 3;

    private readonly Dictionary<(string, DayOfWeek), TimeOnly[]> starts = [];

    public Slots(Schedule schedule)
    {
        var diamonds = schedule.Surroundings.Diamonds;
        var own = schedule.All.ToLookup(g => (g.Diamond, g.Start.DayOfWeek), g => TimeOnly.FromDateTime(g.Start));
        var usual = schedule.All.GroupBy(g => (diamonds[g.Diamond].Lit, g.Start.DayOfWeek, At: TimeOnly.FromDateTime(g.Start))).Where(g => g.Count() >= Often).ToLookup(g => (g.Key.Lit, g.Key.DayOfWeek), g => g.Key.At);
        foreach (var diamond in diamonds.Values)
            foreach (var day in Enum.GetValues<DayOfWeek>())
                starts[(diamond.Key, day)] = [.. own[(diamond.Key, day)].Concat(usual[(diamond.Lit, day)]).Distinct().Order()];
    }

    /// <summary>The usual slots of some days, both included, by start, then diamond.</summary>
    public IEnumerable<Slot> Between(DateOnly from, DateOnly until)
    {
        for (var day = from; day <= until; day = day.AddDays(1))
            foreach (var slot in starts.Where(s => s.Key.Item2 == day.DayOfWeek).SelectMany(s => s.Value.Select(t => new Slot(s.Key.Item1, day.ToDateTime(t)))).OrderBy(s => s.Start).ThenBy(s => s.Diamond, StringComparer.Ordinal))
                yield return slot;
    }

    /// <summary>The usual starts of a diamond on a day of the week.</summary>
    public IReadOnlyList<TimeOnly> Of(string diamond, DayOfWeek day) => starts[(diamond, day)];
}
