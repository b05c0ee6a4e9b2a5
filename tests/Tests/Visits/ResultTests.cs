using Umpirage.District.People;
using Umpirage.District.Visits;

namespace Umpirage.Tests.Visits;

/// <summary>Evaluations: anchored, fair to whom a strict evaluator saw, told in bands, and never a level of a minor.</summary>
public class ResultTests
{
    private static readonly DateOnly Day = new(2026, 5, 2);
    private static readonly FormBook Forms = FormBook.Read("forms.txt", File.ReadAllText(Folder.Of("codes", "evaluations", "forms.txt")), [])!;
    private static readonly string[] Items = [.. Forms.Forms.Single(f => f.Id == "base").Items.Select(i => i.Id)];

    private static readonly string[] Subjects = ["infield fly", "appeal"];
    private static int games;

    private static Evaluation Seen(string umpire, string evaluator, params int[] steps) => Seen(umpire, evaluator, Items.Zip(steps, (i, s) => (i, (int?)s)));

    private static Evaluation Seen(string umpire, string evaluator, IEnumerable<(string, int?)> marks, DateOnly? on = null) =>
        new(Evaluation.KeyOf($"G-{++games}", umpire, evaluator), umpire, evaluator, on ?? Day, $"G-{games}", "base", "SB 12U", 2, 60, "", Evaluation.Written(marks), "gets set", "angle: angle before distance", "I was late twice.", "");

    private static int[] Around(double level, Random random) => [.. Items.Select(_ => Math.Clamp((int)Math.Round(level + (random.NextDouble() - 0.5) * 1.4), 1, 5))];

    private static List<Evaluation> District(Random random)
    {
        var evaluations = new List<Evaluation>();
        for (var u = 0; u < 30; u++)
            foreach (var e in Enumerable.Range(0, 5).OrderBy(_ => random.Next()).Take(3))
                evaluations.Add(Seen($"u{u}", $"e{e}", Around(2 + u / 10.0 * 0.8 + (e == 0 ? -1 : 0.2), random)));
        return evaluations;
    }

    [Fact]
    public void A_band_takes_enough_visits_by_enough_evaluators()
    {
        var random = new Random(1);
        var evaluations = District(random);
        evaluations.Add(Seen("few", "e1", 3, 3, 3, 4, 3, 3, 3));
        var results = Results.Of(Forms, evaluations, ["u29", "few"], new HashSet<string>());
        Assert.NotNull(results[0].Band);
        Assert.Contains(results[0].Band!, results[0].Reach);
        Assert.Null(results[1].Band);
        Assert.Equal("1 evaluation by 1 evaluator; a band takes 3 by 2", results[1].Why);
        Assert.Equal(2, results[1].MoreVisits);
    }

    [Fact]
    public void A_minor_has_strengths_and_goals_and_never_a_level()
    {
        var result = Results.Of(Forms, District(new Random(1)), ["u29", "u3"], new HashSet<string> { "u29" })[0];
        Assert.Null(result.Band);
        Assert.Empty(result.Reach);
        Assert.Null(result.Interval);
        Assert.Null(result.MoreVisits);
        Assert.Equal(["gets set"], result.Strengths);
        Assert.Equal([new Goal("angle", "angle before distance")], result.Goals);
        Assert.DoesNotContain(result.Why, char.IsDigit);
    }

    [Fact]
    public void Results_come_in_the_order_asked_and_carry_no_rank()
    {
        string[] asked = ["u7", "u29", "u0", "u15"];
        Assert.Equal(asked, Results.Of(Forms, District(new Random(2)), asked, new HashSet<string>()).Select(r => r.Umpire));
        foreach (var type in typeof(Result).Assembly.GetExportedTypes().Where(t => t.Namespace == "Umpirage.District.Visits"))
            Assert.DoesNotContain(type.GetProperties(), p => p.Name.Contains("Rank") || p.Name.Contains("Order") || p.Name.Contains("Place"));
    }

    [Fact]
    public void Who_was_seen_by_the_strict_one_is_not_worse_for_it()
    {
        var evaluations = District(new Random(3));
        int[] plain = [3, 3, 4, 3, 3, 4, 3], strict = [2, 2, 3, 2, 2, 3, 2];
        foreach (var e in (string[])["e1", "e2", "e3"]) evaluations.Add(Seen("by the generous", e, plain));
        foreach (var e in (string[])["e0", "e1", "e2"]) evaluations.Add(Seen("by the strict", e, e == "e0" ? strict : plain));
        var results = Results.Of(Forms, evaluations, ["by the generous", "by the strict"], new HashSet<string>());
        Assert.Equal(results[0].Band, results[1].Band);
        Assert.Contains(Remark.Of(Forms, evaluations), r => r.Evaluator == "e0" && r.Says.StartsWith("marks 1.") && r.Says.EndsWith("steps lower than the others"));
    }

