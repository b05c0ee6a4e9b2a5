using Microsoft.AspNetCore.Http;
using Umpirage.District.Calendar;
using Umpirage.District.Visits;

namespace Umpirage.Web;

/// <summary>An evaluation as it was typed, so that nothing typed is lost when something in it is wrong.</summary>
public sealed record EvaluationDraft(string OwnView, string Minutes, string Conditions, IReadOnlyDictionary<string, string> Steps, IReadOnlyList<string> Strengths, IReadOnlyList<Goal> Goals)
{
    private const int Longest = 400;

    public static EvaluationDraft Empty { get; } = new("", "", "", new Dictionary<string, string>(), [], []);

    public static EvaluationDraft Read(IFormCollection form, FormBook forms, Form asked)
    {
        string Text(string name) => Typed.Cut(form[name], Longest).ReplaceLineEndings(" ");
        return new(Text("own"), Text("minutes"), Text("conditions"), asked.Items.ToDictionary(i => i.Id, i => Text("step " + i.Id)), [.. Enumerable.Range(1, forms.Strengths).Select(n => Text($"strength {n}"))],
            [.. Enumerable.Range(1, forms.Goals).Select(n => new Goal(Text($"about {n}"), Text($"goal {n}")))]);
    }

    /// <summary>The evaluation as it would be filed; lines left empty are left out.</summary>
    public Evaluation Of(Form form, ScheduledGame game, int crew, string umpire, string evaluator) => new(
        Evaluation.KeyOf(game.Key, umpire, evaluator), umpire, evaluator, game.Day, game.Key, form.Id, game.Division, crew, int.TryParse(Minutes, out var minutes) ? minutes : 0, Conditions,
        Evaluation.Written(form.Items.Select(i => (i.Id, Step(i.Id)))), Evaluation.Lines(Strengths.Where(s => s != "")), Evaluation.Lines(Goals.Where(g => g.About + g.Words != "")), OwnView, "");

    public int? Step(string item) => int.TryParse(Steps.GetValueOrDefault(item), out var step) ? step : null;
}
