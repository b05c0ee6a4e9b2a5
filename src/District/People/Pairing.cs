namespace Umpirage.District.People;

/// <summary>Apart: the two asked not to be put together. Mentor: the person works only beside the other.</summary>
public enum PairingKind { Apart, Mentor }

/// <summary>What is to be minded when two people come together in a crew, with its days, both included. Reasons are not kept.</summary>
public sealed record Pairing(string Person, string Other, PairingKind Kind, DateOnly From, DateOnly Until);
