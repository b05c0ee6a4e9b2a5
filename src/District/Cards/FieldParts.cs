using Umpirage.District.Diamonds;

namespace Umpirage.District.Cards;

/// <summary>What a tape should read on this game's diamond.</summary>
internal static class FieldParts
{
    public static IEnumerable<CardPart> OnRecord(Making m)
    {
        if (m.Code.Field(m.Findings) is not { } layout) yield break;
        var bases = layout.Measures.Feet("base distance");
        yield return new CardPart.Line($"{m.Game.Diamond.Name}: bases on record at {m.Game.Diamond.BasePath} ft.");
        if (Math.Abs(bases - m.Game.Diamond.BasePath) > layout.Measures.Feet("grace for bases and plate"))
            yield return new CardPart.Note($"This code asks for {Tape.Told(bases)}, and the diamond is on record with {m.Game.Diamond.BasePath} ft. Tape home to first before the game; call the league if it is not right.");
    }

    public static IEnumerable<CardPart> Tapes(Making m)
    {
        if (m.Code.Field(m.Findings) is not { } layout) yield break;
        yield return new CardPart.Grid([new("From, to", 3.2), new("Tape", 2.4), new("Metres", 1.6), new("Read", 1.6)], [.. StakeOut.Of(layout).Diagonals.Select(d => (IReadOnlyList<string>)[$"{d.From}, {d.To.Split(',')[0]}", Tape.Told(d.Reading), Tape.InMetres(d.Reading), ""])]);
        yield return new CardPart.Line($"Right within {Tape.Told(layout.Measures.Feet("grace for bases and plate"))}. First and third lie wholly inside the lines, second on its middle.");
    }

    public static IEnumerable<CardPart> Marks(Making m)
    {
        if (m.Code.Field(m.Findings) is not { } layout) yield break;
        string Length(string parameter) => layout.Measures.Length(parameter) is { } feet ? Tape.Told(feet) : "none";
        yield return new CardPart.Grid([new("Chalk", 3), new("Measure", 3)],
        [
            ["batter's box", $"{Length("batter's box length")} x {Length("batter's box width")}, {Length("batter's box gap from the plate")} from the plate"],
            ["pitcher's circle, radius", Length("circle radius")], ["pitcher's plate", $"{Length("pitcher's plate length")} x {Length("pitcher's plate width")}"],
            ["lane to first", $"last {Length("lane length")}, {Length("lane width")} wide"], ["on-deck circle", $"{Length("on-deck circle across")} across, {Length("on-deck circle from home")} from home"],
        ]);
    }
}
