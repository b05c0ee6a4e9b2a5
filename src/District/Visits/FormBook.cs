using System.Globalization;
using Umpirage.District.People;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Visits;

/// <summary>One item of a form: what is looked at, and what was seen at some steps of the scale; steps between are between.</summary>
public sealed record FormItem(string Id, string Title, IReadOnlyDictionary<int, string> Anchors);

/// <summary>A form; its id begins with the position it is for: "plate", "base", "base crew of three".</summary>
public sealed record Form(string Id, string Title, IReadOnlyList<FormItem> Items)
{
    /// <summary>The position a form's id names; null when it names none.</summary>
    public static Position? PositionOf(string id) => Words.Same(id.Split(' ')[0], nameof(Position.Plate)) ? Position.Plate : Words.Same(id.Split(' ')[0], nameof(Position.Base)) ? Position.Base : null;
}

/// <summary>A band of levels, from its lower edge up.</summary>
public sealed record Band(double From, string Name);

/// <summary>The forms of a district with their bands, and when a result may be told. Data: codes/evaluations/forms.txt.</summary>
public sealed class FormBook
{
    private static readonly string[] Needed = ["evaluations at least", "evaluators at least", "shared umpires", "strengths", "goals"];
    private readonly Dictionary<string, int> numbers = new(StringComparer.Ordinal);

    public int Low { get; private set; }
    public int High { get; private set; }
    public List<Form> Forms { get; } = [];
    public List<Band> Bands { get; } = [];
    public int Evaluations => numbers["evaluations at least"];
    public int Evaluators => numbers["evaluators at least"];
    /// <summary>Umpires whom each evaluator has to share with others before strictness can be told from skill.</summary>
    public int Shared => numbers["shared umpires"];
    public int Strengths => numbers["strengths"];
    public int Goals => numbers["goals"];

    /// <summary>Reads the forms; null, with every fault, when something cannot be read.</summary>
    public static FormBook? Read(string file, string text, List<Finding> findings)
    {
        var (before, book) = (findings.Count, new FormBook());
        void Fault(int line, string message) => findings.Add(new(FindingKind.UnreadableLine, file, line, message));
        var (items, anchors) = (new List<FormItem>(), new Dictionary<int, string>());
        foreach (var line in SourceLine.Of(text))
        {
            var colon = line.Text.IndexOf(':');
            var (key, rest) = colon < 0 ? (line.Text, "") : (line.Text[..colon].Trim(), line.Text[(colon + 1)..].Trim());
            if (key == "scale" && rest.Split(" to ") is [var low, var high] && int.TryParse(low, out var from) && int.TryParse(high, out var until) && from < until) (book.Low, book.High) = (from, until);
            else if (key.StartsWith("form ", StringComparison.Ordinal)) book.Forms.Add(new(key[5..], rest, items = []));
            else if (key.StartsWith("item ", StringComparison.Ordinal) && book.Forms.Count > 0) items.Add(new(key[5..], rest, anchors = []));
            else if (int.TryParse(key, out var step) && items.Count > 0)
            {
                if (step < book.Low || step > book.High) Fault(line.Number, $"the step is {step}; the scale goes from {book.Low} to {book.High}");
                else if (!anchors.TryAdd(step, rest)) Fault(line.Number, $"step {step} of '{items[^1].Id}' is told twice");
            }
            else if (key.StartsWith("band ", StringComparison.Ordinal) && double.TryParse(key[5..], CultureInfo.InvariantCulture, out var edge)) book.Bands.Add(new(edge, rest));
            else if (Needed.Contains(key) && int.TryParse(rest, out var number) && number is > 0 and < 100) book.numbers[key] = number;
            else Fault(line.Number, $"cannot read '{line.Short}'; write 'scale: 1 to 5', 'form ID: title', 'item ID: title', '3: what was seen', 'band 2.5: name', or {Words.Or(Needed)} with a number");
        }
        if (book.High == 0) Fault(0, "there is no scale; begin with 'scale: 1 to 5'");
        foreach (var missing in Needed.Where(n => !book.numbers.ContainsKey(n))) Fault(0, $"'{missing}' is missing");
        foreach (var form in book.Forms.Where(f => Form.PositionOf(f.Id) is null)) Fault(0, $"the form '{form.Id}' does not begin with its position, plate or base");
        foreach (var form in book.Forms)
            foreach (var bare in form.Items.Where(i => !i.Anchors.ContainsKey(book.Low) || !i.Anchors.ContainsKey(book.High)))
                Fault(0, $"item '{bare.Id}' of '{form.Id}' does not say what is seen at {book.Low} and at {book.High}");
        if (!book.Bands.Select(b => b.From).SequenceEqual(book.Bands.Select(b => b.From).Distinct().Order()) || book.Bands.Count == 0 || book.Bands[0].From > book.Low) Fault(0, "the bands have to rise, the first from the scale's lowest step");
        return findings.Count > before ? null : book;
    }

    /// <summary>The form for a position; the first when there are several.</summary>
    /// <exception cref="InvalidDataException">There is none.</exception>
    public Form For(Position position) => Forms.FirstOrDefault(f => Form.PositionOf(f.Id) == position) ?? throw new InvalidDataException($"there is no evaluation form for the {position.ToString().ToLowerInvariant()}");

    /// <summary>What a goal is about in words: the title of an item, or the subject as it is.</summary>
    public string Title(string about) => Forms.SelectMany(f => f.Items).FirstOrDefault(i => i.Id == about)?.Title ?? about;

    /// <summary>What a goal of a form is about, so that it can be counted: "Timing, plate umpire" for an item, a subject of the rules as it is.</summary>
    public string Subject(string form, string about) =>
        Forms.FirstOrDefault(f => f.Id == form) is { } of && of.Items.FirstOrDefault(i => i.Id == about) is { } item ? $"{item.Title}, {of.Title.ToLowerInvariant()}" : about;

    /// <summary>What is seen at the steps of an item that is counted under this name; nothing for a subject of the rules.</summary>
    public IReadOnlyDictionary<int, string> Steps(string subject) =>
        Forms.SelectMany(f => f.Items.Where(i => Subject(f.Id, i.Id) == subject)).FirstOrDefault()?.Anchors ?? new Dictionary<int, string>();

    /// <summary>The band a level lies in.</summary>
    public Band BandOf(double level) => Bands.LastOrDefault(b => b.From <= level) ?? Bands[0];
}
