namespace Umpirage.District.Diamonds;

/// <summary>What a tape read between two points, in feet, and the line of the file it stands in (0 when it was never written).</summary>
public sealed record Reading(string From, string To, double Feet, int Line = 0)
{
    public string Between => $"{From} to {To}";

    public bool Joins(string a, string b) => (From == a && To == b) || (From == b && To == a);
}

/// <summary>How a point is held while the others are found.</summary>
public enum Hold { Free, Known, OnItsLine }

/// <summary>A point of a survey: where it is thought to be, and how it is held. One held on its line moves only straight away from (0, 0).</summary>
public sealed record Pin(string Name, At At, Hold Hold);
