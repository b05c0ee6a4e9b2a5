namespace Umpirage.Rules.Games;

/// <summary>The two sides; visitors bat first.</summary>
public enum Side { Visitors, Home }

/// <summary>Where a runner is or goes: the plate as batter, a base, home, or out.</summary>
public enum Place { Plate = 0, First = 1, Second = 2, Third = 3, Home = 4, Out = 5 }

/// <summary>Balls and strikes on the batter.</summary>
public readonly record struct Count(int Balls, int Strikes)
{
    public override string ToString() => $"{Balls}-{Strikes}";
}
