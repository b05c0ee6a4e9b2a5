namespace Umpirage.District.Diamonds;

/// <summary>Earth cannot be drawn twice as chalk can: where one division's mound lies in another's way on the same diamond.</summary>
public static class Mounds
{
    /// <summary>A sentence for each pair of divisions that cannot both have their ground round the pitcher's plate.</summary>
    public static IReadOnlyList<string> Clashing(IReadOnlyList<(string Name, Layout Layout)> layouts)
    {
        List<string> all = [];
        for (var i = 0; i < layouts.Count; i++)
            foreach (var other in layouts.Skip(i + 1))
                if (Between(layouts[i], other) is { } clash) all.Add(clash);
        return all;
    }

    private static string? Between((string Name, Layout Layout) a, (string Name, Layout Layout) b)
    {
        switch (Mound(a.Layout), Mound(b.Layout))
        {
            case (null, null): return null;
            case ({ } one, { } two):
                var (apart, high) = (one.Centre.To(two.Centre), (a.Layout.Measures.Feet("mound height"), b.Layout.Measures.Feet("mound height")));
                if (apart >= one.Radius + two.Radius || (apart < 0.01 && high.Item1.Equals(high.Item2))) return null;
                return $"the mounds of {a.Name} ({Tape.Told(high.Item1)} high) and {b.Name} ({Tape.Told(high.Item2)} high) lie in each other, their middles {Tape.Told(apart)} apart: one that is carried away, or another diamond";
            case ({ } only, null): return Level(a.Name, only, b);
            case (null, { } only): return Level(b.Name, only, a);
        }
    }

    private static Bow? Mound(Layout layout) => layout.Bows.FirstOrDefault(b => b.Name == "mound");

    /// <summary>Level ground is asked for within the circle, or where there is none round the plate itself.</summary>
    private static string? Level(string name, Bow mound, (string Name, Layout Layout) flat)
    {
        var plate = new At(0, flat.Layout.Measures.Feet("pitching distance"));
        var apart = plate.To(mound.Centre);
        if (apart >= mound.Radius + (flat.Layout.Measures.Length("circle radius") ?? 0)) return null;
        return $"{flat.Name} pitches from level ground, and the mound of {name}, {Tape.Told(2 * mound.Radius)} across, has its middle {Tape.Told(apart)} from that plate: one that is carried away, or another diamond";
    }
}
