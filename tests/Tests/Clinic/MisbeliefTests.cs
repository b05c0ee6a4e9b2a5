using Umpirage.District.Clinic;

namespace Umpirage.Tests.Clinic;

/// <summary>What many believe: every belief is ruled by the engine, and is wrong for the code it is taught with.</summary>
public class MisbeliefTests
{
    [Theory]
    [InlineData("softball/12U")]
    [InlineData("baseball/12U")]
    public void Every_belief_is_ruled_otherwise(string address)
    {
        Assert.Empty(Desk.Findings);
        var code = Shelf.Code(Shelf.Codes, address);
        var findings = new List<Finding>();
        var refuted = Refuting.Of(Shelf.Codes, Desk.Phrases, Desk.Misbeliefs, code, findings);
        Assert.Empty(findings);
        Assert.Equal(Desk.Misbeliefs.Where(b => b.Games.Contains(code.Game)).Select(b => b.Said), refuted.Select(r => r.Belief.Said));
        Assert.True(refuted.Count >= 15, $"{refuted.Count}");
        foreach (var one in refuted)
        {
            // by the way a play somebody wrote is held: the ruling shown comes out, and the one believed misses
            Assert.Empty(Casebook.Hold(Shelf.Codes, Play(one, one.Ruled), Shelf.Today).Misses);
            Assert.NotEmpty(Casebook.Hold(Shelf.Codes, Play(one, one.Belief.Expected), Shelf.Today).Misses);
            Assert.NotEmpty(one.By.Source);
        }

        Play Play(Refuted one, string value)
        {
            var faults = new List<Finding>();
            var play = PlayReader.Read("belief", $"Play: belief\ncode: {code.Address}\nsheet: {one.Belief.Sheet}\nsituation: x\nstanding: own\nGiven\n{string.Concat(one.Belief.Given.Select(g => $"  {g}\n"))}Expect\n  {one.Belief.Decision} is {value}\n", faults);
            Assert.Empty(faults);
            return play;
        }
    }

    [Fact]
    public void A_belief_that_is_so_or_cannot_be_ruled_is_told_and_not_taught()
    {
        var findings = new List<Finding>();
        var beliefs = MisbeliefReader.Read("m.txt", """
            Belief: On an infield fly the batter is out.
              sheet: infield fly
              in: softball
              given: hit is high fly; runners is first and second; outs is none; effort is ordinary; called is yes; came down is fair; ball was is not caught; runner's part is none
              believed: batter is out
              source: common practice, no source
            Belief: Too little is said.
              sheet: infield fly
              in: softball
              given: hit is high fly
              believed: infield fly is not in effect
              source: common practice, no source
            """, Shelf.Codes, findings);
        Assert.Empty(findings);
        Assert.Empty(Refuting.Of(Shelf.Codes, Desk.Phrases, beliefs, Shelf.Code(Shelf.Codes, "softball/12U"), findings));
        Assert.Equal(2, findings.Count);
        Assert.Contains("it is so: batter is out", findings[0].Message);
        Assert.Contains("'infield fly' is open", findings[1].Message);
    }

    [Fact]
    public void Every_fault_of_a_belief_is_told_at_once()
    {
        var findings = new List<Finding>();
        Assert.Empty(MisbeliefReader.Read("m.txt", "Belief: one\n  sheet: infield flea\n  in: softball\n  given: a is b\n  believed: ball is dead\n  source: x\n  weight: 3\nBelief: two\n  sheet: infield fly\n  in: cricket\n  given: a is b\n  believed: ball is green\n  source: x\nBelief: three\n  sheet: infield fly\n", Shelf.Codes, findings));
        Assert.Equal(
        [
            "m.txt, line 7: cannot read 'weight: 3'; a belief begins with 'Belief: what is believed', followed by 'sheet', 'in', 'given', 'believed' and 'source', each with a colon",
            $"m.txt, line 2: there is no sheet 'infield flea'; {Words.Offer("infield flea", [.. Shelf.Codes.Sheets.Select(s => s.Name)])}",
            "m.txt, line 10: 'infield fly' says nothing of 'cricket'; write the games in which the belief is wrong",
            "m.txt, line 12: 'ball' never comes out as 'green'; it may be alive, dead or by the rule on a batted ball and a runner",
            .. new[] { "in", "given", "believed", "source" }.Select(k => $"m.txt, line 14: the belief 'three' has no '{k}'; a belief begins with 'Belief: what is believed', followed by 'sheet', 'in', 'given', 'believed' and 'source', each with a colon"),
        ], findings.Select(f => f.ToString()));
    }
}
