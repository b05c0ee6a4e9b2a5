using Umpirage.District.Calendar;
using Umpirage.District.People;
using Umpirage.District.Pitchers;

namespace Umpirage.District.Cards;

/// <summary>A game as its cards need it. What is missing is not said; names are already as far as the reader may see them.</summary>
/// <param name="Zone">The district's IANA time zone.</param>
/// <param name="Address">The governing code, without a day.</param>
public sealed record CardGame(ScheduledGame Game, Division Division, Team Visitor, Team Home, League VisitorLeague, League HomeLeague, Diamond Diamond, Park Park, string Zone, string Address)
{
    /// <summary>Each league's own code for this division, where two leagues meet: the league's name and the address.</summary>
    public IReadOnlyList<(string Name, string Address)> Benches { get; init; } = [];

    /// <summary>Codes that the crew is used to, the most usual first.</summary>
    public IReadOnlyList<(string Name, string Address)> Usual { get; init; } = [];

    public IReadOnlyList<CardSeat> Crew { get; init; } = [];

    /// <summary>The adult named for a minor in the crew.</summary>
    public string? Coordinator { get; init; }

    public IReadOnlyList<CardStaff> Staffs { get; init; } = [];
}

/// <summary>A place of the crew: who has it, and where they come from that day. <paramref name="Name"/> is null while nobody has it.</summary>
public sealed record CardSeat(string Place, string? Name, bool IsMinor, string? Before);

/// <summary>A team's pitchers as an opponent may see them: who is eligible, not what they did.</summary>
public sealed record CardStaff(string Team, IReadOnlyList<CardArm> Arms);

public sealed record CardArm(int Jersey, string Name, Eligibility Answer);
