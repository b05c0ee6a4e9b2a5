namespace Umpirage.District.Clinic;

/// <summary>
/// What many believe of a play and is not so: the facts of the play in the sheet's own words, and the ruling that believers expect of one decision.
/// <paramref name="Source"/> says how we know that it is believed.
/// </summary>
public sealed record Misbelief(string Said, string Sheet, IReadOnlyList<string> Games, IReadOnlyList<string> Given, string Decision, string Expected, string Source, int Line);

/// <summary>A belief held against a code: the play as it is told, and what the code rules instead, why, and by which source.</summary>
public sealed record Refuted(Misbelief Belief, string Group, string Situation, string Ruled, RuledBy By);
