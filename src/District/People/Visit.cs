namespace Umpirage.District.People;

/// <summary>An umpire was watched at work: in which position, on which day, by whom. What was seen is kept elsewhere.</summary>
public sealed record Visit(string Person, Position Position, DateOnly On, string By);
