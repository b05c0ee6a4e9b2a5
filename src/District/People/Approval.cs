namespace Umpirage.District.People;

/// <summary>A guardian's word that the child may umpire, with its days, both included. Taken back by ending it earlier.</summary>
public sealed record Approval(string Child, string Guardian, DateOnly From, DateOnly Until);
