namespace Umpirage.District.Pitchers;

/// <summary>A game that a team has to pitch through; one that is only likely hangs on others, as in a bracket.</summary>
/// <param name="Code">The code that governs it on its day.</param>
public sealed record ComingGame(PitchedGame Game, DateOnly Day, PitchingCode Code, bool Certain);

/// <summary>How much a pitcher is planned for in one game, in the plan's unit. <paramref name="Edge"/> says which limit or step of rest is near; nothing when none is.</summary>
public sealed record PlannedLoad(string Player, int Amount, string? Edge);

/// <summary>A game of a plan: what it asks for, who covers it, and for whoever does not, why.</summary>
public sealed record GamePlan(ComingGame Game, int Demand, IReadOnlyList<PlannedLoad> Loads, IReadOnlyList<(string Player, string Why)> Out)
{
    public int Missing => Math.Max(0, Demand - Loads.Sum(l => l.Amount));
}

/// <summary>
/// Who pitches how much. Every load was asked of the code with the loads before it on the ledger; legal is not safe, and whoever is tired or
/// in pain does not pitch, whatever the plan says.
/// </summary>
/// <param name="Proven">No plan is better in any of its aims, in their order, among the loads looked at.</param>
public sealed record PitchingPlan(string Team, Unit Unit, int Step, IReadOnlyList<GamePlan> Games, bool Proven, TimeSpan Took);
