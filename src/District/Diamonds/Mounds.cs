using Umpirage.Rules.Ground;

namespace Umpirage.District.Diamonds;

/// <summary>Earth cannot be drawn twice as chalk can: where one division's mound lies in another's way on the same diamond.</summary>
public static class Mounds
{
    private sealed record Mound(At Middle, double Across, double High);

    /// <summary>A sentence for each mound that others cannot have where it lies: those who pitch from level ground, and those whose mound lies in it.</summary>
    public static IReadOnlyList<string> Clashing(IReadOnlyList<(string Name, Layout Layout)> layouts)
    {
        var mounds = layouts.GroupBy(l => Of(l.Layout)).Where(g => g.Key is not null).Select(g => (Mound: g.Key!, Who: (IReadOnlyList<string>)[.. g.Select(l => l.Name)])).ToList();
        var level = layouts.Where(l => Of(l.Layout) is null).ToList();
        List<string> all = [];
        foreach (var (mound, who) in mounds)
        {
            List<string> flat = [.. level.Where(l => Reaches(mound, l.Layout)).GroupBy(l => l.Layout.Measures.Feet("pitching distance")).Select(g => $"{Words.And([.. g.Select(l => l.Name)])} (plate at {Tape.Told(g.Key)})")];
            if (flat.Count > 0) all.Add($"the mound of {Told(mound, who)}, lies in the level ground that is asked for by {Words.And(flat)}: {Mended}");
        }
        foreach (var ((one, who), at) in mounds.Select((m, i) => (m, i)))
            foreach (var (two, others) in mounds.Skip(at + 1))
                if (one.Middle.To(two.Middle) < (one.Across + two.Across) / 2) all.Add($"the mound of {Told(one, who)}, and that of {Told(two, others)}, lie in each other: {Mended}");
        return all;
    }

    private const string Mended = "use one that is carried away, or another diamond";

    private static string Told(Mound mound, IReadOnlyList<string> who) => $"{Words.And(who)}, {Tape.Told(mound.Across)} across and {Tape.Told(mound.High)} high, its middle {Tape.Told(mound.Middle.Length)} from home";

    private static Mound? Of(Layout layout) => layout.Bows.FirstOrDefault(b => b.Name == "mound") is { } bow ? new(bow.Centre, 2 * bow.Radius, layout.Measures.Feet("mound height")) : null;

    /// <summary>Level ground is asked for within the circle, or where there is none round the plate itself.</summary>
    private static bool Reaches(Mound mound, Layout flat) =>
        new At(0, flat.Measures.Feet("pitching distance")).To(mound.Middle) < mound.Across / 2 + (flat.Measures.Length("circle radius") ?? 0);
}
