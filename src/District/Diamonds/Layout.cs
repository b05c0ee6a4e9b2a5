using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Diamonds;

/// <summary>A diamond laid out under one code: points, lines and arcs, in feet from the rear point of home.</summary>
public sealed record Layout(Measures Measures, bool DoubleFirst, IReadOnlyList<Mark> Marks, IReadOnlyList<Course> Courses, IReadOnlyList<Bow> Bows)
{
    public Code Code => Measures.Code;

    /// <summary>The four points everything else is taped from, in the order of running.</summary>
    public static IReadOnlyList<string> Corners { get; } = ["home", "first", "second", "third"];

    /// <summary>Lays out a code's field; null, with the reasons, when the sheets do not say enough or what they say cannot lie on one field.</summary>
    /// <param name="doubleFirst">Whether a double base lies at first; by default where the code requires it.</param>
    public static Layout? Of(Code code, List<Finding> findings, bool? doubleFirst = null)
    {
        if (Measures.Of(code, findings) is not { } measures) return null;
        var layout = GroundsKeeper.Lay(measures, doubleFirst ?? measures.Word("double base") == "required");
        return Closing.Check(layout, findings) ? layout : null;
    }

    /// <summary>Where a named point lies.</summary>
    public At this[string mark] => Find(mark) ?? throw new KeyNotFoundException(mark);

    public At? Find(string mark) => Marks.FirstOrDefault(m => Words.Same(m.Name, mark))?.At;
}
