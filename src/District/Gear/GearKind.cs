using Umpirage.Rules.Ground;

namespace Umpirage.District.Gear;

/// <summary>
/// A kind of gear as it is looked over: the sheet that rules it, what is taken of a piece nobody found a fault in, and the decisions that let it into the
/// game. <paramref name="Measured"/> is a sheet of its measures and what its ruling says in the first. <paramref name="Kept"/>: a piece that is out is taken away and logged; what is worn is put
/// right instead. A value in [brackets] is the code's own.
/// </summary>
public sealed record GearKind(string Name, string Sheet, IReadOnlyList<string> Sound, IReadOnlyList<string> Passes, GearMeasure? Measured = null, string? FoundFact = null, bool Kept = true)
{
    public static IReadOnlyList<GearKind> All { get; } =
    [
        new("bat", "bat", ["bat condition is sound", "marks shown is current mark", "made for is this game", "size and grip is as allowed", "trouble before is none"], ["bat is may be used"],
            new("bat measure", ["bat material is other", "thickness is within the limit", "length is within the limit", "weight is within the limit", "drop is within the limit", "grip is as allowed", "grip surface is non-slip"],
                "bat measured is as allowed", "size and grip is not as allowed"), "found"),
        new("helmet", "batting helmet", ["wearer is batter", "helmet on the head is looked at before use", "helmet itself is as required", "ball at the time is dead", "team warned before is no"], ["helmet is nothing to do", "head coach is no penalty"]),
        new("ball", "ball", ["size found is as required", "weight found is as required", "colour is [ball colour]", "approval mark is shown", "condition is fit"], ["ball found is may be used"], FoundFact: "found"),
        new("glove", "gloves", ["glove is as required", "ball touched with it is none"], ["glove found is may be used"], FoundFact: "found"),
        new("protective gear", "protective gear",
            ["worn by is catcher in the game", "mask is with throat guard", "head cover is two ear flaps", "body protector is worn, with the mark asked", "leg guards is worn", "eye shield is none", "refuses is no"], ["gear is as required"]),
        new("sleeve", "uniform", ["seen is uniform as required", "refuses is no"], ["uniform is may be worn"], Kept: false),
        new("uniform", "uniform", ["seen is uniform as required", "refuses is no"], ["uniform is may be worn"], Kept: false),
        new("band", "play call band", ["play call band is on the wrist", "band wearer is other player", "band is plain", "refuses is no"], ["play call band worn is allowed"], Kept: false),
        new("jewelry", "jewelry and casts", Worn, ["thing worn is may be worn", "player is takes part"], Kept: false),
        new("cast", "jewelry and casts", Worn, ["thing worn is may be worn", "player is takes part"], Kept: false),
    ];

    private static IReadOnlyList<string> Worn => ["worn is nothing", "worn on is elsewhere", "risk or distraction is not seen", "medical permission is not in hand", "can come off is yes", "her place meanwhile is still hers"];

    /// <summary>The kind whose name begins a line: the longest that fits.</summary>
    public static GearKind? At(string line) =>
        All.Where(k => line.StartsWith(k.Name, StringComparison.OrdinalIgnoreCase) && (line.Length == k.Name.Length || line[k.Name.Length] is ' ' or ',')).MaxBy(k => k.Name.Length);

    /// <summary>"fact is value" in its two parts, where a value in [brackets] is the code's own.</summary>
    internal static (string Name, string Value) Apart(string said, Func<string, string> own)
    {
        var cut = said.IndexOf(" is ", StringComparison.Ordinal);
        var value = said[(cut + " is ".Length)..];
        return (said[..cut], value is ['[', .., ']'] ? own(value[1..^1]) : value);
    }

    public static string Names => Words.Or([.. All.Select(k => k.Name)]);
}

/// <summary>A sheet of measures, what is taken where nothing was measured, the ruling that passes, and what the other sheet is told when it does not.</summary>
public sealed record GearMeasure(string Sheet, IReadOnlyList<string> Within, string Passes, string Otherwise);
