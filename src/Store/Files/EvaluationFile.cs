using System.Globalization;
using Umpirage.District.Visits;

namespace Umpirage.Store.Files;

/// <summary>
/// Evaluations of adults. Nobody reads the steps of a minor, so a minor's evaluations are filed at the desk and kept in the backup, never in a file of
/// this kind. Forms change with the years, so a row is not held against the forms of today.
/// </summary>
public sealed class EvaluationFile : FileKind
{
    private const int LongestText = 1000, MostMinutes = 300, MostCrew = 6, HighestStep = 9;
    private const string MarksForm = "items with their steps: slot 3; zone 4; timing not seen";

    public override string Name => "evaluations";
    public override string About => "Evaluations of adults as they were filed; those of minors are filed at the desk only. Several strengths or goals stand on lines of their own in the cell.";
    public override IReadOnlyList<Column> Columns =>
    [
        new("umpire", true, "key of an adult"), new("evaluator", true, "key of another adult"), new("on", true, "the day"), new("game", true, "key of the game"), new("form", true, "its id: plate, base, base crew of three"), new("division", true, "as it was played"),
        new("crew", true, "umpires who worked the game"), new("minutes", true, "watched"), new("conditions", false, "what made the game harder or easier"), new("marks", true, MarksForm), new("strengths", false, "a line each"),
        new("goals", false, "a line each, slot: head still on every pitch"), new("own view", true, "what the umpire said first"), new("reply", false, "what the umpire said afterwards"),
    ];

    public override IReadOnlyList<object> Read(Row row, Known known)
    {
        var (umpire, evaluator, game) = (row.Known("umpire", known.People, "person"), row.Known("evaluator", known.People, "person"), row.Key("game"));
        var evaluation = new Evaluation(Evaluation.KeyOf(game, umpire, evaluator), umpire, evaluator, row.Day("on"), game, row.Needed("form", "its id"), row.Needed("division", "as it was played"), row.Whole("crew", 1, MostCrew),
            row.Whole("minutes", 1, MostMinutes), row.Text("conditions"), row.Needed("marks", MarksForm), Lines(row, "strengths"), Lines(row, "goals"), row.Text("own view", LongestText), row.Text("reply", LongestText));
        if (row.Fine("umpire") && known.Minors.Contains(umpire)) row.Fault("umpire", umpire, "an adult; a minor's evaluations are filed at the desk");
        if (row.Fine("evaluator") && known.Minors.Contains(evaluator)) row.Fault("evaluator", evaluator, "an adult");
        if (row.Fine("umpire", "evaluator") && umpire == evaluator) row.Fault("evaluator", evaluator, "somebody else than the umpire");
        if (row.Fine("on") && evaluation.On > known.Today) row.Fault("on", Written.Day(evaluation.On), $"a day up to {Written.Day(known.Today)}");
        if (row.Fine("form") && Form.PositionOf(evaluation.Form) is null) row.Fault("form", evaluation.Form, "an id that begins with its position, plate or base");
        if (row.Fine("own view") && evaluation.OwnView == "") row.Fault("own view", "", "what the umpire said first");
        if (row.Fine("marks")) Marks(row, evaluation);
        foreach (var goal in evaluation.ToWorkOn.Where(g => g.About == "" || g.Words.Trim() == "")) row.Fault("goals", goal.Words, "what it is about, a colon, and what to do: slot: head still on every pitch");
        return [evaluation];
    }

    private static string Lines(Row row, string column) => string.Join('\n', row.Text(column, LongestText).ReplaceLineEndings("\n").Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries));

    private static void Marks(Row row, Evaluation evaluation)
    {
        var items = new HashSet<string>();
        foreach (var part in evaluation.Parts)
        {
            var (item, step) = part.EndsWith(Evaluation.NotSeen, StringComparison.Ordinal) ? (part[..^Evaluation.NotSeen.Length], "1") : part.LastIndexOf(' ') is > 0 and var at ? (part[..at], part[(at + 1)..]) : (part, "");
            if (!int.TryParse(step, NumberStyles.None, CultureInfo.InvariantCulture, out var given) || given is < 1 or > HighestStep) row.Fault("marks", part, $"an item with a step from 1 to {HighestStep}, or 'not seen': slot 3");
            else if (!items.Add(item)) row.Fault("marks", part, $"one step for '{item}'");
        }
    }

    public override string Owner(object record) => record is Evaluation e ? e.Key : "";
    public override IEnumerable<object> Stored(DistrictStore store) => OfAdults(store);
    public override IEnumerable<string?[]> Write(DistrictStore store) => OfAdults(store).OrderBy(e => e.On).ThenBy(e => e.Key, StringComparer.Ordinal).Select(e => new[]
    {
        e.Umpire, e.Evaluator, Written.Day(e.On), e.Game, e.Form, e.Division, Written.Number(e.Crew), Written.Number(e.MinutesWatched), e.Conditions, e.Marks, e.Strengths, e.Goals, e.OwnView, e.Reply,
    });

    private static IEnumerable<Evaluation> OfAdults(DistrictStore store)
    {
        var minors = store.People.AsEnumerable().Where(p => p.IsMinor).Select(p => p.Key).ToHashSet();
        return store.Evaluations.AsEnumerable().Where(e => !minors.Contains(e.Umpire));
    }
}
