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
        var measures = layout.Measures;
        string Told(string parameter) => Tape.Told(measures.Feet(parameter));
        var behind = measures.Word("catcher's box measured from") == "point of home" ? "point of home" : "batter's boxes";
        var rows = new List<IReadOnlyList<string>>
        {
            new[] { "batter's box", $"{Told("batter's box length")} x {Told("batter's box width")}, {Told("batter's box gap from the plate")} from the plate, {Told("batter's box reach ahead of the plate's centre")} ahead of its middle" },
            new[] { "catcher's box", $"{Told("catcher's box depth")} back from the {behind}, {(measures.Length("catcher's box width") is { } wide ? $"{Tape.Told(wide)} wide" : "between the base lines run on")}" },
        };
        // baseball has no circle, and softball a line for a coach's box
        if (measures.Length("circle radius") is { } radius) rows.Add(["pitcher's circle", $"{Tape.Told(radius)} from the middle of the plate's front edge"]);
        rows.Add(["pitcher's plate", $"{Told("pitcher's plate length")} x {Told("pitcher's plate width")}"]);
        rows.Add(["lane to first", $"last {Told("lane length")}, {Told("lane width")} wide"]);
        rows.Add([measures.Length("coach's box depth") is null ? "coach's line" : "coach's box", $"{Told("coach's box length")}{(measures.Length("coach's box depth") is { } deep ? $" x {Tape.Told(deep)}" : "")}, {Told("coach's box distance from the line")} outside the foul line"]);
        rows.Add(["on-deck circle", $"{Told("on-deck circle across")} across, {Told("on-deck circle from home")} from home"]);
        yield return new CardPart.Grid([new("Mark", 2), new("Measure", 4)], rows);
    }
}
