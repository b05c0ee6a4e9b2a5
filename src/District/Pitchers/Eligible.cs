using Umpirage.Rules.Ground;

namespace Umpirage.District.Pitchers;

/// <summary>Says who may pitch: the verb of this room.</summary>
public static class Eligible
{
    /// <summary>How far ahead a next day is looked for.</summary>
    public const int DaysAhead = 30;

    /// <param name="code">The code of the game.</param>
    /// <param name="own">The code of the player's own division, for codes whose limits follow the player's age; the stricter where a player has several.</param>
    public static Eligibility Of(Ledger ledger, PitchingCode code, PitchingCode own, Occasion occasion)
    {
        var limits = code.ByAge ? own : code;
        var most = DayCount.Of(ledger, code.Code.Game, true);
        var disputed = ledger.Outings.Where(o => o.Disputed && o.Game.Sport == code.Code.Game).ToList();
        List<Bar> bars = [], rest = [];
        var answer = Rule(ledger, most, true, limits, code, occasion, bars, rest);
        var milder = disputed.Count == 0 ? answer : Rule(ledger, DayCount.Of(ledger, code.Code.Game, false), false, limits, code, occasion, null, null);
        var today = Today(most, occasion.Day);
        return new(ledger.Player, occasion.Day, limits.Code.Address, answer, milder, bars, rest, [.. Rooms(limits, today)],
            answer == MayPitch.Yes ? occasion.Day : Next(most, limits, occasion.Day), Next(most, limits, occasion.Day),
            limits.NoCatching(today), disputed);
    }

    /// <summary>What further pitches, innings or outs today would cost, each step once; the next days are those of the code that sets the limits.</summary>
    public static IReadOnlyList<Cost> Costs(Ledger ledger, PitchingCode code, PitchingCode own, Occasion occasion)
    {
        var limits = code.ByAge ? own : code;
        var days = DayCount.Of(ledger, code.Code.Game, true);
        var today = Today(days, occasion.Day);
        var costs = new List<Cost>();
        foreach (var room in Rooms(limits, today))
        {
            if (!limits.Counts(room.Unit)) continue;
            DateOnly? last = Next(days, limits, occasion.Day);
            for (var more = 1; more <= (room.Left ?? Math.Max(0, limits.LastStep(room.Unit) - room.Used)); more++)
            {
                var next = Next(With(days, today.After(room.Unit, more)), limits, occasion.Day);
                if (next is { } day && next != last) costs.Add(new(room.Unit, more, room.Used + more, day.DayNumber - occasion.Day.DayNumber - 1, day));
                last = next;
            }
        }
        return costs;
    }

    private static DayCount Today(DayCount[] days, DateOnly day)
    {
        foreach (var d in days) if (d.Day == day) return d;
        return new(day, 0, 0, 0, 0, 0, 0);
    }

    private static DayCount[] With(DayCount[] days, DayCount today) => [.. days.Where(d => d.Day != today.Day).Append(today).OrderBy(d => d.Day)];

    private static IEnumerable<Room> Rooms(PitchingCode limits, DayCount today)
    {
        foreach (var unit in Enum.GetValues<Unit>())
        {
            var used = unit switch { Unit.Pitches => today.Pitches, Unit.Innings => today.Innings, _ => today.Outs };
            var limit = limits.DayLimit(unit);
            if (limit is not null || used > 0 || limits.Counts(unit)) yield return new(unit, used, limit, limit is { } most ? Math.Max(0, most - used) : null);
        }
    }

    /// <summary>The first day after the given one on which nothing bars a new game.</summary>
    private static DateOnly? Next(DayCount[] days, PitchingCode limits, DateOnly after)
    {
        for (var day = after.AddDays(1); day.DayNumber <= after.DayNumber + DaysAhead; day = day.AddDays(1))
            if (limits.MayPitch(days, new(day), null, null, null) == MayPitch.Yes) return day;
        return null;
    }

    private static MayPitch Rule(Ledger ledger, DayCount[] days, bool most, PitchingCode limits, PitchingCode code, Occasion occasion, List<Bar>? bars, List<Bar>? rest)
    {
        List<Outing> earlier = [.. ledger.Outings.Where(o => o.Day == occasion.Day && o.Game.Sport == code.Code.Game && o.Game.Key != occasion.Game?.Key && o.Pitched)];
        int? inTheFirst = earlier.Count == 0 ? null : (most ? earlier[0].Most : earlier[0].Least).Pitches;
        var answer = limits.MayPitch(days, occasion, inTheFirst, bars, rest);
        var barred = false;
        if (code.ByDivision) foreach (var outing in earlier) barred |= code.BarsAfter(most ? outing.Most : outing.Least, outing.Game.Division, Today(days, occasion.Day).Innings, bars);
        return barred ? MayPitch.No : answer;
    }
}
