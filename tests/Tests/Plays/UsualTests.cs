namespace Umpirage.Tests.Plays;

/// <summary>What goes without saying is taken only in a written play, only when needed, and is said.</summary>
public class UsualTests
{
    private const string Sheet = """
        Sheet: made up
        group: running
        about: nothing
        Moments
          fielder waits
          runner swerves
        Facts
          act : hit | kicked
            ask: What?
          meant : no | yes
            ask: Was it meant?
            usually: no
            told by yes: fielder waits, then runner swerves
            told by no: runner swerves, then fielder waits
          weather : dry | wet
            ask: Was it wet?
            usually: dry
        Decides
          runner : out | not out
        Rule R1: not out
          cite: made up | our own
          then runner is not out
          Except R1a: meant
            cite: made up | our own
            when act is kicked
             and meant is yes
            then runner is out
        Rule R2: wet or dry, it is the same
          cite: made up | our own
          when weather is wet
           and act is hit
          then runner is not out
        """;

    private static Ruling Rule(params string[] given)
    {
        var play = new Play { File = "a.play", Code = "softball/12U", Sheet = "made up" };
        play.Given.AddRange(given.Select((g, i) => new Phrase(g, i + 1)));
        var findings = new List<Finding>();
        var ruling = Casebook.Rule(Shelf.Of(Sheet), play, Shelf.Today, findings);
        Assert.Empty(findings);
        return ruling!;
    }

    [Fact]
    public void A_fact_nobody_spoke_of_is_taken_as_usual_and_named()
    {
        var ruling = Rule("act is kicked");
        Assert.True(ruling.IsRuled);
        Assert.Equal(["meant"], ruling.TakenAsUsual.Select(f => f.Name));
        Assert.Equal("not out", ruling.Find("runner")!.Values.Single());
        Assert.Contains(WhatIf.Nearest(ruling), c => c.Had.Single().Fact.Name == "meant");
    }

    [Fact]
    public void What_was_said_counts_before_the_usual() => Assert.Equal("out", Rule("act is kicked", "meant is yes").Find("runner")!.Values.Single());

    [Fact]
    public void What_the_moments_have_begun_to_tell_is_not_taken_as_usual()
    {
        var play = new Play { File = "a.play", Code = "softball/12U", Sheet = "made up" };
        play.Given.Add(new("act is kicked", 1));
        play.Happened.Add(new("runner swerves", 2));
        var ruling = Casebook.Rule(Shelf.Of(Sheet), play, Shelf.Today, [])!;
        Assert.False(ruling.IsRuled);
        Assert.Empty(ruling.TakenAsUsual);
    }

    [Fact]
    public void What_does_not_matter_is_not_taken() => Assert.Empty(Rule("act is hit").TakenAsUsual);

    [Fact]
    public void Somebody_who_can_be_asked_is_asked()
    {
        var table = Shelf.Table("softball/12U", "made up", Shelf.Of(Sheet));
        var situation = Situation.Unknown(table.Sheet).With(0, 2UL);
        Assert.Equal("meant", Questions.Next(table, situation)!.Name);
        Assert.Equal(2, Umpire.Rule(table, situation).Find("runner")!.Values.Count);
    }

    [Fact]
    public void Where_somebody_can_be_hurt_nothing_is_taken_as_usual()
    {
        Assert.Contains(Checker.Check(Shelf.Of(Sheet.Replace("group: running", "group: safety"))), f => f.Kind == FindingKind.ForbiddenChange);
        Assert.DoesNotContain(Shelf.Codes.Sheets.Where(s => s.Group == "safety").SelectMany(s => s.Facts), f => f.Usually is not null);
    }
}
