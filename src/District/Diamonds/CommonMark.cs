using Umpirage.Rules.Ground;

namespace Umpirage.District.Diamonds;

/// <summary>How the places of a mark stand to each other: one for all, so near that one is taken for the other, or well apart.</summary>
public enum Fit { Shared, Clashing, Apart }

/// <summary>A place of a mark, and for whom it lies there.</summary>
public sealed record MarkPlace(At At, IReadOnlyList<string> Who);

/// <summary>One mark of a diamond on which several divisions play: where each of them has it, and who has none.</summary>
/// <param name="Nearest">The smallest distance between two of its places in feet; null where it has but one.</param>
public sealed record CommonMark(string Name, IReadOnlyList<MarkPlace> Places, IReadOnlyList<string> Without, double? Nearest, Fit Fit)
{
    /// <summary>Marks nearer than an eighth of an inch are one: nobody chalks finer. In feet.</summary>
    private const double One = 1.0 / 8 / 12;

    public string InWords => Fit switch
    {
        Fit.Clashing => $"{Name}: CLASH, only {Tape.Told(Nearest!.Value)} apart ({Where(Tape.Told)}); draw one and erase the other, or mark them in two ways",
        Fit.Apart => $"{Name}: {Tape.Told(Nearest!.Value)} apart ({Where(Tape.Told)}); each its own",
        _ => $"{Name}: {(Without.Count == 0 ? "one for all" : Where(Tape.Told))}",
    };

    /// <summary>Who has it how far from home, and who has none.</summary>
    public string Where(Func<double, string> told) =>
        string.Join("; ", Places.Select(p => $"{Words.And(p.Who)} {told(p.At.Length)} from home")) + (Without.Count > 0 ? $"; none for {Words.And(Without)}" : "");

    /// <summary>How marks stand that lie so far apart, where chalk nearer than <paramref name="near"/> is taken one for the other; both in feet.</summary>
    private static Fit Stand(double apart, double near) => apart <= One ? Fit.Shared : apart <= near ? Fit.Clashing : Fit.Apart;

    /// <summary>Every mark that any of these layouts has, by its name.</summary>
    public static IReadOnlyList<CommonMark> Of(IReadOnlyList<(string Name, Layout Layout)> layouts)
    {
        var near = layouts.Max(l => l.Layout.Measures.Feet("chalk too near other chalk"));
        List<CommonMark> all = [];
        foreach (var name in layouts.SelectMany(l => l.Layout.Marks).Select(m => m.Name).Distinct())
        {
            List<(At At, List<string> Who)> places = [];
            List<string> without = [];
            foreach (var (who, layout) in layouts)
            {
                if (layout.Find(name) is not { } at) { without.Add(who); continue; }
                var known = places.FindIndex(p => Stand(p.At.To(at), near) == Fit.Shared);
                if (known >= 0) places[known].Who.Add(who);
                else places.Add((at, [who]));
            }
            double? nearest = places.Count < 2 ? null : places.SelectMany((a, i) => places.Skip(i + 1).Select(b => a.At.To(b.At))).Min();
            all.Add(new(name, [.. places.Select(p => new MarkPlace(p.At, p.Who))], without, nearest, Stand(nearest ?? 0, near)));
        }
        return all;
    }
}
