namespace Umpirage.District.Calendar;

/// <summary>How far a swap has come. Refused: by the assigner; declined: by one of the two.</summary>
public enum SwapState { Asked, Declined, TakenBack, Refused, Confirmed }

/// <summary>
/// Somebody's place in a crew offered to another, for a place of theirs or for nothing. Both say yes, for a minor a guardian does, and the assigner
/// confirms; only then is anything changed.
/// </summary>
/// <param name="OtherGame">The game of the place asked for in return; nothing when the place is given away.</param>
/// <param name="At">When it was asked, UTC.</param>
/// <param name="Yes">Who said yes for the one whose place it is.</param>
/// <param name="OtherYes">Who said yes for the other.</param>
/// <param name="DecidedBy">Who ended it.</param>
public sealed record AskedSwap(
    string Key, string Person, string Game, string Place, string Other, string? OtherGame, string? OtherPlace, DateTime At, SwapState State, string? Yes = null, string? OtherYes = null, string? DecidedBy = null)
{
    public bool IsOpen => State == SwapState.Asked;

    /// <summary>Both sides said yes; the assigner is next.</summary>
    public bool IsAgreed => IsOpen && Yes is not null && OtherYes is not null;
}
