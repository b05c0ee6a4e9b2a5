using System.Globalization;
using System.Text;
using Umpirage.District.Calendar;

namespace Umpirage.Cli.Verbs;

/// <summary>What is wrong in a schedule, as text and for programs.</summary>
internal static class ScheduleText
{
    public static string Of(Schedule schedule, IReadOnlyList<Violation> found, int games, TimeSpan time)
    {
        var text = new StringBuilder();
        foreach (var day in found.GroupBy(v => v.At.Date))
        {
            text.AppendLine(day.Key.ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture));
            foreach (var v in day)
            {
                text.AppendLine($"  {(v.Hard ? "" : "wish: ")}{v.Constraint}: {v.Found}; allowed is {v.Allowed}");
                text.AppendLine($"      {v.Source}");
                if (v.Mend is { } mend) text.AppendLine($"      mend: {mend.Game} {To(schedule, schedule.Game(mend.Game)!, mend.Diamond, mend.Start)}");
                else if (v.Hard) text.AppendLine("      no single game can be moved to mend it; see ./umpirage schedule repair");
            }
        }
        var hard = found.Count(v => v.Hard);
        text.AppendLine(CultureInfo.InvariantCulture, $"{games} games, {Checking.Constraints.Count} constraints, {hard} broken, {found.Count - hard} wishes not met; checked in {time.TotalSeconds:0.00} s");
        return text.ToString();
    }

    /// <summary>"to 16:30", with the day and the diamond where they change.</summary>
    public static string To(Schedule schedule, ScheduledGame game, string diamond, DateTime start) =>
        $"to {(start.Date == game.Start.Date ? "" : start.ToString("ddd d MMM ", CultureInfo.InvariantCulture))}{start.ToString("HH:mm", CultureInfo.InvariantCulture)}{(diamond == game.Diamond ? "" : $" on {schedule.Surroundings.Diamonds[diamond].Name}")}";

    public static IEnumerable<object> Json(IEnumerable<Violation> found) => found.Select(v => new
    {
        constraint = v.Constraint, hard = v.Hard, of = v.Of, games = v.About.Select(g => g.Key), found = v.Found, allowed = v.Allowed, source = v.Source,
        mend = v.Mend is { } m ? new { game = m.Game, diamond = m.Diamond, start = Moment(m.Start) } : null,
    });

    internal static string Moment(DateTime at) => at.ToString("yyyy-MM-ddTHH:mm", CultureInfo.InvariantCulture);
}
