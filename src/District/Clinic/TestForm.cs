using Umpirage.District.Fits;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clinic;

/// <summary>One form of a test: its questions in the order in which they are asked.</summary>
public sealed record TestForm(string Id, IReadOnlyList<Question> Questions)
{
    /// <summary>Ten letters that change with any of its questions: stands on paper, so that a form is never marked by the key of another.</summary>
    public string Print => Stamp.Of(string.Join('|', Questions.Select(q => $"{q.Id} {q.Answer}")));
}

/// <summary>Puts parallel forms together: the same number of questions of each group, equally hard, no question and no play in two of them.</summary>
public static class FormMaker
{
    /// <summary>
    /// As many forms as the kind asks for; null, with the reason, when a group has too few questions. <paramref name="edition"/> gives other forms of the same
    /// making: a year, or a name.
    /// </summary>
    public static IReadOnlyList<TestForm>? Parallel(CertificateKind kind, Bank bank, Difficulty difficulty, string edition, List<Finding> findings)
    {
        var forms = Enumerable.Range(0, kind.Forms).Select(_ => new List<Question>()).ToList();
        var (before, turn) = (findings.Count, 0);
        var many = bank.Questions.CountBy(q => q.Unit).Where(u => u.Value > 1).Select(u => u.Key).ToHashSet();
        foreach (var (group, count) in kind.Questions)
        {
            // one question of each rule, taken in an order of its own for each edition; rules first that another question drills while this one stands in a test; then by difficulty
            var rules = bank.Questions.Where(q => Words.Same(q.Group, group) && q.Choices.Count > 2).GroupBy(q => q.Unit).Select(g => g.MinBy(q => Stamp.Number(q.Id + edition))!).DistinctBy(q => q.Situation);
            var drawn = Spread(rules.OrderBy(q => many.Contains(q.Unit) ? 0 : 1).ThenBy(q => Stamp.Number(q.Unit + edition)), count * kind.Forms).OrderBy(q => difficulty[q].Item.Difficulty).ThenBy(q => q.Id, StringComparer.Ordinal).ToList();
            if (drawn.Count < count * kind.Forms)
            {
                findings.Add(new(FindingKind.Gap, kind.Id, 0, $"'{group}' has {drawn.Count} questions that fit; {kind.Forms} forms of {count} need {count * kind.Forms}"));
                continue;
            }
            // each layer of like difficulty gives every form one; who draws first goes round, and turns back, so that nobody always gets the easier one
            for (var layer = 0; layer < count; layer++, turn++)
                for (var f = 0; f < kind.Forms; f++) forms[(turn % 2 == 0 ? f + turn / 2 : kind.Forms - 1 - f + turn / 2) % kind.Forms].Add(drawn[layer * kind.Forms + f]);
        }
        if (findings.Count > before) return null;
        return [.. forms.Select((questions, i) => new TestForm($"{kind.Id} {edition} {(char)('A' + i)}", [.. questions.OrderBy(q => Stamp.Number(q.Id + edition + i))]))];
    }

    /// <summary>The cases that stand in the forms of these kinds, so that nothing else asks them while the forms are in use; a kind without a bank or forms has none.</summary>
    public static IReadOnlySet<string> InUse(IEnumerable<CertificateKind> kinds, Func<string, Bank?> bank, Difficulty difficulty, string edition) =>
        kinds.SelectMany(k => bank(k.Code) is { } of ? Parallel(k, of, difficulty, edition, []) ?? [] : []).SelectMany(f => f.Questions).Select(q => q.Case).ToHashSet();

    /// <summary>So many questions, taking from every sheet in turn before taking a second from any.</summary>
    private static IEnumerable<Question> Spread(IEnumerable<Question> questions, int count) =>
        questions.GroupBy(q => q.Sheet).SelectMany(g => g.Select((q, i) => (Question: q, Round: i))).OrderBy(x => x.Round).Take(count).Select(x => x.Question);
}
