using Umpirage.District.Calendar;
using Umpirage.District.Demo;
using Umpirage.District.People;
using Umpirage.District.Cases;
using Umpirage.District.Fits;
using Umpirage.District.Visits;

namespace Umpirage.Tests.District;

/// <summary>The demonstration district has the sizes it was planned with; the numbers here are typed from the plan, not from the program.</summary>
public class DemoTests
{
    private static readonly List<object> All = [.. Oslemoor.Make(Store.OwnStore.Plan)];
    private static List<T> Every<T>() => [.. All.OfType<T>()];

    private static readonly List<ScheduledGame> Games = Every<ScheduledGame>();
    private static readonly Dictionary<string, Person> People = Every<Person>().ToDictionary(p => p.Key);

    [Fact]
    public void Leagues_parks_and_diamonds()
    {
        Assert.Equal(12, Every<League>().Count);
        Assert.Equal(19, Every<Park>().Count);
        Assert.Equal((34, 11), (Every<Diamond>().Count, Every<Diamond>().Count(d => d.Lit)));
        var games = Every<Team>().GroupBy(t => t.League).Select(l => string.Join("+", l.Select(t => t.Division[..2]).Distinct().Order())).CountBy(x => x).ToDictionary();
        Assert.Equal((8, 2, 2), (games["BB+SB"], games["SB"], games["BB"]));
    }

    [Fact]
    public void Teams_of_each_division()
    {
        Assert.Equal(264, Every<Team>().Count);
        Assert.Equal((96, 168), (Every<Team>().Count(t => t.Division.StartsWith("SB")), Every<Team>().Count(t => t.Division.StartsWith("BB"))));
        var counts = Every<Division>().Select(d => (d.Key, d.Crew, Teams: Every<Team>().Count(t => t.Division == d.Key)));
        Assert.Equal(
            [
                ("SB 8U", 0, 30), ("SB 10U", 1, 24), ("SB 12U", 2, 24), ("SB 14U", 2, 12), ("SB 16U+", 2, 6),
                ("BB 5-6", 0, 22), ("BB 7-8", 0, 44), ("BB 9-10", 1, 40), ("BB 11-12", 2, 40), ("BB 13-14", 2, 16), ("BB 15-16", 2, 6),
            ], counts);
        Assert.Equal(264, Every<Team>().Select(t => t.Key).Distinct().Count());
        Assert.Equal(264, Every<Team>().Select(t => (t.Name, t.Division)).Distinct().Count());
    }

    [Fact]
    public void Umpires_old_and_young()
    {
        var umpires = Every<Official>();
        Assert.Equal(140, umpires.Count);
        Assert.Equal((84, 56), (umpires.Count(u => !People[u.Person].IsMinor), umpires.Count(u => People[u.Person].IsMinor)));
        Assert.Equal(6, umpires.Count(u => People[u.Person].Band == AgeBand.Over70));
        Assert.All(umpires.Where(u => People[u.Person].IsMinor), u => Assert.True(People[u.Person].Band is AgeBand.From13To15 or AgeBand.From16To17));
        Assert.Equal(31, umpires.Count(u => u.Since == 2026));
        Assert.Equal(5, umpires.Count(u => u.Grade == Grade.CrewChief));
        Assert.Equal(12, Every<RoleHeld>().Count(r => r.Role == Role.Trainer));
        // 1.7 games a week each
        Assert.Equal(238, umpires.Sum(u => u.GamesAWeek));
    }

    [Fact]
    public void Twenty_two_clearances_lapse_in_the_season() =>
        Assert.Equal(22, Every<Clearance>().Count(c => c.Until >= new DateOnly(2026, 5, 1) && c.Until <= new DateOnly(2026, 6, 21)));

    [Fact]
    public void Every_minor_has_a_guardian_who_is_an_adult()
    {
        var guardians = Every<Guardianship>().ToLookup(g => g.Child);
        Assert.All(People.Values.Where(p => p.IsMinor), p => Assert.Contains(guardians[p.Key], g => !People[g.Guardian].IsMinor));
        // a minor's day of coming of age fits the band on the day on which the demonstration stands still
        var now = DateOnly.FromDateTime(Oslemoor.Now);
        Assert.All(People.Values.Where(p => p.IsMinor), p =>
            Assert.InRange(p.AdultOn!.Value, p.Band == AgeBand.From16To17 ? now.AddDays(1) : now.AddYears(2).AddDays(1), now.AddYears(p.Band == AgeBand.From16To17 ? 2 : 5)));
    }

