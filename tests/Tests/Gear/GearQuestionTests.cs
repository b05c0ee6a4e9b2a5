using Umpirage.District.Gear;

namespace Umpirage.Tests.Gear;

/// <summary>What may be ticked of a piece is what a list of gear may say, and nothing ordinary is asked.</summary>
public class GearQuestionTests
{
    private const string Address = "baseball/12U@2026-05-16";

    private static readonly Code Under = Shelf.Code(Shelf.Codes, Address);

    private static List<string> Faults(GearKind kind, string line)
    {
        var findings = new List<Finding>();
        var marks = kind.Name == "bat" && !line.StartsWith("marks", StringComparison.Ordinal) ? "  marks: none\n" : "";
        var list = GearFile.Read("a.gear", $"code: {Address}\n{kind.Name} A\n{marks}  {line}\n", findings);
        Inspector.Inspect(Shelf.Codes, list, "a.gear", Shelf.Today, findings);
        // what cannot be together with the rest of a sound piece is told as such, and is no fault of the tick
        return [.. findings.Where(f => f.Kind != FindingKind.ImpossiblePlay).Select(f => f.ToString())];
    }

    [Fact]
    public void Every_tick_of_every_kind_can_be_read()
    {
        var ticks = GearKind.All.SelectMany(k => GearQuestion.Of(Shelf.Codes, Under, k).SelectMany(q => q.Ticks.Select(t => (Kind: k, t.Line)))).ToList();
        Assert.True(ticks.Count > 100, $"{ticks.Count} ticks");
        Assert.Empty(ticks.SelectMany(t => Faults(t.Kind, t.Line).Select(f => $"{t.Kind.Name}, {t.Line}: {f}")));
    }

    [Fact]
    public void Every_measure_can_be_read_in_its_unit()
    {
        var measures = GearKind.All.SelectMany(k => GearQuestion.Of(Shelf.Codes, Under, k).Where(q => q.Unit is not null).Select(q => (Kind: k, Line: FormattableString.Invariant($"{q.Fact} is {Middle(k, q.Fact)} {q.Unit}")))).ToList();
        // thickness, length, weight, drop and grip of a bat, size and weight of a ball
        Assert.Equal(7, measures.Count);
        Assert.Empty(measures.SelectMany(t => Faults(t.Kind, t.Line)));
    }

    /// <summary>A number in the middle of what a sheet lets a fact be.</summary>
    private static double Middle(GearKind kind, string fact)
    {
        var band = new[] { kind.Sheet, kind.Measured?.Sheet }.OfType<string>().SelectMany(s => Shelf.Codes.Sheet(s)!.Facts).First(f => f.Name == fact).Band!;
        return (band.Low + band.High) / 2;
    }

    [Fact]
    public void Nobody_is_asked_to_tick_what_is_as_it_should_be()
    {
        var lines = GearKind.All.SelectMany(k => GearQuestion.Of(Shelf.Codes, Under, k).SelectMany(q => q.Ticks)).Select(t => t.Line).ToHashSet();
        foreach (var sound in (string[])["bat condition is sound", "helmet itself is as required", "glove is as required", "approval mark is shown", "worn is nothing"]) Assert.DoesNotContain(sound, lines);
        // a baseball is white (OBR 3.01), so white is not asked, and the softball's yellow is
        Assert.DoesNotContain("colour is white", lines);
        Assert.Contains("colour is optic yellow", lines);
    }
}
