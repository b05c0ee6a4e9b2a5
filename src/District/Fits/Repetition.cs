namespace Umpirage.District.Fits;

/// <summary>
/// Spaced repetition by the open algorithm FSRS-6: when a thing will be forgotten, and when to ask it again. Formulas and the 21 usual weights
/// as published by open-spaced-repetition (py-fsrs 6.3.1, MIT licence), without its random spread of intervals.
/// </summary>
public static class Repetition
{
    /// <summary>The usual weights, fitted by the algorithm's authors on many learners' reviews; ours may be fitted once there are enough.</summary>
    public static IReadOnlyList<double> Weights { get; } =
        [0.212, 1.2931, 2.3065, 8.2956, 6.4133, 0.8334, 3.0194, 0.001, 1.8722, 0.1666, 0.796, 1.4835, 0.0614, 0.2629, 1.6483, 0.6014, 1.8729, 0.5425, 0.0912, 0.0658, 0.1542];

    private const double LeastStability = 0.001, Retention = 0.9;
    private const int LongestInterval = 36500;
    private static readonly TimeSpan[] LearningSteps = [TimeSpan.FromMinutes(1), TimeSpan.FromMinutes(10)], RelearningSteps = [TimeSpan.FromMinutes(10)];

    private static double W(int i) => Weights[i];
    private static readonly double Decay = -Weights[20], Factor = Math.Pow(Retention, 1 / Decay) - 1;

    /// <summary>The chance, from 0 to 1, that the card is recalled at a moment; 0 for one that was never reviewed.</summary>
    public static double Retrievability(Card card, DateTime now) => card.Last is null ? 0 : Forgetting(card.DaysSince(now), card.Stability);

    /// <summary>The card after a review, with the moment at which it is due again.</summary>
    public static Card Review(Card card, Recall recall, DateTime now)
    {
        var r = (int)recall;
        double stability, difficulty;
        if (card.Last is null) (stability, difficulty) = (Math.Max(LeastStability, W(r - 1)), Clamped(FirstDifficulty(r)));
        else
        {
            stability = card.DaysSince(now) < 1 ? SameDay(card.Stability, r) : NextDay(card, r, Retrievability(card, now));
            difficulty = Clamped(W(7) * FirstDifficulty(4) + (1 - W(7)) * (card.Difficulty + (10 - card.Difficulty) * (-W(6) * (r - 3)) / 9));
        }
        var (stage, step, wait) = Next(card, recall);
        var interval = wait ?? TimeSpan.FromDays(Days(stability));
        return new(stage, step, stability, difficulty, now, now + interval);
    }

    private static (Stage, int, TimeSpan?) Next(Card card, Recall recall)
    {
        if (card.Stage == Stage.Review) return recall == Recall.Again ? (Stage.Relearning, 0, RelearningSteps[0]) : (Stage.Review, 0, null);
        var steps = card.Stage == Stage.Learning ? LearningSteps : RelearningSteps;
        return recall switch
        {
            Recall.Again => (card.Stage, 0, steps[0]),
            Recall.Hard when card.Step == 0 => (card.Stage, 0, steps.Length == 1 ? steps[0] * 1.5 : (steps[0] + steps[1]) / 2),
            Recall.Hard => (card.Stage, card.Step, steps[card.Step]),
            Recall.Good when card.Step + 1 < steps.Length => (card.Stage, card.Step + 1, steps[card.Step + 1]),
            _ => (Stage.Review, 0, null),
        };
    }

    private static double Forgetting(double days, double stability) => Math.Pow(1 + Factor * days / stability, Decay);

    private static int Days(double stability) =>
        (int)Math.Clamp(Math.Round(stability / Factor * (Math.Pow(Retention, 1 / Decay) - 1), MidpointRounding.ToEven), 1, LongestInterval);

    private static double FirstDifficulty(int r) => W(4) - Math.Exp(W(5) * (r - 1)) + 1;

    private static double Clamped(double difficulty) => Math.Clamp(difficulty, 1, 10);

    private static double SameDay(double stability, int r)
    {
        var change = Math.Exp(W(17) * (r - 3 + W(18))) * Math.Pow(stability, -W(19));
        return Math.Max(LeastStability, stability * (r >= 3 ? Math.Max(1, change) : change));
    }

    private static double NextDay(Card card, int r, double recalled)
    {
        var (s, d) = (card.Stability, card.Difficulty);
        if (r == 1)
            return Math.Max(LeastStability, Math.Min(W(11) * Math.Pow(d, -W(12)) * (Math.Pow(s + 1, W(13)) - 1) * Math.Exp((1 - recalled) * W(14)), s / Math.Exp(W(17) * W(18))));
        var mood = r == 2 ? W(15) : r == 4 ? W(16) : 1;
        return Math.Max(LeastStability, s * (1 + Math.Exp(W(8)) * (11 - d) * Math.Pow(s, -W(9)) * (Math.Exp((1 - recalled) * W(10)) - 1) * mood));
    }
}
