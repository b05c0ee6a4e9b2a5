namespace Umpirage.District.Diamonds;

/// <summary>How a mark of one layout stands to the same mark of another: one mark for both, so near that one is taken for the other, or well apart.</summary>
public enum Fit { Shared, Clashing, Apart }

/// <summary>A mark of two layouts on one diamond, and how far apart it lies in feet.</summary>
public sealed record Sharing(string Mark, string First, string Second, double Apart, Fit Fit)
{
    public string InWords => Fit switch
    {
        Fit.Shared => $"{Mark}: one for both",
        Fit.Clashing => $"{Mark}: CLASH, only {Tape.Told(Apart)} apart; draw one and erase the other, or mark them in two ways",
        _ => $"{Mark}: {Tape.Told(Apart)} apart; both may stay",
    };

    /// <summary>Two marks nearer than an eighth of an inch are one: nobody chalks finer.</summary>
    private const double One = 1.0 / 8 / 12;

    /// <summary>How two marks stand that lie so far apart, where chalk nearer than <paramref name="near"/> is taken one for the other; both in feet.</summary>
    internal static Fit Stand(double apart, double near) => apart <= One ? Fit.Shared : apart <= near ? Fit.Clashing : Fit.Apart;

    /// <summary>Every mark that two layouts both have. Home is their common point.</summary>
    public static IReadOnlyList<Sharing> Of(Layout first, Layout second)
    {
        var near = Math.Max(first.Measures.Feet("chalk too near other chalk"), second.Measures.Feet("chalk too near other chalk"));
        var (a, b) = (first.Code.Address.ToString(), second.Code.Address.ToString());
        return
        [
            .. from mark in first.Marks
               let other = second.Find(mark.Name)
               where other is not null
               let apart = mark.At.To(other.Value)
               select new Sharing(mark.Name, a, b, apart, Stand(apart, near)),
        ];
    }

    /// <summary>All pairs of several layouts.</summary>
    public static IReadOnlyList<Sharing> Of(IReadOnlyList<Layout> layouts) =>
        [.. layouts.SelectMany((a, i) => layouts.Skip(i + 1).SelectMany(b => Of(a, b)))];
}
