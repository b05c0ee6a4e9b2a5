using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Clinic;

/// <summary>Proves that a question has one right answer, from its text form alone.</summary>
public static class Proof
{
    /// <summary>Every reason why a question may not be asked; none when it may.</summary>
    public static IReadOnlyList<string> Faults(Table table, Question question)
    {
        var findings = new List<Finding>();
        var play = PlayReader.Read(question.Id, question.Play, findings);
        var ruling = Umpire.Rule(table, Situation.Read(table.Sheet, question.Id, play.Given, findings));
        List<string> faults = [.. findings.Select(f => f.ToString())];
        if (!ruling.IsPossible) return [.. faults, .. ruling.Impossible.Select(i => $"{question.Id}: this cannot be: {i}")];
        if (ruling.Find(question.Decision) is not { } decided) return [.. faults, $"{question.Id}: nothing decides '{question.Decision}'"];
        if (decided.Values.Count > 1) faults.Add($"{question.Id}: {decided.Term.Name} is open: {Words.Or(decided.Values)}");
        else if (!Words.Same(decided.Values[0], question.Answer)) faults.Add($"{question.Id}: ruled {decided.Values[0]}, answered {question.Answer}");
        if (!decided.By.Any(b => b.Id == question.Rule)) faults.Add($"{question.Id}: decided by {Words.Or([.. decided.By.Select(b => b.Id)])}, not by {question.Rule}");
        if (question.Choices.Count(c => c.Right) != 1) faults.Add($"{question.Id}: {question.Choices.Count(c => c.Right)} answers are marked right");
        if (question.Choices.Count < 2) faults.Add($"{question.Id}: there is no wrong answer");
        foreach (var twice in question.Choices.GroupBy(c => c.Text, StringComparer.OrdinalIgnoreCase).Where(g => g.Count() > 1)) faults.Add($"{question.Id}: '{twice.Key}' is offered twice");
        foreach (var wrong in question.Choices.Where(c => !c.Right && decided.Values.Contains(c.Text, StringComparer.OrdinalIgnoreCase))) faults.Add($"{question.Id}: '{wrong.Text}' is offered as wrong and is right");
        return faults;
    }
}
