namespace Umpirage.District.Calendar;

/// <summary>
/// Finds the least change that mends one violation: one of its games at another time or on another diamond, so that nothing hard is wrong with it
/// there; the nearest in time, and of two the one on its own diamond.
/// </summary>
/// <param name="earliest">Nothing is put before this moment.</param>
public sealed class Mending(Schedule schedule, DateTime earliest)
{
    /// <summary>Days on either side within which a place is looked for, and the steps of the clock tried on a game's own day and diamond, in minutes.</summary>
    private const int Days = 14, Step = 15, StepsEitherWay = 12;

    private readonly Slots slots = new(schedule);

    /// <summary>The violation with its mend; as it was when there is none.</summary>
    public Violation Of(Violation violation)
    {
        ScheduledGame? best = null;
        TimeSpan least = TimeSpan.MaxValue;
        foreach (var game in violation.About.Where(g => g.IsAhead && g.Start >= earliest).Reverse())
        {
            if (Nearest(game, least, after => !after.Any(v => v.Hard || v.Constraint == violation.Constraint)) is not { } moved) continue;
            (best, least) = (moved, (moved.Start - game.Start).Duration());
        }
        return best is null ? violation : violation with { Mend = new(best.Key, best.Diamond, best.Start) };
    }

    private ScheduledGame? Nearest(ScheduledGame game, TimeSpan within, Func<IReadOnlyList<Violation>, bool> fine)
    {
        foreach (var slot in Candidates(game))
        {
            if ((slot.Start - game.Start).Duration() >= within) return null;
            var moved = game with { Diamond = slot.Diamond, Start = slot.Start };
            if (fine([.. Checking.Of(schedule, moved)])) return moved;
        }
        return null;
    }

    private IEnumerable<Slot> Candidates(ScheduledGame game)
    {
        var code = schedule.CodeOf(game);
        var own = Enumerable.Range(-StepsEitherWay, 2 * StepsEitherWay + 1).Select(k => new Slot(game.Diamond, game.Start.AddMinutes(k * Step))).Where(s => s.Day == game.Day && Usual(s));
        return slots.Between(game.Day.AddDays(-Days), game.Day.AddDays(Days)).Concat(own)
            .Where(s => s.Start >= earliest && code.Fits(schedule.Surroundings.Diamonds[s.Diamond].BasePath) && (s.Start != game.Start || s.Diamond != game.Diamond))
            .OrderBy(s => (s.Start - game.Start).Duration()).ThenBy(s => s.Diamond == game.Diamond ? 0 : 1).ThenBy(s => s.Start).ThenBy(s => s.Diamond, StringComparer.Ordinal);
    }

    /// <summary>Between the first and the last usual start of the day of the week on any diamond.</summary>
    private bool Usual(Slot slot)
    {
        var at = TimeOnly.FromDateTime(slot.Start);
        var all = schedule.Surroundings.Diamonds.Keys.SelectMany(d => slots.Of(d, slot.Start.DayOfWeek)).ToList();
        return all.Count > 0 && all.Min() <= at && at <= all.Max();
    }
}