    [Fact]
    public void An_evaluator_nobody_can_be_compared_with_gives_no_band()
    {
        var evaluations = District(new Random(4));
        foreach (var _ in Enumerable.Range(0, 3)) evaluations.Add(Seen("far away", "island", 5, 5, 5, 5, 5, 5, 5));
        evaluations.Add(Seen("far away", "islet", 5, 5, 5, 5, 5, 5, 5));
        Assert.StartsWith("an evaluator has seen nobody", Results.Of(Forms, evaluations, ["far away"], new HashSet<string>())[0].Why);
        Assert.Contains(new Remark("island", "gave every item the same step in 3 of 3 visits"), Remark.Of(Forms, evaluations));
    }

    [Fact]
    public void Every_fault_of_an_evaluation_is_told()
    {
        var spoilt = Seen("u", "u", 3, 9) with { Goals = "a: b\nangle: \nappeal: wait", Strengths = "", OwnView = " ", MinutesWatched = 5, Crew = 9 };
        Assert.Equal(
        [
            "evaluator: found 'u'; allowed is somebody other than the umpire", "angle: found '9'; allowed is a step from 1 to 5, or nothing when it was not seen",
            "items: found '2 seen'; allowed is at least half of the 7 items; watch longer before you mark", "minutes watched: found '5'; allowed is 20 to 300", "crew: found '9'; allowed is 1 to 6 umpires",
            "strengths: found '0'; allowed is 1 to 3", "goals: found '3'; allowed is at most 2: nobody works on more",
            "goal: found 'a'; allowed is an item of the form or a subject of the rules; it may be start, angle, timing, chest, rules, handling, crew, infield fly or appeal",
            "goal: found nothing; allowed is what to do about it, in at most 200 letters", "own view: found nothing; allowed is what the umpire says first",
        ], spoilt.Faults(Forms, Subjects).Select(f => f.ToString()));
        Assert.Empty(Seen("u", "e", 3, 3, 4, 3, 3, 4, 3).Faults(Forms, Subjects));
    }

    [Fact]
    public void Marks_are_read_as_they_are_written()
    {
        var seen = Seen("u", "e", [("start", 3), ("angle", null), ("timing", 5), ("chest", 4), ("rules", null), ("handling", 4), ("crew", 4)]);
        Assert.Equal("start 3; angle not seen; timing 5; chest 4; rules not seen; handling 4; crew 4", seen.Marks);
        Assert.Equal([("start", 3), ("timing", 5), ("chest", 4), ("handling", 4), ("crew", 4)], seen.Steps.Select(s => (s.Key, s.Value)));
        Assert.Equal(4, seen.Mark); // (3 + 5 + 4 + 4 + 4) / 5
        Assert.False(seen.Halo);
        Assert.Equal(new Visit("u", Position.Base, Day, "e"), seen.Visit);
        // what nobody can read is a fault, not a mark
        Assert.Contains((seen with { Marks = "start three; timing 5; chest 4; handling 4; crew 4" }).Faults(Forms, Subjects), f => f.Field == "start");
    }

    private static Chance At(string umpire, int hour, int unseen, params string[] free) => new(umpire, Position.Base, $"at {hour} {umpire}", Day.ToDateTime(new(hour, 0)), Day.ToDateTime(new(hour + 2, 0)), unseen, free);

    [Fact]
    public void The_next_visit_goes_where_least_is_known()
    {
        var evaluations = District(new Random(5));
        evaluations.Add(Seen("new", "e1", 3, 3, 4, 3, 3, 4, 3));
        string[] all = ["e0", "e1", "e2", "e3", "e4", "e5"];
        var next = NextVisit.Of(Forms, evaluations, [At("u1", 9, 9, all), At("new", 9, 1, all)]);
        Assert.Equal(("new", "e5"), (next[0].At.Umpire, next[0].Evaluator));
        Assert.Equal("evaluated once, a band takes 3; the evaluator has not seen this umpire yet and shares no umpire with others", next[0].Why);
        // e5 is at the other game, and comes again when it is over; who has seen somebody does not go twice
        Assert.NotEqual("e5", next[1].Evaluator);
        Assert.Equal("e5", NextVisit.Of(Forms, evaluations, [At("u1", 11, 9, all), At("new", 9, 1, all)])[1].Evaluator);
        Assert.Empty(NextVisit.Of(Forms, evaluations, [At("new", 9, 1, "e1")]));
    }

    [Fact]
    public void Of_two_who_were_seen_as_rarely_the_one_with_more_games_unseen_comes_first_and_nobody_twice()
    {
        var next = NextVisit.Of(Forms, [], [At("a", 9, 2, "e1", "e2"), At("b", 9, 5, "e1"), At("b", 12, 5, "e2")]);
        Assert.Equal([("b", "e1"), ("a", "e2")], next.Select(n => (n.At.Umpire, n.Evaluator)));
    }

