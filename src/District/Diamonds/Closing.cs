using Umpirage.Rules.Ground;

namespace Umpirage.District.Diamonds;

/// <summary>Holds a layout against what cannot be on any field, whatever the sheets or a local layer say.</summary>
internal static class Closing
{
    public static bool Check(Layout layout, List<Finding> findings)
    {
        var before = findings.Count;
        var measures = layout.Measures;
        void Fault(string message) => findings.Add(new(FindingKind.ImpossibleValue, layout.Code.Address.ToString(), 0, message));
        double bases = measures.Feet("base distance"), pitching = measures.Feet("pitching distance"), width = measures.Feet("base width");
        if (bases <= 0) Fault($"the bases lie {Tape.Told(bases)} apart; they must lie apart");
        if (pitching <= 0) Fault($"the pitcher's plate lies {Tape.Told(pitching)} from home; it must lie before it");
        if (pitching >= layout["second"].Y) Fault($"the pitcher's plate lies {Tape.Told(pitching)} from home, at or behind second base at {Tape.Told(layout["second"].Y)}");
        if (2 * width >= bases) Fault($"bases {Tape.Told(width)} wide do not fit on a way of {Tape.Told(bases)}");
        if (measures.Length("lane length") > bases) Fault($"the lane of {Tape.Told(measures.Feet("lane length"))} is longer than the way to first, {Tape.Told(bases)}");
        if (measures.Length("shortest fence") is { } near && measures.Length("longest fence") is { } far && near > far) Fault($"the shortest fence, {Tape.Told(near)}, is longer than the longest, {Tape.Told(far)}");
        if (measures.Length("shortest fence") is { } fence && fence <= bases) Fault($"the fence at {Tape.Told(fence)} stands before first base at {Tape.Told(bases)}");
        if (measures.Length("second base diagonal") is { } diagonal && Math.Abs(diagonal - layout["second"].Length) > 0.1)
            Fault($"second base is written at {Tape.Told(diagonal)} from home, but a square of {Tape.Told(bases)} closes at {Tape.Told(layout["second"].Length)}");
        return findings.Count == before;
    }
}
