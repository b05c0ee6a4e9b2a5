namespace Umpirage.District.Fits;

/// <summary>How well something was remembered, worst first.</summary>
public enum Recall { Again = 1, Hard, Good, Easy }

/// <summary>Whether a card is being learnt, is known and comes back after days, or was forgotten and is being learnt again.</summary>
public enum Stage { Learning, Review, Relearning }

/// <summary>
/// What is remembered of one thing by one learner. Stability is in days: after that long it is recalled nine times in ten. Difficulty runs
/// from 1 to 10. Both are 0 before the first review. <paramref name="Step"/> counts the short steps of learning already done.
/// </summary>
public sealed record Card(Stage Stage, int Step, double Stability, double Difficulty, DateTime? Last, DateTime? Due)
{
    public static Card New { get; } = new(Stage.Learning, 0, 0, 0, null, null);

    /// <summary>Whole days from the last review to a moment; 0 before the first one.</summary>
    public int DaysSince(DateTime now) => Last is { } last ? Math.Max(0, (int)Math.Floor((now - last).TotalDays)) : 0;
}
