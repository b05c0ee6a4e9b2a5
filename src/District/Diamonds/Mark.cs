namespace Umpirage.District.Diamonds;

/// <summary>What a part of the ground is made of.</summary>
public enum Made { Base, Coloured, Rubber, Chalk, Grass, Dirt, Fence }

/// <summary>A named point of a laid-out field. <paramref name="Staked"/>: it is taped and staked; others follow from a board or a template.</summary>
public sealed record Mark(string Name, Made Made, At At, bool Staked);

/// <summary>A line of a laid-out field, from corner to corner; closed when the last corner leads back to the first.</summary>
public sealed record Course(string Name, Made Made, bool Closed, IReadOnlyList<At> Corners);

/// <summary>A part of a circle: radius in feet, from an angle and over a sweep in degrees, counted from the first-base side against the clock.</summary>
public sealed record Bow(string Name, Made Made, At Centre, double Radius, double From, double Sweep)
{
    public bool IsWhole => Sweep >= 360;

    public At Along(double part)
    {
        var angle = (From + Sweep * part) * Math.PI / 180;
        return Centre + new At(Math.Cos(angle), Math.Sin(angle)) * Radius;
    }
}
