using Umpirage.District.Calendar;
using Umpirage.District.Cases;
using Umpirage.District.Options;
using Umpirage.District.People;
using Umpirage.District.Pitchers;

namespace Umpirage.District.Today;

/// <summary>What the agenda is worked out from: the moment, and the records around it. The caller hands over only what the viewer may see.</summary>
public sealed record Day(
    DateTime Now, IReadOnlyList<ScheduledGame> Games, IReadOnlyList<Assignment> Places, IReadOnlyList<Person> People, IReadOnlyList<Clearance> Clearances,
    IReadOnlyList<Guardianship> Guardianships, IReadOnlyList<Appearance> Logs, IReadOnlyList<AskedQuestion> Questions, IReadOnlyList<LocalOption> Options, IReadOnlyDictionary<string, string> Teams)
{
    /// <summary>Swaps that wait for the viewer's own word: a yes of their side, or the assigner's.</summary>
    public IReadOnlyList<WaitingSwap> Swaps { get; init; } = [];
}
