namespace Umpirage.District.Calendar;

/// <summary>A game that an umpire works outside the district, as the umpire said it. It counts for the day like any other.</summary>
/// <param name="Place">plate or base.</param>
public sealed record ElsewhereGame(string Person, DateTime Start, DateTime Until, string Place);
