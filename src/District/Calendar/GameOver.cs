namespace Umpirage.District.Calendar;

/// <summary>When a game was over, or is said to be over, in the district's own clock; without one its planned length counts.</summary>
public sealed record GameOver(string Game, DateTime At);
