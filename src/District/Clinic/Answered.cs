namespace Umpirage.District.Clinic;

/// <summary>
/// An answer that somebody gave. <paramref name="At"/> is the moment, in UTC, at which the question was put, and <paramref name="Seconds"/> how long the answer took.
/// <paramref name="Unit"/> is what is remembered or forgotten with it (see <see cref="Question.Unit"/>), <paramref name="Code"/> the address without its day,
/// <paramref name="Edition"/> the stamp of the rule code, <paramref name="Answer"/> the answer chosen, empty where none was, and <paramref name="Form"/> the form of
/// the test, empty in a drill.
/// </summary>
public sealed record Answered(string Person, DateTime At, string Question, string Unit, string Sheet, string Code, string Edition, string Answer, bool Right, int Seconds, string Form)
{
    /// <summary>No longer than this counts as one answer: whoever leaves the page open has not thought for an hour.</summary>
    public const int MostSeconds = 3600;

    /// <summary>The answer to a question: the choice with this text, or none.</summary>
    public static Answered Of(Question question, string person, string? choice, DateTime at, int seconds, string edition, string form = "") =>
        new(person, at, question.Id, question.Unit, question.Sheet, question.Code.Split('@')[0], edition, choice ?? "", choice == question.Answer, Math.Clamp(seconds, 0, MostSeconds), form);
}