    [Fact]
    public void Games_of_eleven_weeks()
    {
        Assert.Equal(1848, Games.Count);
        Assert.Equal(1848, Games.Select(g => g.Key).Distinct().Count());
        var weeks = Games.GroupBy(g => (DateOnly.FromDateTime(g.Start).DayNumber - new DateOnly(2026, 4, 6).DayNumber) / 7).OrderBy(w => w.Key).ToList();
        Assert.Equal(Enumerable.Range(0, 11), weeks.Select(w => w.Key));
        Assert.All(weeks, w => Assert.Equal(168, w.Count()));
        foreach (var week in weeks)
            Assert.Equal(
                [(DayOfWeek.Sunday, 12), (DayOfWeek.Monday, 18), (DayOfWeek.Tuesday, 18), (DayOfWeek.Wednesday, 18), (DayOfWeek.Thursday, 18), (DayOfWeek.Friday, 18),
                (DayOfWeek.Saturday, 66)],
                week.GroupBy(g => g.Start.DayOfWeek).OrderBy(d => d.Key).Select(d => (d.Key, d.Count())));
        var umpired = Every<Division>().Where(d => d.Crew > 0).Select(d => d.Key).ToHashSet();
        Assert.All(Games, g => Assert.Contains(g.Division, umpired));
        Assert.All(weeks, w => Assert.All(w.SelectMany(g => new[] { g.Home, g.Visitor }).CountBy(t => t), t => Assert.Equal(2, t.Value)));
    }

    [Fact]
    public void Nobody_plays_twice_a_day_or_itself_and_teams_meet_their_own_division()
    {
        Assert.DoesNotContain(Games.SelectMany(g => new[] { (g.Home, g.Start.Date), (g.Visitor, g.Start.Date) }).CountBy(x => x), x => x.Value > 1);
        var teams = Every<Team>().ToDictionary(t => t.Key);
        Assert.All(Games, g => Assert.True(g.Home != g.Visitor && teams[g.Home].Division == g.Division && teams[g.Visitor].Division == g.Division));
    }

    [Fact]
    public void Diamonds_have_time_light_and_the_right_size()
    {
        var diamonds = Every<Diamond>().ToDictionary(d => d.Key);
        foreach (var diamond in Games.GroupBy(g => g.Diamond))
        {
            var starts = diamond.Select(g => g.Start).Order().ToList();
            Assert.All(starts.Zip(starts.Skip(1)), pair => Assert.True(pair.Second - pair.First >= TimeSpan.FromHours(2), $"{diamond.Key} {pair}"));
            if (!diamonds[diamond.Key].Lit) Assert.All(starts, s => Assert.True(TimeOnly.FromDateTime(s) <= new TimeOnly(19, 0), $"{diamond.Key} {s}"));
        }
        var path = Store.OwnStore.Plan.Divisions.ToDictionary(d => d.Division.Key, d => d.BasePath);
        Assert.All(Games, g => Assert.Equal(path[g.Division], diamonds[g.Diamond].BasePath));
    }

    [Fact]
    public void Crews_are_who_may_and_can()
    {
        var games = Games.ToDictionary(g => g.Key);
        var filled = Every<Assignment>().Where(a => a.Person is not null).ToList();
        Assert.NotEmpty(filled);
        Assert.DoesNotContain(filled.CountBy(a => (a.Person, games[a.Game].Start.Date)), x => x.Value > 2);
        Assert.All(filled, a => Assert.Equal(a.Place == "youth base", People[a.Person!].IsMinor));
        var hours = Every<Availability>().ToLookup(h => h.Person);
        Assert.All(filled, a => Assert.Contains(hours[a.Person!], h => h.Day == games[a.Game].Start.DayOfWeek && h.From <= TimeOnly.FromDateTime(games[a.Game].Start)));
    }

