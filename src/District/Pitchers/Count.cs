namespace Umpirage.District.Pitchers;

/// <summary>What was counted of an outing.</summary>
public readonly record struct Count(int Pitches, int BeforeLastBatter, int Innings, int InningsCaught, int Outs)
{
    /// <summary>Which number in the count was the first pitch to the last batter; 0 when no pitch was thrown.</summary>
    public int FirstToLastBatter => Math.Min(BeforeLastBatter + 1, Pitches);

    /// <summary>The larger of each: no limit is read more mildly than either counter's figures allow.</summary>
    public static Count Most(Count a, Count b) => new(
        Math.Max(a.Pitches, b.Pitches), Math.Max(a.BeforeLastBatter, b.BeforeLastBatter), Math.Max(a.Innings, b.Innings), Math.Max(a.InningsCaught, b.InningsCaught), Math.Max(a.Outs, b.Outs));

    public static Count Least(Count a, Count b) => new(
        Math.Min(a.Pitches, b.Pitches), Math.Min(a.BeforeLastBatter, b.BeforeLastBatter), Math.Min(a.Innings, b.Innings), Math.Min(a.InningsCaught, b.InningsCaught), Math.Min(a.Outs, b.Outs));
}
