namespace Umpirage.District.People;

/// <summary>What somebody does in the district; who may see and do what follows from it (see <see cref="Access"/>).</summary>
public enum Role { Chief, Assigner, Trainer, Umpire, YouthUmpire, Guardian, Coordinator, President, Manager, Scorekeeper, SafetyOfficer, Committee }

/// <summary>A role held, for a league or a team where it is bound to one.</summary>
public sealed record RoleHeld(string Person, Role Role, string League, string Team);

/// <summary>An adult who answers for a minor.</summary>
public sealed record Guardianship(string Child, string Guardian);
