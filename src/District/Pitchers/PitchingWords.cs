using System.Globalization;

namespace Umpirage.District.Pitchers;

/// <summary>Eligibility as people read it, on paper, in the terminal and at the desk.</summary>
public static class PitchingWords
{
    public static string Answer(Eligibility e) => e.Answer switch
    {
        MayPitch.Yes => "may pitch", MayPitch.UntilThisBatterIsFinished => "may finish this batter, then off the mound", _ => "may not pitch",
    };

    public static string Unit(Unit unit, int number) => (unit, number) switch
    {
        (Pitchers.Unit.Pitches, 1) => "pitch", (Pitchers.Unit.Pitches, _) => "pitches", (Pitchers.Unit.Innings, 1) => "inning", (Pitchers.Unit.Innings, _) => "innings", (_, 1) => "out", _ => "outs",
    };

    public static string Left(Room room) => room.Left is { } left ? $"{left} {Unit(room.Unit, left)} left of {room.Limit} today" : $"{room.Used} {Unit(room.Unit, room.Used)} today; the code sets no limit";

    public static string Day(DateOnly day) => day.ToString("ddd d MMM", CultureInfo.InvariantCulture);

    /// <summary>The answer with what matters most beside it.</summary>
    public static string Line(Eligibility e)
    {
        var rooms = string.Join(", ", e.Rooms.Where(r => r.Left is not null).Select(Left));
        var rest = e.Answer == MayPitch.Yes ? rooms : e.NextDay is { } next ? $"next {Day(next)}" : $"not within {Eligible.DaysAhead} days";
        return $"{Answer(e)}{(rest == "" ? "" : "; " + rest)}{(e.NoCatching is null ? "" : "; no catching today")}{(e.Depends ? "; two counts differ and it hangs on them" : "")}";
    }

    /// <summary>"after 2 more innings (7 today): rest 1 day, may pitch again Mon 18 May".</summary>
    public static string Cost(Cost cost) => cost.Unit == Pitchers.Unit.Pitches
        ? $"if the last batter begins with pitch {cost.InAll} or later: {Rest(cost)}"
        : $"after {cost.More} more {Unit(cost.Unit, cost.More)} ({cost.InAll} today): {Rest(cost)}";

    private static string Rest(Cost cost) => $"rest {cost.RestDays} {(cost.RestDays == 1 ? "day" : "days")}, may pitch again {Day(cost.NextDay)}";

    /// <summary>Every counter's figures, none averaged.</summary>
    public static string Counts(Outing outing) =>
        $"{Day(outing.Day)}: {Rules.Ground.Words.And([.. outing.Lines.Select(l => $"{l.Pitches} pitches, {l.Innings} innings ({l.Counter})")])}; the larger counts until they are settled";
}
