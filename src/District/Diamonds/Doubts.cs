using Umpirage.Rules.Ground;

namespace Umpirage.District.Diamonds;

/// <summary>What no field can be, whatever code it is meant for: tapes that cannot close, points nothing holds, and points named the wrong way round.</summary>
internal static class Doubts
{
    /// <summary>Three tapes that cannot make a triangle: the longest is longer than the two others together, by more than the tape's error.</summary>
    public static IEnumerable<string> CannotClose(IReadOnlyList<Reading> readings, double deviation)
    {
        var between = new Dictionary<(string, string), double>();
        foreach (var r in readings) between[Key(r.From, r.To)] = r.Feet;
        var points = readings.SelectMany(r => new[] { r.From, r.To }).Distinct().Order(StringComparer.Ordinal).ToList();
        for (var a = 0; a < points.Count; a++)
            for (var b = a + 1; b < points.Count; b++)
                for (var c = b + 1; c < points.Count; c++)
                {
                    if (!between.TryGetValue(Key(points[a], points[b]), out var ab) || !between.TryGetValue(Key(points[b], points[c]), out var bc) || !between.TryGetValue(Key(points[a], points[c]), out var ac)) continue;
                    (string Name, double Feet)[] sides = [($"{points[a]} to {points[b]}", ab), ($"{points[b]} to {points[c]}", bc), ($"{points[a]} to {points[c]}", ac)];
                    var longest = sides.MaxBy(s => s.Feet);
                    var others = sides.Where(s => s != longest).ToList();
                    var over = longest.Feet - others.Sum(o => o.Feet);
                    if (over > 6 * deviation)
                        yield return $"{points[a]}, {points[b]} and {points[c]} cannot close: {longest.Name} read {Tape.Told(longest.Feet)}, and {Words.And([.. others.Select(o => o.Name)])} together only {Tape.Told(others.Sum(o => o.Feet))}; tape the three again";
                }

        static (string, string) Key(string a, string b) => string.CompareOrdinal(a, b) < 0 ? (a, b) : (b, a);
    }

    /// <summary>Points with fewer than two tapes to them: a place on the ground has two measures.</summary>
    public static IEnumerable<string> NotHeld(IReadOnlyList<Reading> readings, IReadOnlyCollection<string> points)
    {
        foreach (var point in points.Where(p => p != "home"))
        {
            var tapes = readings.Count(r => r.From == point || r.To == point);
            // one point lies on the line from home by agreement, and one tape holds it
            if (tapes == 0) yield return $"no tape goes to {point}";
            else if (tapes == 1 && points.Count > 2 && !readings.Any(r => r.Joins("home", point))) yield return $"only one tape goes to {point}; it takes two to say where it is, and a third to check";
        }
    }

    /// <summary>What the tapes were read in instead of the unit that was typed, when that makes them fit a field which they miss by far; null when nothing does.</summary>
    public static string? OtherUnit(IReadOnlyList<Reading> readings, IReadOnlyList<Layout> layouts)
    {
        double Missed(double times) => layouts.Min(l => Miss([.. readings.Select(r => r with { Feet = r.Feet * times })], l, n => n));
        var asTyped = Missed(1);
        if (asTyped < ByFar || readings.Count < 3) return null;
        (string Unit, double Times)[] others = [("metres and typed as feet", 1 / Tape.MetresInAFoot), ("feet and typed as metres", Tape.MetresInAFoot), ("yards and typed as feet", 3)];
        return others.Select(b => (b.Unit, Miss: Missed(b.Times))).MinBy(b => b.Miss) is var (unit, miss) && miss < ByFar && miss < asTyped / 4 ? unit : null;
    }

    /// <summary>Feet; half a stride: a diamond laid by pacing is no worse than this.</summary>
    private const double ByFar = 2;

    /// <summary>The two points which, exchanged, make a survey fit that does not fit by far; null when there are none.</summary>
    public static (string A, string B)? Exchanged(IReadOnlyList<Reading> readings, IReadOnlyList<Layout> layouts)
    {
        var points = readings.SelectMany(r => new[] { r.From, r.To }).Distinct().ToList();
        var asNamed = layouts.Min(l => Miss(readings, l, n => n));
        if (asNamed < ByFar) return null;
        var swaps = from a in points from b in points where string.CompareOrdinal(a, b) < 0 select (a, b);
        var best = swaps.Select(s => (Pair: s, Miss: layouts.Min(l => Miss(readings, l, n => n == s.a ? s.b : n == s.b ? s.a : n)))).OrderBy(s => s.Miss).FirstOrDefault();
        return best.Pair.a is not null && best.Miss < asNamed / 4 ? best.Pair : null;
    }

    /// <summary>How far readings lie from a layout, root of the mean square, in feet.</summary>
    public static double Miss(IReadOnlyList<Reading> readings, Layout layout, Func<string, string> named) =>
        Math.Sqrt(readings.Average(r => Math.Pow(r.Feet - Surveyor.Place(layout, named(r.From)).To(Surveyor.Place(layout, named(r.To))), 2)));
}
