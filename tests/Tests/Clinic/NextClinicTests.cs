using Umpirage.District.Clinic;

namespace Umpirage.Tests.Clinic;

/// <summary>What the next clinic should teach, with figures worked by hand.</summary>
public class NextClinicTests
{
    private static readonly DateOnly Today = new(2026, 5, 16);
    private static readonly Weights Plain = Weights.Read("weights.txt", "asked: 1\nasked and open: 2\ndrill error: 0.5\ngoal: 3\nhalves after: 60 days\nlooks back: 365 days\nmost by one person: 3\n", [])!;

    private static Sign Of(SignKind kind, string subject, int daysAgo, string by = "a", string code = "softball/12U") => new(kind, subject, code, Today.AddDays(-daysAgo), by);

    /// <summary>Today 1, sixty days ago a half, one hundred and twenty a quarter: 1.75. Thirty days ago a goal weighs 3 x 0.5^0.5 = 2.1213.</summary>
    [Fact]
    public void A_sign_halves_with_its_age()
    {
        var topics = NextClinic.Of(Plain, [Of(SignKind.Asked, "appeal", 0), Of(SignKind.Asked, "appeal", 60, "b"), Of(SignKind.Asked, "appeal", 120, "c"), Of(SignKind.Goal, "infield fly", 30)], Today);
        Assert.Equal(["infield fly", "appeal"], topics.Select(t => t.Subject));
        Assert.Equal(2.1213, topics[0].Weight, 4);
        Assert.Equal(1.75, topics[1].Weight, 12);
    }

    /// <summary>Five wrong answers of one person on one day weigh as three, 1.5; three people once each weigh the same; all are told.</summary>
    [Fact]
    public void One_person_does_not_fill_the_clinic()
    {
        var topics = NextClinic.Of(Plain, [.. Enumerable.Repeat(Of(SignKind.DrillError, "balk", 0, code: "baseball/14U"), 5), .. "xyz".Select(p => Of(SignKind.DrillError, "appeal", 0, p.ToString()))], Today);
        Assert.Equal([("appeal", 1.5), ("balk", 1.5)], topics.Select(t => (t.Subject, t.Weight)));
        var balk = Assert.Single(topics[1].Evidence);
        Assert.Equal((5, 1), (balk.Count, balk.People));
        Assert.Equal([("baseball/14U", 5)], balk.Codes);
    }

    /// <summary>Of one person the newest three of four count: 0, 60 and 120 days ago, 0.5 x 1.75 = 0.875; the fourth, 180 days ago, not.</summary>
    [Fact]
    public void The_newest_of_one_person_count() =>
        Assert.Equal(0.875, NextClinic.Of(Plain, [.. new[] { 180, 120, 60, 0 }.Select(d => Of(SignKind.DrillError, "walk", d))], Today).Single().Weight, 12);

    [Fact]
    public void The_evidence_tells_how_often_when_and_whose_code()
    {
        var topic = NextClinic.Of(Plain,
        [
            Of(SignKind.Asked, "appeal", 10), Of(SignKind.Asked, "appeal", 3, "b", "baseball/12U"), Of(SignKind.Asked, "appeal", 4, "c", "baseball/12U"), Of(SignKind.AskedAndOpen, "appeal", 0, "d"), Of(SignKind.Goal, "appeal", 0, "e", "SB 12U"),
        ], Today).Single();
        // 3, 2, and 0.5^(10/60) + 0.5^(3/60) + 0.5^(4/60) = 0.890899 + 0.965936 + 0.954841 = 2.811676
        Assert.Equal([SignKind.Goal, SignKind.Asked, SignKind.AskedAndOpen], topic.Evidence.Select(e => e.Kind));
        Assert.Equal(2.8117, topic.Evidence[1].Weight, 4);
        Assert.Equal(7.8117, topic.Weight, 4);
        Assert.Equal((3, 3, Today.AddDays(-10), Today.AddDays(-3)), (topic.Evidence[1].Count, topic.Evidence[1].People, topic.Evidence[1].First, topic.Evidence[1].Last));
        Assert.Equal([("baseball/12U", 2), ("softball/12U", 1)], topic.Evidence[1].Codes);
    }

    [Fact]
    public void What_is_too_old_or_lies_ahead_weighs_nothing()
    {
        Assert.Empty(NextClinic.Of(Plain, [Of(SignKind.Asked, "appeal", 365), Of(SignKind.Asked, "appeal", -1)], Today));
        Assert.Single(NextClinic.Of(Plain, [Of(SignKind.Asked, "appeal", 364)], Today));
        Assert.Empty(NextClinic.Of(Plain with { Of = Plain.Of.ToDictionary(w => w.Key, _ => 0.0) }, [Of(SignKind.Goal, "appeal", 0)], Today));
    }

    [Fact]
    public void The_districts_own_weights_are_read()
    {
        var findings = new List<Finding>();
        Assert.NotNull(Weights.Read("weights.txt", File.ReadAllText(Folder.Of("codes", "clinic", "weights.txt")), findings));
        Assert.Empty(findings);
    }

    [Fact]
    public void Bad_weights_tell_every_fault()
    {
        var findings = new List<Finding>();
        Assert.Null(Weights.Read("w.txt", "asked: 1\nasked: 2\ngoal: -3\nhalves after: 60\nlooks back: 0 days\nmost by one person: 2.5\ngoals: 1\n", findings));
        Assert.Equal(
        [
            "w.txt, line 2: 'asked' is told twice", "w.txt, line 3: 'goal' is '-3'; allowed is a number from 0 to 1000", "w.txt, line 4: 'halves after' is '60'; allowed is a number of days from 1 to 1000: '60 days'",
            "w.txt, line 5: 'looks back' is '0 days'; allowed is a number of days from 1 to 1000: '60 days'", "w.txt, line 6: 'most by one person' is '2.5'; allowed is a whole number from 1 to 1000",
            "w.txt, line 7: cannot read 'goals: 1'; did you mean 'goal'?", "w.txt: 'asked and open' is missing", "w.txt: 'drill error' is missing",
        ], findings.Select(f => f.ToString()));
    }
}
