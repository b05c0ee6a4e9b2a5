namespace Umpirage.District.Pitchers;

/// <summary>All outings of one day taken together, in one sport, by the larger or the smaller of disputed figures.</summary>
internal readonly record struct DayCount(DateOnly Day, int Pitches, int BeforeLastBatter, int FirstToLastBatter, int Innings, int Outs, int Caught)
{
    /// <summary>The days on which something was counted, in order.</summary>
    public static DayCount[] Of(Ledger ledger, string sport, bool most)
    {
        var days = new List<DayCount>();
        foreach (var outing in ledger.Outings)
        {
            if (outing.Game.Sport != sport) continue;
            var count = most ? outing.Most : outing.Least;
            var day = days.Count > 0 && days[^1].Day == outing.Day ? days[^1] : new(outing.Day, 0, 0, 0, 0, 0, 0);
            if (days.Count == 0 || days[^1].Day != outing.Day) days.Add(day);
            // the last batter of the day is the last one of the last outing with a pitch in it
            days[^1] = new(day.Day, day.Pitches + count.Pitches,
                count.Pitches > 0 ? day.Pitches + count.BeforeLastBatter : day.BeforeLastBatter, count.Pitches > 0 ? day.Pitches + count.FirstToLastBatter : day.FirstToLastBatter,
                day.Innings + count.Innings, day.Outs + count.Outs, day.Caught + count.InningsCaught);
        }
        return [.. days];
    }

    public bool Pitched => Pitches > 0 || Innings > 0 || Outs > 0;

    /// <summary>The same day after so many more; each further pitch is taken as the first to a last batter, each further inning as one with a pitch in it.</summary>
    public DayCount After(Unit unit, int more) => unit switch
    {
        Unit.Pitches => this with { Pitches = Pitches + more, BeforeLastBatter = Pitches + more - 1, FirstToLastBatter = Pitches + more },
        Unit.Innings => this with { Innings = Innings + more, Pitches = Math.Max(Pitches, 1) },
        _ => this with { Outs = Outs + more, Pitches = Math.Max(Pitches, 1) },
    };
}

/// <summary>What a code counts of a pitcher.</summary>
public enum Unit { Pitches, Innings, Outs }