    /// <summary>214 evaluations by 12 evaluators, made with severities from -0.6 to +0.7, which a fit finds again.</summary>
    [Fact]
    public void Evaluations_by_evaluators_of_known_severity()
    {
        var evaluations = Every<Evaluation>();
        Assert.Equal((214, 12, 214), (evaluations.Count, evaluations.Select(e => e.Evaluator).Distinct().Count(), evaluations.Select(e => e.Key).Distinct().Count()));
        var forms = FormBook.Read("forms.txt", File.ReadAllText(Folder.Of("codes", "evaluations", "forms.txt")), [])!;
        Assert.Empty(evaluations.SelectMany(e => e.Faults(forms, [.. Shelf.Codes.Sheets.Select(s => s.Name)])));
        var crews = Every<Assignment>().Where(a => a.Person is not null).ToLookup(a => a.Game);
        var games = Games.ToDictionary(g => g.Key);
        Assert.All(evaluations, e =>
        {
            Assert.Equal(GameStatus.Played, games[e.Game].Status);
            Assert.Contains(crews[e.Game], a => a.Person == e.Umpire && (a.Place == "plate" ? Position.Plate : Position.Base) == e.Position);
            Assert.DoesNotContain(crews[e.Game], a => a.Person == e.Evaluator);
        });
        Assert.DoesNotContain(evaluations.CountBy(e => (e.Evaluator, games[e.Game].Start)), x => x.Value > 1);
        var severities = Enumerable.Range(0, 12).Select(Oslemoor.Severity).ToList();
        Assert.Equal((-0.6, 0.7), (severities.Min(), Math.Round(severities.Max(), 9)));
        var fit = Severity.Fit([.. evaluations.Select(e => new Umpirage.District.Fits.Mark(e.Umpire, e.Evaluator, e.Mark))])!;
        for (var i = 0; i < 12; i++) Assert.Equal(0.05 - severities[i], fit.Lean[$"umpire-{i + 1:000}"], 0.35);
        var results = Results.Of(forms, evaluations, [.. Every<Official>().Select(o => o.Person)], People.Values.Where(p => p.IsMinor).Select(p => p.Key).ToHashSet());
        Assert.InRange(results.Count(r => r.Band is not null), 20, 50);
        Assert.Equal([new Remark("umpire-007", "gave every item the same step")], Remark.Of(forms, evaluations).Where(r => r.Says.StartsWith("gave")).Select(r => r with { Says = r.Says[..29] }));
    }

    /// <summary>340 questions asked at the desk; each stands in the log with the ruling that the code gives.</summary>
    [Fact]
    public void Questions_asked_are_logged_as_the_code_rules_them()
    {
        var asked = Every<AskedQuestion>();
        Assert.Equal((340, 340), (asked.Count, asked.Select(q => q.Key).Distinct().Count()));
        Assert.InRange(asked.Count(q => q.Open), 1, 12);
        Assert.All(asked, q => Assert.InRange(q.At, Oslemoor.Now.AddDays(-42), Oslemoor.Now));
        foreach (var ruled in Store.OwnStore.Plan.Ruled)
        {
            var findings = new List<Finding>();
            var play = new Play { File = "demo", Sheet = ruled.Sheet, Code = $"{ruled.Code}@2026-05-16", Situation = ruled.Words };
            play.Given.AddRange(ruled.Facts.Split("; ").Select(f => new Phrase(f, 0)));
            var answer = Answer.Of(Casebook.Rule(Shelf.Codes, play, Shelf.Today, findings)!, [], []);
            Assert.Empty(findings);
            Assert.Equal((true, ruled.Ruling), (answer.Ruled, string.Join("; ", answer.Ruling)));
            Assert.EndsWith($" | {ruled.Rules}", answer.Log);
        }
    }

    [Fact]
    public void The_same_seed_gives_the_same_records_and_another_seed_others()
    {
        Assert.Equal(All, Oslemoor.Make(Store.OwnStore.Plan).ToList());
        var other = Oslemoor.Make(Store.OwnStore.Plan, seed: 1).ToList();
        Assert.NotEqual(All, other);
        Assert.NotEqual(Games, other.OfType<ScheduledGame>().ToList());
        Assert.NotEqual(Every<Person>(), other.OfType<Person>().ToList());
        Assert.Equal(1848, other.OfType<ScheduledGame>().Count());
    }
}
