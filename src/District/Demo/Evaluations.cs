using System.Globalization;
using Umpirage.District.Calendar;
using Umpirage.District.People;
using Umpirage.District.Visits;

namespace Umpirage.District.Demo;

/// <summary>What was seen and said of one item or subject, in the demonstration: a line of demo/oslemoor/evaluations.csv.</summary>
public sealed record Observation(string Form, string About, string Strength, string Goal, string OwnView);

/// <summary>Evaluations of the games played so far, by evaluators of known severity, with more visits to some than to others. Has dice of its own.</summary>
internal sealed class Evaluations(Plan plan, Folk folk, IReadOnlyList<ScheduledGame> games, IReadOnlyList<Assignment> crews, Dice dice)
{
    public const int Visits = 214;
    private const int Adults = 44, Youths = 18, Low = 1, High = 5;
    private const double HoursApart = 2.6;

    private sealed record Seat(ScheduledGame Game, string Place, string Person);

    private readonly Dictionary<string, ScheduledGame> byKey = games.ToDictionary(g => g.Key);
    private readonly List<(string Person, DateTime Start)> busy = [.. crews.Where(c => c.Person is not null).Select(c => (c.Person!, games.First(g => g.Key == c.Game).Start))];
    private readonly List<(string Umpire, string Evaluator)> seen = [];

    public IEnumerable<Evaluation> Make()
    {
        var trainers = folk.Roles.Where(r => r.Role == Role.Trainer).Select(r => r.Person).ToList();
        var minors = folk.People.Where(p => p.IsMinor).Select(p => p.Key).ToHashSet();
        var often = dice.Shuffled(folk.Officials.Where(o => !minors.Contains(o.Person))).Take(Adults).Concat(dice.Shuffled(folk.Officials.Where(o => minors.Contains(o.Person))).Take(Youths)).Select(o => o.Person).ToHashSet();
        var levels = folk.Officials.ToDictionary(o => o.Person, o => LevelOf(o.Grade) + 0.45 * Normal());
        var most = folk.Officials.ToDictionary(o => o.Person, o => often.Contains(o.Person) ? dice.Between(3, 5) : 2);
        var seats = dice.Shuffled(crews.Where(c => c.Person is not null && byKey[c.Game].Status == GameStatus.Played).Select(c => new Seat(byKey[c.Game], c.Place, c.Person!)));
        var hours = folk.Hours.ToLookup(h => h.Person);
        for (var i = 0; i < Visits; i++)
        {
            var (trainer, by) = (i % trainers.Count, trainers[i % trainers.Count]);
            bool Free(Seat s) => s.Person != by && !seen.Contains((s.Person, by)) && busy.All(b => b.Person != by || Math.Abs((b.Start - s.Game.Start).TotalHours) > HoursApart);
            bool Hours(Seat s) => hours[by].Any(h => h.Day == s.Game.Start.DayOfWeek && h.From <= TimeOnly.FromDateTime(s.Game.Start) && TimeOnly.FromDateTime(s.Game.Start) < h.Until);
            bool Often(Seat s) => (i % 6 == 5 ? !often.Contains(s.Person) : often.Contains(s.Person)) && seen.Count(v => v.Umpire == s.Person) < most[s.Person];
            // an evaluator comes outside the weekly hours when these are used up
            var seat = seats.FirstOrDefault(s => Often(s) && Free(s) && Hours(s)) ?? seats.FirstOrDefault(s => Often(s) && Free(s)) ?? seats.First(Free);
            seen.Add((seat.Person, by));
            busy.Add((by, seat.Game.Start));
            yield return One(seat, by, levels[seat.Person] - Oslemoor.Severity(trainer) + 0.3 * Normal(), alike: trainer == Oslemoor.AllAlike && !dice.In(4));
        }
    }

    private static double LevelOf(Grade grade) => grade switch { Grade.Trainee => 2.8, Grade.Base => 3.1, Grade.Plate => 3.5, Grade.CrewChief => 4, _ => throw new ArgumentOutOfRangeException(nameof(grade)) };

    private Evaluation One(Seat seat, string by, double level, bool alike)
    {
        var form = CrewForm(seat.Place);
        var items = plan.Observations.Where(o => o.Form == form).ToList();
        var notSeen = dice.Below(8);
        var marks = items.Select((o, i) => (o, Step: i == notSeen ? (int?)null : Math.Clamp((int)Math.Round(level + (alike ? 0 : 0.45 * Normal())), Low, High))).ToList();
        var best = marks.Where(m => m.Step is not null).OrderByDescending(m => m.Step).Select(m => m.o).Take(dice.Between(1, 3)).ToList();
        var weakest = marks.Where(m => m.Step is not null && !best.Contains(m.o)).OrderBy(m => m.Step).First().o;
        List<Observation> goals = [weakest];
        if (dice.In(3)) goals.Add(dice.Of([.. plan.Observations.Where(o => o.Form == "")]));
        string[] conditions = ["", "", "many close plays", "close to the last out", "a quiet game", "hot, and two umpires short in the park"];
        return new(Evaluation.KeyOf(seat.Game.Key, seat.Person, by), seat.Person, by, seat.Game.Day, seat.Game.Key, form, seat.Game.Division, crews.Count(c => c.Game == seat.Game.Key && c.Person is not null), 5 * dice.Between(8, 18),
            dice.Of(conditions), Evaluation.Written(marks.Select(m => (m.o.About, m.Step))), Evaluation.Lines(best.Select(b => b.Strength)), Evaluation.Lines(goals.Select(g => new Goal(g.About, g.Goal))), goals[^1].OwnView,
            dice.In(6) ? "Thank you. I will try that in the next game." : "");
    }

    private static string CrewForm(string place) => (place == "plate" ? Position.Plate : Position.Base).ToString().ToLower(CultureInfo.InvariantCulture);

    /// <summary>Near enough to a normal spread of 1: twelve even numbers added (central limit).</summary>
    private double Normal() => Enumerable.Range(0, 12).Sum(_ => dice.Below(10_000) / 10_000.0) - 6;
}
