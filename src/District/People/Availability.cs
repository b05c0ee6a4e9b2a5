namespace Umpirage.District.People;

/// <summary>A weekly hour at which somebody can umpire, in the district's own time.</summary>
public sealed record Availability(string Person, DayOfWeek Day, TimeOnly From, TimeOnly Until)
{
    /// <summary>The same hours of one person, those that meet or overlap as one, in the order of the week from Sunday.</summary>
    public static IReadOnlyList<Availability> United(IEnumerable<Availability> hours)
    {
        var united = new List<Availability>();
        foreach (var next in hours.OrderBy(h => h.Day).ThenBy(h => h.From))
            if (united.Count > 0 && united[^1] is var last && last.Day == next.Day && next.From <= last.Until) united[^1] = last with { Until = next.Until > last.Until ? next.Until : last.Until };
            else united.Add(next);
        return united;
    }
}
