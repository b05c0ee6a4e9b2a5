using Umpirage.District.Fits;

namespace Umpirage.District.Clinic;

/// <summary>
/// How well a form decides at its cut. Percentages are of the questions: the cut, its standard error, the error of one person's score at the cut. Then the
/// share of people who pass though they should not, and fail though they should pass; and the share wrongly decided if the true cut lay a standard error
/// lower or higher; at last the share that comes within one standard error of the cut, and the share wrongly decided outside it.
/// </summary>
public sealed record CutScore(double Cut, double? CutError, int Needed, double ScoreError, double FalsePass, double FalseFail, double WrongIfLower, double WrongIfHigher, double Close, double WrongClear, bool Assumed)
{
    public double Wrong => FalsePass + FalseFail;

    /// <summary>The standard error of a decision at the cut, in percent of the questions: of the person's score and of the cut together.</summary>
    public double Error => Cutting.Together(ScoreError, CutError);
}

/// <summary>Works out the quality of a decision from the item response model, abilities taken as standard normal.</summary>
public static class Cutting
{
    private static readonly Grid People = Grid.Even(4.5, 181);

    /// <summary>The cut of a kind of certificate on one of its forms.</summary>
    public static CutScore Of(CertificateKind kind, TestForm form, Difficulty difficulty)
    {
        List<Rated> rated = [.. form.Questions.Select(q => difficulty[q])];
        Item[] items = [.. rated.Select(r => r.Item)];
        var passing = People.Points.Select(x => Passing(items, x, kind.Needed)).ToArray();
        var at = AbilityAt(items, kind.Cut / 100);
        var (falsePass, falseFail) = Wrong(passing, at);
        var error = kind.CutError ?? 0;
        double IfCutAt(double percent) => Wrong(passing, AbilityAt(items, percent / 100)) is var (p, f) ? p + f : 0;
        var spread = Math.Sqrt(items.Sum(i => i.Chance(at) * (1 - i.Chance(at)))) / items.Length * 100;
        // from so many right on it is passed, and below so many not, whatever a standard error may do
        var both = Together(spread, kind.CutError);
        var high = People.Points.Select(x => Passing(items, x, (int)Math.Floor((kind.Cut + both) / 100 * items.Length + 1e-9) + 1)).ToArray();
        var low = People.Points.Select(x => Passing(items, x, (int)Math.Ceiling((kind.Cut - both) / 100 * items.Length - 1e-9))).ToArray();
        var close = People.Weights.Select((w, k) => w * (low[k] - high[k])).Sum();
        return new(kind.Cut, kind.CutError, kind.Needed, spread, falsePass, falseFail, IfCutAt(kind.Cut - error), IfCutAt(kind.Cut + error), close, Wrong(high, at).Pass + Wrong(low, at).Fail, rated.Any(r => r.Assumed));
    }

    /// <summary>Two errors that have nothing to do with each other, taken together.</summary>
    internal static double Together(double score, double? cut) => Math.Sqrt(score * score + (cut ?? 0) * (cut ?? 0));

    private static (double Pass, double Fail) Wrong(double[] passing, double standard)
    {
        var (pass, fail) = (0.0, 0.0);
        for (var k = 0; k < passing.Length; k++)
            if (People.Points[k] < standard) pass += People.Weights[k] * passing[k]; else fail += People.Weights[k] * (1 - passing[k]);
        return (pass, fail);
    }

    /// <summary>The chance of at least so many right answers at an ability: the scores' distribution built up question by question (Lord and Wingersky 1984).</summary>
    public static double Passing(IReadOnlyList<Item> items, double ability, int needed)
    {
        var score = new double[items.Count + 1];
        score[0] = 1;
        for (var i = 0; i < items.Count; i++)
        {
            var p = items[i].Chance(ability);
            for (var s = i + 1; s > 0; s--) score[s] = score[s] * (1 - p) + score[s - 1] * p;
            score[0] *= 1 - p;
        }
        return score.Skip(needed).Sum();
    }

    /// <summary>The ability at which this share of the questions is expected to be answered rightly.</summary>
    public static double AbilityAt(IReadOnlyList<Item> items, double share)
    {
        var (low, high) = (-8.0, 8.0);
        for (var step = 0; step < 60; step++)
        {
            var middle = (low + high) / 2;
            if (items.Sum(i => i.Chance(middle)) < share * items.Count) low = middle; else high = middle;
        }
        return (low + high) / 2;
    }
}
