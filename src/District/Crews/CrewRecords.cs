using Umpirage.District.Calendar;
using Umpirage.District.People;

namespace Umpirage.District.Crews;

/// <summary>Everything on record that bears on crews, as lists. A caller hands over only what is at hand; what is missing counts as not said.</summary>
public sealed record CrewRecords
{
    public IReadOnlyList<League> Leagues { get; init; } = [];
    public IReadOnlyList<Division> Divisions { get; init; } = [];
    public IReadOnlyList<Team> Teams { get; init; } = [];
    public IReadOnlyList<Park> Parks { get; init; } = [];
    public IReadOnlyList<Diamond> Diamonds { get; init; } = [];
    public IReadOnlyList<Person> People { get; init; } = [];
    public IReadOnlyList<RoleHeld> Roles { get; init; } = [];
    public IReadOnlyList<Official> Officials { get; init; } = [];
    public IReadOnlyList<Clearance> Clearances { get; init; } = [];
    public IReadOnlyList<Certificate> Certificates { get; init; } = [];
    public IReadOnlyList<Availability> Hours { get; init; } = [];
    public IReadOnlyList<Away> Aways { get; init; } = [];
    public IReadOnlyList<Guardianship> Guardianships { get; init; } = [];
    public IReadOnlyList<Approval> Approvals { get; init; } = [];
    public IReadOnlyList<Interest> Interests { get; init; } = [];
    public IReadOnlyList<Pairing> Pairings { get; init; } = [];
    public IReadOnlyList<HomePlace> Homes { get; init; } = [];
    public IReadOnlyList<Visit> Visits { get; init; } = [];
    public IReadOnlyList<ScheduledGame> Games { get; init; } = [];
    public IReadOnlyList<Assignment> Assignments { get; init; } = [];
    public IReadOnlyList<Coordination> Coordinations { get; init; } = [];
    public IReadOnlyList<GameOver> Endings { get; init; } = [];
    public IReadOnlyList<ElsewhereGame> Elsewhere { get; init; } = [];

    public IReadOnlyList<PublishedPlace> Published { get; init; } = [];
    public IReadOnlyList<FrozenCrew> Frozen { get; init; } = [];

    /// <summary>Heat index in degrees Fahrenheit by day, as somebody typed or worked it out.</summary>
    public IReadOnlyDictionary<DateOnly, double> Heat { get; init; } = new Dictionary<DateOnly, double>();
}
