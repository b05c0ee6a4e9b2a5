using Umpirage.District.Calendar;
using Umpirage.District.People;

namespace Umpirage.District.Crews;

/// <summary>A person with everything on record that bears on crews.</summary>
public sealed record CrewPerson(Person Person)
{
    public Official? Official { get; init; }
    public IReadOnlyList<Clearance> Clearances { get; init; } = [];
    public IReadOnlyList<Certificate> Certificates { get; init; } = [];
    public IReadOnlyList<Availability> Hours { get; init; } = [];
    public IReadOnlyList<Away> Aways { get; init; } = [];
    public IReadOnlyList<Approval> Approvals { get; init; } = [];
    public IReadOnlyList<Interest> Interests { get; init; } = [];
    /// <summary>Those that name this person first or second.</summary>
    public IReadOnlyList<Pairing> Pairings { get; init; } = [];
    public IReadOnlyList<RoleHeld> Roles { get; init; } = [];
    public IReadOnlySet<string> Guardians { get; init; } = new HashSet<string>();
    public IReadOnlyList<ElsewhereGame> Elsewhere { get; init; } = [];
    public HomePlace? Home { get; init; }

    public string Key => Person.Key;
    public string Name => Person.ListName;
    public bool IsMinor => Person.IsMinor;

    /// <summary>The youngest that somebody of the band may be, in years; what is not known is not assumed.</summary>
    public int AtLeast => Person.Band switch { AgeBand.Under13 => 0, AgeBand.From13To15 => 13, AgeBand.From16To17 => 16, _ => 18 };
}
