namespace Umpirage.District.Diamonds;

/// <summary>A place on the ground, in feet: the rear point of home is (0, 0), second base lies up the Y axis, first base to the right.</summary>
public readonly record struct At(double X, double Y)
{
    public static At operator +(At a, At b) => new(a.X + b.X, a.Y + b.Y);
    public static At operator -(At a, At b) => new(a.X - b.X, a.Y - b.Y);
    public static At operator *(At a, double by) => new(a.X * by, a.Y * by);

    public double Length => Math.Sqrt(X * X + Y * Y);

    /// <summary>What a level tape reads between two places, in feet.</summary>
    public double To(At other) => (other - this).Length;

    /// <summary>The same place on the other side of the line from home to second.</summary>
    public At Mirrored() => new(-X, Y);
}
