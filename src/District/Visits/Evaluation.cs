using Umpirage.District.People;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Visits;

/// <summary>One visit: who was seen by whom, in what, and the steps given; an item that is not there was not seen. The umpire's own view comes first.</summary>
public sealed record Evaluation(
    string Umpire, string Evaluator, DateOnly Day, string Form, string Division, int Crew, int MinutesWatched, IReadOnlyDictionary<string, int> Steps, IReadOnlyList<string> Strengths, IReadOnlyList<string> Goals, string OwnView)
{
    /// <summary>The mean of the steps given; visits are compared by it, since the items of one visit hang together.</summary>
    public double Mark => Steps.Values.Average();

    /// <summary>Every step is the same: a sign that a general impression was marked, to be talked about with the evaluator.</summary>
    public bool Halo => Steps.Count >= 4 && Steps.Values.Distinct().Count() == 1;

    private const int ShortestVisit = 20;

    /// <summary>Everything that is wrong with an evaluation; none when it can be filed.</summary>
    public IReadOnlyList<FieldFault> Faults(FormBook forms)
    {
        var faults = new List<FieldFault>();
        void Fault(string field, string found, string allowed) => faults.Add(new(field, found, allowed));
        if (Umpire == Evaluator) Fault("evaluator", Evaluator, "somebody other than the umpire");
        var form = forms.Forms.FirstOrDefault(f => f.Id == Form);
        if (form is null) Fault("form", Form, Words.Or([.. forms.Forms.Select(f => f.Id)]));
        else foreach (var (item, step) in Steps)
        {
            if (form.Items.All(i => i.Id != item)) Fault("item", item, Words.Or([.. form.Items.Select(i => i.Id)]));
            if (step < forms.Low || step > forms.High) Fault(item, $"{step}", $"a step from {forms.Low} to {forms.High}, or nothing when it was not seen");
        }
        if (form is not null && Steps.Count * 2 < form.Items.Count) Fault("items", $"{Steps.Count} seen", $"at least half of the {form.Items.Count} items; watch longer before you mark");
        if (MinutesWatched is < ShortestVisit or > 300) Fault("minutes watched", $"{MinutesWatched}", $"{ShortestVisit} to 300");
        if (Crew is < 1 or > 6) Fault("crew", $"{Crew}", "1 to 6 umpires");
        if (Strengths.Count == 0 || Strengths.Count > forms.Strengths) Fault("strengths", $"{Strengths.Count}", $"1 to {forms.Strengths}");
        if (Goals.Count > forms.Goals) Fault("goals", $"{Goals.Count}", $"at most {forms.Goals}: nobody works on more");
        if (OwnView.Trim() == "") Fault("own view", "", "what the umpire says first");
        return faults;
    }
}
