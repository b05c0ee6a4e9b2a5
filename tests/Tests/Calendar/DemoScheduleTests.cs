using Umpirage.District.Calendar;
using Umpirage.District.Demo;
using Umpirage.District.People;
using Umpirage.Tests.Store;

namespace Umpirage.Tests.Calendar;

/// <summary>The demonstration's season as it was planned, before anything was played.</summary>
public class DemoScheduleTests
{
    internal static readonly IReadOnlyList<object> Records = [.. Oslemoor.Make(OwnStore.Plan)];

    internal static Surroundings World(IEnumerable<Blackout>? also = null)
    {
        Dictionary<string, T> By<T>(Func<T, string> key) => Records.OfType<T>().ToDictionary(key);
        var rules = new CalendarCodes(Shelf.Codes, By<League>(l => l.Key));
        var divisions = By<Division>(d => d.Key);
        return new()
        {
            Rules = rules, Divisions = divisions, Teams = By<Team>(t => t.Key), Parks = By<Park>(p => p.Key), Diamonds = By<Diamond>(d => d.Key),
            Blackouts = [.. Records.OfType<Blackout>(), .. also ?? []], Sunset = Sunsets.In(Oslemoor.Facts.Zone),
            Staff = new(rules, divisions, Records.OfType<ScheduledGame>(), Records.OfType<Umpirage.District.Pitchers.RosterPlace>(), Records.OfType<Umpirage.District.Pitchers.Appearance>()),
        };
    }

    [Fact]
    public void The_planned_season_breaks_what_its_page_says()
    {
        var found = Checking.Of(new(World(), Records.OfType<ScheduledGame>().Select(g => g with { Status = GameStatus.Planned })));
        // demo/oslemoor/README.md: two things are wrong on purpose, both in the eighth week
        Assert.Equal([("over in time for the age", "W08-SB10U-13"), ("no game on a closed day", "W08-BB1314-01")], found.Where(v => v.Hard).Select(v => (v.Constraint, v.About[0].Key)));
    }
}
