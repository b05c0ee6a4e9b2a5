using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.People;

namespace Umpirage.Tests.Crews;

/// <summary>A few people, parks and teams from which tests build plans.</summary>
internal static class Town
{
    public static readonly DateOnly Saturday = new(2026, 5, 16), Year = new(2027, 3, 14);
    public static readonly UmpiresCodes Codes = new(Shelf.Codes);

    public static readonly Division[] Divisions =
    [
        new("SB 10U", "softball/10U+Oslemoor", 1, true), new("SB 12U", "softball/12U+Oslemoor", 2, false), new("BB 9-10", "baseball/10U+Oslemoor-baseball", 1, true),
        new("BB 11-12", "baseball/12U+Oslemoor-baseball", 2, false), new("BB 13-14", "baseball/14U+Oslemoor-baseball", 2, false),
    ];

    /// <summary>Ann and Ben grown up and certified for all; Cora 16, Dan 14; Gil is the parent of both; Eve coordinates and is no umpire.</summary>
    public static readonly CrewRecords Empty = new()
    {
        Leagues = [new("north", "North League"), new("south", "South League"), new("east", "East League")], Divisions = Divisions,
        // about 11 km apart, by a tenth of a degree of latitude
        Parks = [new("mill", "Mill", 41.40, -88.10), new("heath", "Heath", 41.50, -88.10)],
        Diamonds = [new("mill-1", "mill", "Mill 1", 60, true), new("mill-2", "mill", "Mill 2", 60, true), new("heath-1", "heath", "Heath 1", 60, true)],
        Teams = [.. Divisions.SelectMany(d => new[] { "north", "south", "east" }.Select(l => new Team($"{l}-{d.Key}", $"{l} {d.Key}", l, d.Key)))],
        People =
        [
            Adult("ann"), Adult("ben"), Adult("eve"), Adult("gil"), Minor("cora", AgeBand.From16To17), Minor("dan", AgeBand.From13To15),
        ],
        Officials = [new("ann", Grade.Plate, 3, 2010), new("ben", Grade.CrewChief, 3, 2000), new("cora", Grade.Plate, 2, 2025), new("dan", Grade.Plate, 2, 2026)],
        Roles = [new("ann", Role.Umpire, "", ""), new("ben", Role.Umpire, "", ""), new("eve", Role.Coordinator, "", "")],
        Clearances =
        [
            .. new[] { "ann", "ben" }.Select(p => new Clearance(p, "background check", new(2026, 2, 1), new(2027, 1, 31), "officer")),
            .. new[] { "ann", "ben", "cora", "dan" }.Select(p => new Clearance(p, "abuse-awareness course", new(2026, 2, 1), new(2027, 1, 31), "officer")),
        ],
        Certificates = [.. new[] { "ann", "ben", "cora", "dan" }.SelectMany(p => new[] { ("softball", "SB 12U"), ("baseball", "BB 13-14") }.Select(g => new Certificate(p, g.Item1, g.Item2, Position.Plate, new(2026, 3, 15), Year)))],
        Hours = [.. new[] { "ann", "ben", "cora", "dan" }.SelectMany(p => Enum.GetValues<DayOfWeek>().Select(d => new Availability(p, d, new(8, 0), new(23, 30))))],
        Guardianships = [new("cora", "gil"), new("dan", "gil")],
        Approvals = [new("cora", "gil", new(2026, 3, 1), new(2026, 10, 31)), new("dan", "gil", new(2026, 3, 1), new(2026, 10, 31))],
    };

    public static Person Adult(string key, string? league = "east") => Person.Of(key, char.ToUpperInvariant(key[0]) + key[1..], "Lark", AgeBand.Adult, null, league, null, null, [])!;
    public static Person Minor(string key, AgeBand band) => Person.Of(key, char.ToUpperInvariant(key[0]) + key[1..], "Lark", band, new(band == AgeBand.From16To17 ? 2027 : 2029, 12, 1), "east", null, null, [])!;

    public static DateTime At(int hour, int minute = 0) => Saturday.ToDateTime(new(hour, minute));

    /// <summary>A game on Saturday of the north against the south.</summary>
    public static ScheduledGame Game(string key, DateTime start, string division = "BB 9-10", string diamond = "mill-1", string home = "north", string visitor = "south") =>
        new(key, division, $"{visitor}-{division}", $"{home}-{division}", diamond, start, GameStatus.Planned, 0);

    public static CrewRecords With(IEnumerable<ScheduledGame> games, params (string Game, string Place, string Person)[] seats) =>
        Empty with { Games = [.. games], Assignments = [.. seats.Select(s => new Assignment(s.Game, s.Place, s.Person))] };

    public static CrewPlan Plan(CrewRecords records) => CrewPlan.Of(records, Codes);

    public static IReadOnlyList<Breach> Check(CrewRecords records) => CrewCheck.All(Plan(records));
}
