using Umpirage.District.Calendar;
using Umpirage.District.People;
using Umpirage.District.Pitchers;

namespace Umpirage.Tests.Calendar;

/// <summary>Tiny schedules: two parks 21.1 km apart, five diamonds, six teams of two leagues, and a sun that sets when the test says.</summary>
internal static class Tiny
{
    public static readonly DateTime Saturday = new(2026, 5, 16, 9, 0, 0);
    public static readonly Park Mill = new("mill", "Mill", 41.4392, -88.2454), Common = new("common", "Common", 41.2851, -88.0975);

    public static readonly Division
        Soft12 = new("SB 12U", "softball/12U+community", 2, false), Soft14 = new("SB 14U", "softball/14U+community", 2, false), Soft10 = new("SB 10U", "softball/10U+community", 1, true),
        Base12 = new("BB 11-12", "baseball/12U", 2, false), Base14 = new("BB 13-14", "baseball/14U", 2, false), Pro = new("BB open", "baseball/18U+OBR", 2, false);

    public static Surroundings World(DateTime? sunset = null, IEnumerable<Blackout>? closed = null, Func<CalendarCodes, IReadOnlyDictionary<string, Division>, Staff>? staff = null)
    {
        var leagues = new[] { new League("tarnholt", "Tarnholt League"), new League("pellwick", "Pellwick League") };
        var divisions = new[] { Soft10, Soft12, Soft14, Base12, Base14, Pro }.ToDictionary(d => d.Key);
        var teams = divisions.Values.SelectMany(d => "ABCDEF".Select(c => new Team($"{c}-{d.Key}", $"Team {c}", c < 'D' ? "tarnholt" : "pellwick", d.Key)));
        var rules = new CalendarCodes(Shelf.Codes, leagues.ToDictionary(l => l.Key));
        return new()
        {
            Rules = rules, Divisions = divisions, Teams = teams.ToDictionary(t => t.Key), Parks = new[] { Mill, Common }.ToDictionary(p => p.Key),
            Diamonds = new[] { new Diamond("mill-1", "mill", "Mill 1", 60, true), new("mill-2", "mill", "Mill 2", 60, false), new("mill-3", "mill", "Mill 3", 80, true), new("mill-4", "mill", "Mill 4", 90, true), new("common-1", "common", "Common 1", 60, true) }.ToDictionary(d => d.Key),
            Blackouts = [.. closed ?? []], Sunset = (_, day) => sunset is { } s ? day.ToDateTime(TimeOnly.FromDateTime(s)) : day.ToDateTime(new(20, 0)), Staff = staff?.Invoke(rules, divisions),
        };
    }

    /// <summary>A game of a division between two of its teams, by their letters.</summary>
    public static ScheduledGame Game(string key, Division division, string teams, string diamond, DateTime start, GameStatus status = GameStatus.Planned, string? restOf = null) =>
        new(key, division.Key, $"{teams[0]}-{division.Key}", $"{teams[1]}-{division.Key}", diamond, start, status, 0, restOf);

    public static DateTime At(int hour, int minute = 0, int days = 0) => Saturday.Date.AddDays(days).AddHours(hour).AddMinutes(minute);

    /// <summary>What one constraint finds, as "games: found".</summary>
    public static IReadOnlyList<Violation> Find<T>(Surroundings world, params ScheduledGame[] games) where T : Constraint =>
        [.. Checking.Constraints.OfType<T>().Single().Find(new Schedule(world, games))];
}
