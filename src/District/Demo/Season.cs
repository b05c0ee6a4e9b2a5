using Umpirage.District.Calendar;
using Umpirage.District.People;

namespace Umpirage.District.Demo;

/// <summary>Eleven weeks of games: every umpired team twice a week, eighteen games on a weeknight, the rest on the weekend, none on an unlit diamond after dark, the youngest not in the late slot.</summary>
internal static class Season
{
    public const int Weeks = 11;
    private const int WeeknightGames = 18, SaturdayGames = 66;

    /// <summary>The Monday of the first week; the Saturday of the stories, 2026-05-16, lies in the sixth.</summary>
    public static readonly DateOnly First = new(2026, 4, 6);

    /// <summary>Weeks at the start in which the sun sets too soon for the usual evening start.</summary>
    private const int EarlyWeeks = 3;

    private static readonly TimeOnly EarlyEvening = new(17, 15), Evening = new(17, 45);
    internal static readonly TimeOnly Late = new(20, 0);
    private static readonly TimeOnly[] Saturday = [new(9, 0), new(11, 30), new(14, 0), new(16, 30)], Sunday = [new(13, 0), new(15, 30)];

    private sealed record Slot(DateTime Start, Diamond Diamond);

    public static List<ScheduledGame> Of(Plan plan, IReadOnlyList<Team> teams, Dice dice)
    {
        var games = new List<ScheduledGame>();
        var turn = 0;
        for (var week = 0; week < Weeks; week++)
        {
            var monday = First.AddDays(7 * week);
            var slots = Slots(plan, monday, week < EarlyWeeks ? EarlyEvening : Evening, dice);
            var busy = new HashSet<(string, DateOnly)>();
            var count = new Dictionary<DateOnly, int>();
            for (var round = 0; round < 2; round++, turn++)
                foreach (var planned in plan.Divisions.Where(d => d.Division.Crew > 0).OrderByDescending(d => d.BasePath))
                {
                    var pairs = Pairs([.. teams.Where(t => t.Division == planned.Division.Key)], turn);
                    foreach (var (home, visitor) in pairs)
                    {
                        var at = slots.FindIndex(s => s.Diamond.BasePath == planned.BasePath && !(planned.Division.YouthBase && TimeOnly.FromDateTime(s.Start) == Late) && Fits(s, home, visitor, monday, busy, count));
                        if (at < 0) throw new InvalidOperationException($"no diamond for {home.Key} in week {week + 1}");
                        var slot = slots[at];
                        slots.RemoveAt(at);
                        var day = DateOnly.FromDateTime(slot.Start);
                        busy.Add((home.Key, day));
                        busy.Add((visitor.Key, day));
                        count[day] = count.GetValueOrDefault(day) + 1;
                        games.Add(new($"W{week + 1:00}-{Folk.Slug(planned.Division.Key)}-{games.Count(g => g.Division == planned.Division.Key && g.Key.StartsWith($"W{week + 1:00}", StringComparison.Ordinal)) + 1:00}",
                            planned.Division.Key, visitor.Key, home.Key, slot.Diamond.Key, slot.Start, GameStatus.Planned, 0));
                    }
                }
        }
        return games;
    }

    private static bool Fits(Slot slot, Team home, Team visitor, DateOnly monday, HashSet<(string, DateOnly)> busy, Dictionary<DateOnly, int> count)
    {
        var day = DateOnly.FromDateTime(slot.Start);
        var most = (day.DayNumber - monday.DayNumber) switch { < 5 => WeeknightGames, 5 => SaturdayGames, _ => 99 };
        return count.GetValueOrDefault(day) < most && !busy.Contains((home.Key, day)) && !busy.Contains((visitor.Key, day));
    }

    private static List<Slot> Slots(Plan plan, DateOnly monday, TimeOnly evening, Dice dice)
    {
        var slots = new List<Slot>();
        void Add(int day, IEnumerable<TimeOnly> times, Func<Diamond, bool> which) =>
            slots.AddRange(dice.Shuffled(times.SelectMany(t => plan.Diamonds.Where(which).Select(d => new Slot(monday.AddDays(day).ToDateTime(t), d)))));
        Add(5, Saturday, _ => true);
        for (var day = 0; day < 5; day++)
        {
            Add(day, [evening], _ => true);
            Add(day, [Late], d => d.Lit);
        }
        Add(6, Sunday, _ => true);
        return slots;
    }

    /// <summary>A round of a round robin by the circle method; every other round the home side changes.</summary>
    private static IEnumerable<(Team Home, Team Visitor)> Pairs(List<Team> teams, int turn)
    {
        var n = teams.Count;
        var round = turn % (n - 1);
        Team At(int i) => i == 0 ? teams[0] : teams[1 + (i - 1 + round) % (n - 1)];
        for (var i = 0; i < n / 2; i++) yield return (turn + i) % 2 == 0 ? (At(i), At(n - 1 - i)) : (At(n - 1 - i), At(i));
    }
}
