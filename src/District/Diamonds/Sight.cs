namespace Umpirage.District.Diamonds;

/// <summary>Where somebody stands and looks in an ordinary play, in base distances from the rear point of home; places are common practice, no source.</summary>
public sealed record Sight(string Who, At From, At To)
{
    private static readonly At Home = default, First = new(Math.Sqrt(0.5), Math.Sqrt(0.5)), Shortstop = new(-0.4, 1.2);

    /// <summary>Those who face the pitch, those who face the batter, and who takes most throws.</summary>
    public static IReadOnlyList<Sight> All { get; } =
    [
        new("batter, catcher and plate umpire", Home, new(0, 1)), new("pitcher", new(0, 0.7), Home), new("first base fielder, to the batter", new(0.72, 0.85), Home),
        new("first base fielder, to a throw from shortstop", First, Shortstop), new("second base fielder", new(0.4, 1.2), Home), new("shortstop", Shortstop, Home),
        new("third base fielder", new(-0.72, 0.85), Home), new("left fielder", new(-1.6, 2.4), Home), new("centre fielder", new(0, 3), Home), new("right fielder", new(1.6, 2.4), Home),
    ];

    /// <summary>Degrees clockwise from the line home to second.</summary>
    public double Turn => Math.Atan2((To - From).X, (To - From).Y) * 180 / Math.PI;
}
