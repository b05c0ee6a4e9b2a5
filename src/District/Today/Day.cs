using Umpirage.District.Calendar;
using Umpirage.District.Cases;
using Umpirage.District.Options;
using Umpirage.District.People;
using Umpirage.District.Pitchers;

namespace Umpirage.District.Today;

/// <summary>What the agenda is worked out from: the moment, and the records around it. The caller hands over only what the viewer may see.</summary>
public sealed record Day(
    DateTime Now, IReadOnlyList<ScheduledGame> Games, IReadOnlyList<Assignment> Places, IReadOnlyList<Person> People, IReadOnlyList<Clearance> Clearances,
    IReadOnlyList<Guardianship> Guardianships, IReadOnlyList<Appearance> Logs, IReadOnlyList<AskedQuestion> Questions, IReadOnlyList<LocalOption> Options, IReadOnlyDictionary<string, string> Teams);
