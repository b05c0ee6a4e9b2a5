namespace Umpirage.District.Calendar;

/// <summary>One game's change in a re-planning, kept so that the whole plan can be taken back. Only ever added to; what was taken back has a second plan that says so.</summary>
public sealed record GameMove(
    string Plan, string Game, string FromDiamond, DateTime FromStart, GameStatus FromStatus, string ToDiamond, DateTime ToStart, GameStatus ToStatus, DateTime At, string By, string? TakesBack = null);
