namespace Umpirage.District.Diamonds;

/// <summary>How a line of a view is drawn.</summary>
public enum Stroke { Chalk, Grass, Dirt, Base, Coloured }

/// <summary>A shape of a view: its corners, in hundredths of the picture's width from the upper left; closed or not.</summary>
public sealed record Shape(Stroke Stroke, bool Closed, IReadOnlyList<(double X, double Y)> Points);

/// <summary>A word written into a view.</summary>
public sealed record Written(string Text, double X, double Y);

/// <summary>
/// A part of the field, or a stretch of time, as it is pictured, out of scale, with the places that pictures may name. <paramref name="Says"/> names it for
/// whoever cannot see it; a view with a <paramref name="Scale"/> has a line on which numbers lie.
/// </summary>
public sealed record View(
    string Name, string Says, IReadOnlyList<Shape> Shapes, IReadOnlyDictionary<string, (double X, double Y)> Spots, IReadOnlyList<Written> Written, bool Scale = false);
