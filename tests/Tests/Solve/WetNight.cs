using Umpirage.District.Calendar;
using Umpirage.District.Demo;
using Umpirage.District.People;
using Umpirage.Tests.Calendar;

namespace Umpirage.Tests.Solve;

/// <summary>
/// The wet night of 27 games (design size of the demonstration): the 18 games of Thursday 2026-05-21, and the nine games rained out in the nine days before
/// the demonstration's Saturday that have waited least for a new date.
/// </summary>
internal static class WetNight
{
    public static readonly DateOnly Thursday = new(2026, 5, 21);
    public static readonly Blackout Rain = new(BlackoutOf.District, DistrictFacts.Only, Thursday, Thursday, "rain");

    public static Schedule Season() => new(DemoScheduleTests.World(), DemoScheduleTests.Records.OfType<ScheduledGame>());

    public static Replanning Asked(Schedule season) => Replanning.Of(season, [Rain], Oslemoor.Now, Waiting(season));

    public static IReadOnlyCollection<string> Waiting(Schedule season) =>
        [.. season.All.Where(g => g.Status == GameStatus.RainedOut && g.Start < Oslemoor.Now).OrderByDescending(g => g.Start).ThenBy(g => g.Key, StringComparer.Ordinal).Take(9).Select(g => g.Key)];
}
