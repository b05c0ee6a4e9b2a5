using Umpirage.District.People;
using Umpirage.District.Visits;

namespace Umpirage.Tests.Visits;

/// <summary>Evaluations: anchored, fair to whom a strict evaluator saw, told in bands, and never a level of a minor.</summary>
public class ResultTests
{
    private static readonly DateOnly Day = new(2026, 5, 2);
    private static readonly FormBook Forms = FormBook.Read("forms.txt", File.ReadAllText(Folder.Of("codes", "evaluations", "forms.txt")), [])!;
    private static readonly string[] Items = [.. Forms.Forms.Single(f => f.Id == "base").Items.Select(i => i.Id)];

    private static Evaluation Seen(string umpire, string evaluator, params int[] steps) =>
        new(umpire, evaluator, Day, "base", "12U", 2, 60, Items.Zip(steps).ToDictionary(x => x.First, x => x.Second), ["gets set"], ["angle before distance"], "I was late twice.");

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
        Assert.Equal("1 evaluations by 1 evaluators; a band takes 3 by 2", results[1].Why);
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
        Assert.Equal(["angle before distance"], result.Goals);
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
        Assert.Contains(Results.Remarks(Forms, evaluations), r => r.StartsWith("e0 marks") && r.EndsWith("steps lower than the others"));
    }

    [Fact]
    public void An_evaluator_nobody_can_be_compared_with_gives_no_band()
    {
        var evaluations = District(new Random(4));
        foreach (var _ in Enumerable.Range(0, 3)) evaluations.Add(Seen("far away", "island", 5, 5, 5, 5, 5, 5, 5));
        evaluations.Add(Seen("far away", "islet", 5, 5, 5, 5, 5, 5, 5));
        Assert.StartsWith("an evaluator has seen nobody", Results.Of(Forms, evaluations, ["far away"], new HashSet<string>())[0].Why);
        Assert.Contains("island gave every item the same step in 3 of 3 visits", Results.Remarks(Forms, evaluations));
    }

    [Fact]
    public void Every_fault_of_an_evaluation_is_told()
    {
        var faults = (Seen("u", "u", 3, 9) with { Form = "base", Goals = ["a", "b", "c"], Strengths = [], OwnView = " ", MinutesWatched = 5, Crew = 9 }).Faults(Forms);
        Assert.Equal(
        [
            "evaluator: found 'u'; allowed is somebody other than the umpire", "angle: found '9'; allowed is a step from 1 to 5, or nothing when it was not seen",
            "items: found '2 seen'; allowed is at least half of the 7 items; watch longer before you mark", "minutes watched: found '5'; allowed is 20 to 300", "crew: found '9'; allowed is 1 to 6 umpires",
            "strengths: found '0'; allowed is 1 to 3", "goals: found '3'; allowed is at most 2: nobody works on more", "own view: found nothing; allowed is what the umpire says first",
        ], faults.Select(f => f.ToString()));
        Assert.Empty(Seen("u", "e", 3, 3, 4, 3, 3, 4, 3).Faults(Forms));
    }

    [Fact]
    public void The_next_visit_goes_where_least_is_known()
    {
        var evaluations = District(new Random(5));
        evaluations.Add(Seen("new", "e1", 3, 3, 4, 3, 3, 4, 3));
        var next = NextVisit.Of(Forms, evaluations, [.. evaluations.Select(e => e.Umpire).Distinct()], ["e0", "e1", "e2", "e3", "e4", "e5"]);
        Assert.Equal(("new", "e5"), (next[0].Umpire, next[0].Evaluator));
        Assert.Equal("seen 1 times of the 3 a band takes; e5 has not seen new yet and shares 0 umpires with others", next[0].Why);
    }

    [Fact]
    public void Bad_forms_tell_every_fault()
    {
        var findings = new List<Finding>();
        Assert.Null(FormBook.Read("f.txt", "scale: 1 to 5\nform x: X\n  item a: A\n    7: seven\nband 3: c\nband 2: b\nnonsense\n", findings));
        Assert.Contains("f.txt, line 4: the step is 7; the scale goes from 1 to 5", findings.Select(f => f.ToString()));
        Assert.Contains("f.txt: item 'a' of 'x' does not say what is seen at 1 and at 5", findings.Select(f => f.ToString()));
        Assert.Contains("f.txt: the bands have to rise, the first from the scale's lowest step", findings.Select(f => f.ToString()));
        Assert.Equal(9, findings.Count);
    }
}
