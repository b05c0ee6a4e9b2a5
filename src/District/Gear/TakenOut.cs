namespace Umpirage.District.Gear;

/// <summary>A piece of gear that was taken out, as the log keeps it. <paramref name="At"/> is UTC; who wrote it down stands in the trail.</summary>
/// <param name="Game">The game it was taken out of, where that is on record.</param>
/// <param name="For">What the list was of, in the finder's words.</param>
/// <param name="GivenBack">The day it went back to its owner; null while it is kept.</param>
public sealed record TakenOut(string Key, DateTime At, string? Game, string For, string Code, string Piece, string Why, string Rules, DateOnly? GivenBack);
