namespace Umpirage.District.Diamonds;

/// <summary>How a line of a view is drawn.</summary>
public enum Stroke { Chalk, Grass, Dirt, Base, Coloured }

/// <summary>A shape of a view: its corners, in hundredths of the picture's width from the upper left; closed or not.</summary>
public sealed record Shape(Stroke Stroke, bool Closed, IReadOnlyList<(double X, double Y)> Points);

/// <summary>A part of the field as it is pictured, out of scale, with the places that pictures may name.</summary>
public sealed record View(string Name, IReadOnlyList<Shape> Shapes, IReadOnlyDictionary<string, (double X, double Y)> Spots);
