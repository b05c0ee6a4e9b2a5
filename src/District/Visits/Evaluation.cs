using System.Globalization;
using Umpirage.District.People;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Visits;

/// <summary>One visit: who was seen by whom, in which game and position, and the steps given. The umpire's own view comes first.</summary>
/// <param name="Key">Says which game, which umpire and which evaluator: there is one of each.</param>
/// <param name="Division">As it is played in the district.</param>
/// <param name="Crew">Umpires who worked the game.</param>
/// <param name="Conditions">What made the game harder or easier than others; may be nothing.</param>
/// <param name="Marks">"slot 3; zone 4; timing not seen".</param>
/// <param name="Strengths">A line each.</param>
/// <param name="Goals">A line each: what it is about, a colon, the words.</param>
/// <param name="Reply">What the umpire said to it afterwards.</param>
public sealed record Evaluation(
    string Key, string Umpire, string Evaluator, DateOnly On, string Game, string Form, string Division, int Crew, int MinutesWatched, string Conditions, string Marks, string Strengths, string Goals, string OwnView, string Reply)
{
    /// <summary>Behind an item that was not seen.</summary>
    public const string NotSeen = " not seen";

    private const int ShortestVisit = 20, LongestLine = 200;

    public static string KeyOf(string game, string umpire, string evaluator) => $"{game}/{umpire}/{evaluator}";

    /// <summary>Marks as they are written; an item without a step was not seen.</summary>
    public static string Written(IEnumerable<(string Item, int? Step)> marks) => string.Join("; ", marks.Select(m => m.Step is { } step ? string.Create(CultureInfo.InvariantCulture, $"{m.Item} {step}") : m.Item + NotSeen));

    public static string Lines(IEnumerable<object> lines) => string.Join('\n', lines);

    public Position Position => Visits.Form.PositionOf(Form) ?? Position.Base;

    /// <summary>The steps given; an item that is not there was not seen.</summary>
    public IReadOnlyDictionary<string, int> Steps => Parts.Where(p => !p.EndsWith(NotSeen, StringComparison.Ordinal)).Select(p => (Item: p[..Math.Max(0, p.LastIndexOf(' '))], Step: int.TryParse(p[(p.LastIndexOf(' ') + 1)..], NumberStyles.None, CultureInfo.InvariantCulture, out var step) ? step : 0))
        .DistinctBy(p => p.Item).ToDictionary(p => p.Item, p => p.Step, StringComparer.Ordinal);

    public IReadOnlyList<string> Strong => Strengths.Split('\n', StringSplitOptions.RemoveEmptyEntries);
    public IReadOnlyList<Goal> ToWorkOn => [.. Goals.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(Goal.Read)];

    /// <summary>The mean of the steps given; visits are compared by it, since the items of one visit hang together.</summary>
    public double Mark => Steps.Values.DefaultIfEmpty().Average();

    /// <summary>Every step is the same: a sign that a general impression was marked, to be talked about with the evaluator.</summary>
    public bool Halo => Steps is { Count: >= 4 } steps && steps.Values.Distinct().Count() == 1;

    public Visit Visit => new(Umpire, Position, On, Evaluator);

    /// <summary>The marks one by one, as they are written.</summary>
    public IEnumerable<string> Parts => Marks.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    /// <summary>Everything that is wrong with an evaluation; none when it can be filed.</summary>
    /// <param name="subjects">Subjects of the rules that a goal may be about.</param>
    public IReadOnlyList<FieldFault> Faults(FormBook forms, IReadOnlyCollection<string> subjects)
    {
        var faults = new List<FieldFault>();
        void Fault(string field, string found, string allowed) => faults.Add(new(field, found, allowed));
        var steps = Steps;
        if (Umpire == Evaluator) Fault("evaluator", Evaluator, "somebody other than the umpire");
        var form = forms.Forms.FirstOrDefault(f => f.Id == Form);
        if (form is null) Fault("form", Form, Words.Or([.. forms.Forms.Select(f => f.Id)]));
        else foreach (var (item, step) in steps)
        {
            if (form.Items.All(i => i.Id != item)) Fault("item", item, Words.Or([.. form.Items.Select(i => i.Id)]));
            if (step < forms.Low || step > forms.High) Fault(item, $"{step}", $"a step from {forms.Low} to {forms.High}, or nothing when it was not seen");
        }
        if (form is not null && steps.Count * 2 < form.Items.Count) Fault("items", $"{steps.Count} seen", $"at least half of the {form.Items.Count} items; watch longer before you mark");
        if (MinutesWatched is < ShortestVisit or > 300) Fault("minutes watched", $"{MinutesWatched}", $"{ShortestVisit} to 300");
        if (Crew is < 1 or > 6) Fault("crew", $"{Crew}", "1 to 6 umpires");
        if (Strong.Count == 0 || Strong.Count > forms.Strengths) Fault("strengths", $"{Strong.Count}", $"1 to {forms.Strengths}");
        foreach (var line in Strong.Where(s => s.Length > LongestLine)) Fault("strengths", $"{line.Length} letters", $"at most {LongestLine}");
        if (ToWorkOn.Count > forms.Goals) Fault("goals", $"{ToWorkOn.Count}", $"at most {forms.Goals}: nobody works on more");
        foreach (var goal in ToWorkOn)
        {
            if (form is not null && form.Items.All(i => i.Id != goal.About) && !subjects.Contains(goal.About))
                Fault("goal", goal.About, $"an item of the form or a subject of the rules; {Words.Offer(goal.About, [.. form.Items.Select(i => i.Id), .. subjects])}");
            if (goal.Words.Trim() == "" || goal.Words.Length > LongestLine) Fault("goal", goal.Words == "" ? "" : $"{goal.Words.Length} letters", $"what to do about it, in at most {LongestLine} letters");
        }
        if (OwnView.Trim() == "") Fault("own view", "", "what the umpire says first");
        return faults;
    }
}
