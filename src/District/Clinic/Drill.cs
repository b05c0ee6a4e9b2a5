using Umpirage.District.Fits;

namespace Umpirage.District.Clinic;

/// <summary>The question chosen, and in words why just this one.</summary>
public sealed record NextQuestion(Question Question, string Why, double? Recall, Rated Rated);

/// <summary>A rule that somebody does not hold firmly: with the question and code it was last asked under, and how often it was answered, and rightly.</summary>
public sealed record Shaky(string Unit, string Sheet, string Question, string Code, int Right, int Asked);

/// <summary>
/// The next question for one learner: first what is likely to be forgotten by now, then what tells most about an ability that is still uncertain.
/// A rule counts as one thing to remember however it is asked; it comes back in another dress where there is one.
/// </summary>
public static class Drill
{
    /// <summary>Below this chance of recall a rule is asked again: the retention the algorithm plans for.</summary>
    public const double Forgetting = 0.9;

    /// <summary>What a learner remembers of each rule, from all answers in order.</summary>
    public static IReadOnlyDictionary<string, Card> Cards(IEnumerable<Answered> answers)
    {
        var cards = new Dictionary<string, Card>();
        foreach (var answer in answers.OrderBy(a => a.At)) cards[answer.Unit] = Repetition.Review(cards.GetValueOrDefault(answer.Unit, Card.New), answer.Right ? Recall.Good : Recall.Again, answer.At);
        return cards;
    }

    /// <summary>What is believed of a learner's ability, from all answers.</summary>
    public static Belief Ability(IEnumerable<Answered> answers, Bank bank, Difficulty difficulty)
    {
        var belief = Belief.Start;
        foreach (var answer in answers) if (bank.Find(answer.Question) is { } question) belief = belief.After(difficulty[question].Item, answer.Right);
        return belief;
    }

    /// <summary>The next question; null when the bank is empty.</summary>
    /// <param name="inTests">Cases that stand in a test and are not asked here (see <see cref="FormMaker.InUse"/>).</param>
    public static NextQuestion? Next(Bank whole, IReadOnlyList<Answered> answers, Difficulty difficulty, DateTime now, IReadOnlySet<string> inTests)
    {
        List<Question> bank = [.. whole.Questions.Where(q => !inTests.Contains(q.Case))];
        if (bank.Count == 0) return null;
        var cards = Cards(answers);
        var seen = answers.GroupBy(a => a.Question).ToDictionary(g => g.Key, g => g.Max(a => a.At));
        if (Due(bank, cards, seen, now) is var (forgotten, recall) && forgotten is not null)
            return new(forgotten, FormattableString.Invariant($"likely forgotten: the chance that this rule is still known is {recall:0%}"), recall, difficulty[forgotten]);
        var ability = Ability(answers, whole, difficulty).Ability;
        // where nobody has asked yet nothing is known: a subject with fewer answers is less certain, whatever the ability at large
        var bySheet = answers.GroupBy(a => a.Sheet).ToDictionary(g => g.Key, g => g.Count());
        var fresh = bank.Where(q => !cards.ContainsKey(q.Unit)).ToList();
        if (fresh.Count == 0) fresh = [.. bank.Where(q => !seen.ContainsKey(q.Id))];
        if (fresh.Count == 0) fresh = [.. bank];
        var best = fresh.MaxBy(q => difficulty[q].Item.Information(ability.Mean) / (1 + bySheet.GetValueOrDefault(q.Sheet)) + Stamp.Number(q.Id + answers.Count) % 1000 * 1e-6)!;
        return new(best, FormattableString.Invariant($"tells most now: ability {ability.Mean:+0.0;-0.0} give or take {1.96 * ability.Error:0.0}, {bySheet.GetValueOrDefault(best.Sheet)} answers on this subject; difficulty {difficulty[best].Standing}"), null, difficulty[best]);
    }

    /// <summary>What was not known at the last asking or the one before, in the order in which it was last asked, the latest first.</summary>
    public static IReadOnlyList<Shaky> Shaky(IEnumerable<Answered> answers) =>
    [
        .. answers.GroupBy(a => a.Unit).Select(g => g.OrderByDescending(a => a.At).ToList()).Where(g => g.Take(2).Any(a => !a.Right)).OrderByDescending(g => g[0].At)
            .Select(g => new Shaky(g[0].Unit, g[0].Sheet, g[0].Question, g[0].Code, g.Count(a => a.Right), g.Count)),
    ];

    private static (Question?, double) Due(List<Question> bank, IReadOnlyDictionary<string, Card> cards, Dictionary<string, DateTime> seen, DateTime now)
    {
        (Question? Question, double Recall) worst = (null, Forgetting);
        var due = cards.Where(c => c.Value.Due <= now).ToDictionary(c => c.Key, c => c.Value.Stage == Stage.Review ? Repetition.Retrievability(c.Value, now) : Math.Min(Forgetting - 1e-6, Repetition.Retrievability(c.Value, now)));
        if (due.Count == 0) return worst;
        foreach (var question in bank)
            if (due.TryGetValue(question.Unit, out var recall) && (recall < worst.Recall || (recall == worst.Recall && worst.Question is { } w && Seen(question) < Seen(w)))) worst = (question, recall);
        return worst;
        DateTime Seen(Question question) => seen.GetValueOrDefault(question.Id, DateTime.MinValue);
    }
}
