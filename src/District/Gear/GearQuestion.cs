using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Gear;

/// <summary>One thing to look for on a piece: the question, and the answers that are out of the ordinary, each as a list of gear writes it.</summary>
/// <param name="Unit">For a measure: the unit of the number that answers it; null where answers are ticked.</param>
/// <param name="Aside">Whether it is seldom asked.</param>
public sealed record GearQuestion(string Fact, string Ask, IReadOnlyList<GearTick> Ticks, string? Unit, bool Aside)
{
    /// <summary>The fact that the marks on a bat answer.</summary>
    public const string MarksFact = "marks shown";

    private const string OnePiece = "no mark, one piece of wood", Struck = "current mark but struck from the list";

    /// <summary>The questions of a kind under a code, those of its own sheet first, then its measures.</summary>
    public static IReadOnlyList<GearQuestion> Of(Codebook book, Code code, GearKind kind)
    {
        List<GearQuestion> all = [];
        var asksForMarks = kind == GearKind.At("bat");
        if (asksForMarks)
            all.Add(new(MarksFact, "Which approval marks can be read?",
            [
                .. BatMarks.Readable(code).Select(m => new GearTick(m, $"marks: {m}")), new("none can be read", "marks: none"),
                new("none: it is one piece of wood", $"{MarksFact} is {OnePiece}"), new("this model was struck from the list of approved bats", $"{MarksFact} is {Struck}"),
            ], null, Aside: false));
        IEnumerable<string> sheets = kind.Measured is { } measured ? [kind.Sheet, measured.Sheet] : [kind.Sheet];
        foreach (var name in sheets)
        {
            var sheet = book.Sheet(name)!;
            var sound = (name == kind.Sheet ? kind.Sound : kind.Measured!.Within).Select(s => GearKind.Apart(s, own => code.Value(sheet.Parameters.First(p => p.Name == own))?.Value ?? "")).ToDictionary();
            foreach (var fact in sheet.Facts.Where(f => f.Name != kind.FoundFact && !(asksForMarks && f.Name == MarksFact)))
            {
                var ordinary = sound.GetValueOrDefault(fact.Name);
                var ticks = fact.Band is null ? fact.Values.Where(v => v != ordinary).Select(v => new GearTick(v, $"{fact.Name} is {v}")) : [];
                all.Add(new(fact.Name, fact.Question ?? fact.Name, [.. ticks], fact.Band?.Unit, fact.Usually is not null || name != kind.Sheet));
            }
        }
        return all;
    }
}

/// <summary>An answer that may be ticked: its words, and the line of a list of gear it stands for.</summary>
public sealed record GearTick(string Words, string Line);
