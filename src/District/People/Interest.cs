namespace Umpirage.District.People;

public enum InterestOf { Team, League }

/// <summary>What ties somebody to a team or a league beyond umpiring: a child who plays there, kin, a post. <paramref name="Of"/> is the key of the team or league.</summary>
public sealed record Interest(string Person, InterestOf Kind, string Of, string Why);