    /// <summary>An evaluator marks 4 in the earlier visits and 3 in the later ones of umpires whom two others marked 3.5 throughout: a drift of one step down.</summary>
    [Fact]
    public void An_evaluator_who_changes_is_talked_to_and_one_who_does_not_is_left_alone()
    {
        var evaluations = new List<Evaluation>();
        Evaluation On(string umpire, string by, double mark, int day) => Seen(umpire, by, Items.Select((i, n) => (i, (int?)(n % 2 == 0 ? Math.Floor(mark) : Math.Ceiling(mark)))), Day.AddDays(day));
        for (var u = 0; u < 12; u++)
        {
            evaluations.Add(On($"u{u}", "steady", 3.5, u));
            evaluations.Add(On($"u{u}", "also", 3.5, u));
            evaluations.Add(On($"u{u}", "changed", u < 6 ? 4 : 3, u));
        }
        Assert.Equal([new Remark("changed", "gave every item the same step in 12 of 12 visits"), new Remark("changed", "marks 1.0 steps lower in the later half of the visits than in the earlier")], Remark.Of(Forms, evaluations));
    }

    /// <summary>
    /// Truth known: 84 umpires with levels around 3.1, 12 evaluators whose severities are drawn from -0.65 to +0.65, three to five visits each, seven items rounded
    /// to whole steps, some not seen. How often the interval told holds the level; beside it the interval of somebody who only averages the marks.
    /// </summary>
    private static (double Ours, double Averaged) Covered(int districts, int seed)
    {
        var random = new Random(seed);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        var (ours, averaged, all) = (0, 0, 0);
        for (var d = 0; d < districts; d++)
        {
            double[] severities = [.. Enumerable.Range(0, 12).Select(_ => 1.3 * random.NextDouble() - 0.65)];
            var levels = Enumerable.Range(0, 84).ToDictionary(u => $"u{u}", _ => 3.1 + 0.5 * Normal());
            var evaluations = new List<Evaluation>();
            foreach (var (umpire, level) in levels)
                foreach (var e in Enumerable.Range(0, 12).OrderBy(_ => random.Next()).Take(random.Next(3, 6)))
                {
                    var visit = level - severities[e] + 0.3 * Normal();
                    evaluations.Add(Seen(umpire, $"e{e}", [.. Items.Select(i => (i, random.Next(8) == 0 ? (int?)null : Math.Clamp((int)Math.Round(visit + 0.45 * Normal()), 1, 5)))]));
                }
            foreach (var result in Results.Of(Forms, evaluations, [.. levels.Keys], new HashSet<string>()))
            {
                if (result.Interval is not { } interval) continue;
                var marks = evaluations.Where(e => e.Umpire == result.Umpire).Select(e => e.Mark).ToList();
                var (mean, error) = (marks.Average(), Math.Sqrt(marks.Sum(m => (m - marks.Average()) * (m - marks.Average())) / (marks.Count - 1) / marks.Count));
                all++;
                if (interval.Low <= levels[result.Umpire] && levels[result.Umpire] <= interval.High) ours++;
                if (Math.Abs(levels[result.Umpire] - mean) <= 1.96 * error) averaged++;
            }
        }
        return ((double)ours / all, (double)averaged / all);
    }

    [Fact]
    public void The_intervals_of_results_hold_the_truth_in_95_of_100()
    {
        var (ours, averaged) = Covered(Folder.Count(12, 500), 7);
        TestContext.Current.TestOutputHelper?.WriteLine($"results of evaluations: 95 % intervals hold the truth in {ours:0.0%}, those of plain averages in {averaged:0.0%}");
        if (Folder.Count(0, 1) == 1) Assert.InRange(ours, 0.94, 0.96);
        else Assert.InRange(ours, 0.925, 0.975);
        // the same check turns down an interval that leaves strictness in
        Assert.InRange(averaged, 0.5, 0.92);
    }

    [Fact]
    public void Bad_forms_tell_every_fault()
    {
        var findings = new List<Finding>();
        Assert.Null(FormBook.Read("f.txt", "scale: 1 to 5\nform x: X\n  item a: A\n    7: seven\nband 3: c\nband 2: b\nnonsense\n", findings));
        Assert.Contains("f.txt, line 4: the step is 7; the scale goes from 1 to 5", findings.Select(f => f.ToString()));
        Assert.Contains("f.txt: the form 'x' does not begin with its position, plate or base", findings.Select(f => f.ToString()));
        Assert.Contains("f.txt: item 'a' of 'x' does not say what is seen at 1 and at 5", findings.Select(f => f.ToString()));
        Assert.Contains("f.txt: the bands have to rise, the first from the scale's lowest step", findings.Select(f => f.ToString()));
        Assert.Equal(10, findings.Count);
    }
}
