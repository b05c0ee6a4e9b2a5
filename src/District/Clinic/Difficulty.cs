using Umpirage.District.Fits;

namespace Umpirage.District.Clinic;

/// <summary>A question's slope and intercept, and whether they were fitted to answers or only assumed.</summary>
public sealed record Rated(Item Item, bool Assumed)
{
    /// <summary>Said wherever the figure is shown.</summary>
    public string Standing => Assumed ? "assumed from the number of facts, until there are answers" : "fitted to answers";
}

/// <summary>How hard questions are: fitted where there are answers, otherwise assumed and said to be.</summary>
public sealed class Difficulty
{
    private readonly Dictionary<string, Item> fitted = [];

    // common practice, no source: a middling slope, and each fact beyond two makes a question a little harder
    private const double AssumedSlope = 1, PerFact = 0.25, Easiest = -0.5, Hardest = 1.5;
    private const int PlainFacts = 2;

    public static Difficulty Assumed { get; } = new();

    /// <summary>Takes fitted questions by their ids; those with a slope that no good question has stay assumed.</summary>
    public static Difficulty Of(TwoParameterFit fit)
    {
        var difficulty = new Difficulty();
        foreach (var (name, item) in fit.Names.Zip(fit.Items)) if (item.Slope is > 0.2 and < 4) difficulty.fitted[name] = item;
        return difficulty;
    }

    public Rated this[Question question] => fitted.TryGetValue(question.Id, out var item) ? new(item, false)
        : new(new(AssumedSlope, -AssumedSlope * Math.Clamp((question.Given.Count - PlainFacts) * PerFact + Easiest, Easiest, Hardest)), true);
}
