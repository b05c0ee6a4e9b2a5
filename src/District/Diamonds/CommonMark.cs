namespace Umpirage.District.Diamonds;

/// <summary>A place of a mark, and for whom it lies there.</summary>
public sealed record MarkPlace(At At, IReadOnlyList<string> Who);

/// <summary>One mark of a diamond on which several divisions play: where each of them has it, and who has none.</summary>
/// <param name="Nearest">The smallest distance between two of its places in feet; null where it has but one.</param>
public sealed record CommonMark(string Name, IReadOnlyList<MarkPlace> Places, IReadOnlyList<string> Without, double? Nearest, Fit Fit)
{
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
                var known = places.FindIndex(p => Sharing.Stand(p.At.To(at), near) == Fit.Shared);
                if (known >= 0) places[known].Who.Add(who);
                else places.Add((at, [who]));
            }
            double? nearest = places.Count < 2 ? null : places.SelectMany((a, i) => places.Skip(i + 1).Select(b => a.At.To(b.At))).Min();
            all.Add(new(name, [.. places.Select(p => new MarkPlace(p.At, p.Who))], without, nearest, Sharing.Stand(nearest ?? 0, near)));
        }
        return all;
    }
}
