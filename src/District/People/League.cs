namespace Umpirage.District.People;

/// <summary>A volunteer league of the district. <paramref name="Key"/> is its short name in lower case, as in files.</summary>
public sealed record League(string Key, string Name);

/// <summary>
/// A division as the leagues call it, and how its games are umpired. <paramref name="Code"/> is the address of its rule code.
/// <paramref name="Crew"/> umpires are required; none means a trainee game. <paramref name="YouthBase"/>: a youth umpire may be added on the bases.
/// </summary>
public sealed record Division(string Key, string Code, int Crew, bool YouthBase);

/// <summary>One team of a league in a division.</summary>
public sealed record Team(string Key, string Name, string League, string Division);
