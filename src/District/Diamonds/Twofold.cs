namespace Umpirage.District.Diamonds;

/// <summary>
/// A number carried in two doubles, about 31 digits: sums and products keep what rounding drops (Dekker 1971; Knuth, vol. 2, 4.2.2). Used where a
/// badly conditioned straight fit must still give nine digits.
/// </summary>
public readonly record struct Twofold(double High, double Low)
{
    public static implicit operator Twofold(double value) => new(value, 0);

    public static explicit operator double(Twofold value) => value.High + value.Low;

    public static Twofold operator -(Twofold a) => new(-a.High, -a.Low);

    public static Twofold operator +(Twofold a, Twofold b)
    {
        var sum = Sum(a.High, b.High);
        var low = Sum(a.Low, b.Low);
        var first = Quick(sum.High, sum.Low + low.High);
        return Quick(first.High, first.Low + low.Low);
    }

    public static Twofold operator -(Twofold a, Twofold b) => a + -b;

    public static Twofold operator *(Twofold a, Twofold b)
    {
        var product = a.High * b.High;
        return Quick(product, Math.FusedMultiplyAdd(a.High, b.High, -product) + (a.High * b.Low + a.Low * b.High));
    }

    public static Twofold operator /(Twofold a, Twofold b)
    {
        var first = a.High / b.High;
        var rest = a - b * first;
        var second = rest.High / b.High;
        rest -= b * second;
        return Quick(first, second) + rest.High / b.High;
    }

    public static Twofold Root(Twofold a)
    {
        if (a.High <= 0) return 0;
        Twofold root = Math.Sqrt(a.High);
        // one step of Newton doubles the digits
        return root + (a - root * root) / (root + root);
    }

    private static Twofold Sum(double a, double b)
    {
        var sum = a + b;
        var part = sum - a;
        return new(sum, a - (sum - part) + (b - part));
    }

    private static Twofold Quick(double a, double b)
    {
        var sum = a + b;
        return new(sum, b - (sum - a));
    }
}
