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

    /// <summary>Answers a question needs before it is fitted (common practice, no source).</summary>
    public const int FewestAnswers = 30;

    private const int FewestFitted = 5, MostRounds = 200;
    private const double FineEnough = 1e-4;

    /// <summary>
    /// Fits the questions that so many people have answered, each person's first answer only, since a second one was taught by the first. With fewer than five
    /// such questions, or none that some knew and some did not, all stay assumed.
    /// </summary>
    public static Difficulty From(IEnumerable<Answered> answers, int fewest = FewestAnswers)
    {
        var first = answers.GroupBy(a => (a.Person, a.Question)).Select(g => g.MinBy(a => a.At)!).ToList();
        List<string> items = [.. first.GroupBy(a => a.Question).Where(g => g.Count() >= fewest && g.Any(a => a.Right) && g.Any(a => !a.Right)).Select(g => g.Key).Order(StringComparer.Ordinal)];
        if (items.Count < FewestFitted) return Assumed;
        var place = items.Select((item, i) => (item, i)).ToDictionary(x => x.item, x => x.i);
        var rows = first.Where(a => place.ContainsKey(a.Question)).GroupBy(a => a.Person).Select(g =>
        {
            var row = new sbyte[items.Count];
            Array.Fill(row, (sbyte)-1);
            foreach (var answer in g) row[place[answer.Question]] = (sbyte)(answer.Right ? 1 : 0);
            return row;
        });
        return Of(TwoParameter.Fit(Responses.Of(items, rows), MostRounds, FineEnough));
    }

    /// <summary>How many questions are fitted to answers.</summary>
    public int Fitted => fitted.Count;

    public Rated this[Question question] => fitted.TryGetValue(question.Id, out var item) ? new(item, false)
        : new(new(AssumedSlope, -AssumedSlope * Math.Clamp((question.Given.Count - PlainFacts) * PerFact + Easiest, Easiest, Hardest)), true);
}
