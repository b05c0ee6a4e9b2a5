namespace Umpirage.District.People;

/// <summary>What an umpire may be asked to do, lowest first.</summary>
public enum Grade { Trainee, Base, Plate, CrewChief }

/// <summary>A person who umpires: grade, games offered a week, and the first year of umpiring.</summary>
public sealed record Official(string Person, Grade Grade, double GamesAWeek, int Since);

/// <summary>A fitness to be shown: a background check, an awareness course, first aid. Only its dates are kept, never what it says.</summary>
public sealed record Clearance(string Person, string Requirement, DateOnly From, DateOnly Until, string VerifiedBy);

/// <summary>What somebody was tested for: a game, the highest division, and the position, with its dates.</summary>
public sealed record Certificate(string Person, string Game, string Division, Position Position, DateOnly From, DateOnly Until);

public enum Position { Plate, Base }
