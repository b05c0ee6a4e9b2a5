namespace Umpirage.District.Diamonds;

/// <summary>
/// How one point is taped: from two known points, and from a third to check. <paramref name="Cut"/> is the angle at which the two tapes cross, in
/// degrees; near a right angle is best.
/// </summary>
public sealed record Stake(string Mark, At At, string From, double Reading, string AndFrom, double AndReading, string Check, double CheckReading, double Cut)
{
    public string InWords => $"{Mark}: {Tape.Told(Reading)} from {From} and {Tape.Told(AndReading)} from {AndFrom}; check {Tape.Told(CheckReading)} from {Check}";
}

/// <summary>A distance that must come out when everything is right.</summary>
public sealed record Diagonal(string From, string To, double Reading)
{
    public string InWords => $"{From} to {To}: {Tape.Told(Reading)} ({Tape.InMetres(Reading)})";
}
