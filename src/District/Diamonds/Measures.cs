using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Diamonds;

/// <summary>What one code says of its field: every parameter of the sheets "field" and "field marks", lengths in feet.</summary>
public sealed class Measures
{
    private static readonly string[] Sheets = ["field", "field marks"];

    private static readonly string[] Needed =
    [
        "base distance", "pitching distance", "base width", "double base length", "double base", "home plate width", "lane length", "lane width", "coach's box length", "coach's box depth",
        "coach's box distance from the line", "coach's box past the base", "on-deck circle across", "on-deck circle from home", "shortest fence", "longest fence", "fence advised at the lines",
        "fence advised in centre", "backstop advised", "grass line radius", "circle radius", "pitcher's plate length", "pitcher's plate width", "mound height", "mound across", "pitcher's plate behind the middle of the mound",
        "batter's box length", "batter's box width", "batter's box reach ahead of the plate's centre", "batter's box gap from the plate", "catcher's box depth", "catcher's box width", "catcher's box shape",
        "catcher's box measured from", "grace for bases and plate", "one tape reading is good to", "chalk too near other chalk",
    ];

    /// <summary>Directions and angles, which no field is laid out from.</summary>
    private static readonly string[] Advice = ["direction advised", "sun in the eyes within"];

    /// <summary>What a code may leave unset: there is no such thing on its field.</summary>
    private static readonly string[] MayBeNone =
    [
        "coach's box depth", "shortest fence", "longest fence", "fence advised at the lines", "fence advised in centre", "backstop advised", "grass line radius", "circle radius", "mound across",
        "pitcher's plate behind the middle of the mound", "catcher's box width",
    ];

    private readonly Dictionary<string, Provenance> values;

    private Measures(Code code, Dictionary<string, Provenance> values) => (Code, this.values) = (code, values);

    public Code Code { get; }

    /// <summary>Null, with every value that is missing, when the sheets do not say enough to lay a field out.</summary>
    public static Measures? Of(Code code, List<Finding> findings)
    {
        var before = findings.Count;
        var values = new Dictionary<string, Provenance>(StringComparer.OrdinalIgnoreCase);
        foreach (var name in Sheets)
        {
            if (code.Book.Sheet(name) is not { } sheet) { findings.Add(new(FindingKind.UnknownWord, name, 0, $"there is no sheet '{name}', and a field is laid out from it")); continue; }
            foreach (var parameter in sheet.Parameters)
                if (code.Value(parameter) is { } value) values[parameter.Name] = value;
        }
        if (findings.Count == before)
            foreach (var name in Needed.Concat(Advice).Where(n => !values.ContainsKey(n)))
                findings.Add(new(FindingKind.BlankCell, Sheets[0], 0, $"'{name}' has no value for {code.Address}"));
        foreach (var (name, value) in values.Where(v => v.Value.Quantity is { IsNone: true } && Needed.Contains(v.Key) && !MayBeNone.Contains(v.Key)))
            findings.Add(new(FindingKind.ImpossibleValue, value.File, value.Line, $"'{name}' is none for {code.Address}; a field cannot be laid out without it"));
        return findings.Count > before ? null : new(code, values);
    }

    /// <summary>A length in feet; none where the code sets none.</summary>
    public double? Length(string parameter) => values[parameter].Quantity is { IsNone: false } q ? q.Unit == "in" ? q.Value / 12 : q.Value : null;

    /// <summary>A length in feet that every code sets.</summary>
    public double Feet(string parameter) => Length(parameter) ?? throw new InvalidOperationException($"'{parameter}' is none under {Code.Address}");

    /// <summary>An angle in degrees.</summary>
    public double Degrees(string parameter) => values[parameter].Quantity!.Value;

    public string Word(string parameter) => values[parameter].Value;

    /// <summary>What was taken from memory or from practice: to be looked up before it is relied on.</summary>
    public IEnumerable<string> Unchecked => Needed.Where(n => !values[n].Citation.Verified && values[n].Quantity is not { IsNone: true });

    /// <summary>Where a value comes from.</summary>
    public Citation Source(string parameter) => values[parameter].Citation;
}
