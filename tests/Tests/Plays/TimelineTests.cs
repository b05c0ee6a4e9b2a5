using System.Numerics;

namespace Umpirage.Tests.Plays;

/// <summary>Facts told by moments in order.</summary>
public class TimelineTests
{
    private static IEnumerable<(Play Play, Table Table)> Told()
    {
        foreach (var file in Shelf.Files(Folder.Of("casebook"), "*.play"))
        {
            var findings = new List<Finding>();
            var play = PlayReader.Read(file, File.ReadAllText(file), findings);
            if (play.Happened.Count > 0 && Casebook.Table(Shelf.Codes, play.Code, play.Sheet, Shelf.Today, file, findings) is { } table) yield return (play, table);
        }
    }

    [Fact]
    public void What_is_unknown_only_shrinks_as_moments_are_added()
    {
        var plays = 0;
        foreach (var (play, table) in Told())
        {
            plays++;
            var before = Situation.Unknown(table.Sheet).Known;
            for (var n = 1; n <= play.Happened.Count; n++)
            {
                var findings = new List<Finding>();
                var known = Timeline.Tell(Situation.Unknown(table.Sheet), play.File, [.. play.Happened.Take(n)], findings).Known;
                Assert.Empty(findings);
                for (var t = 0; t < known.Length; t++) Assert.Equal(0UL, known[t] & ~before[t]);
                before = known;
            }
        }
        Assert.True(plays > 100, $"{plays} plays are told by moments");
    }

    [Fact]
    public void Any_order_of_a_plays_moments_tells_at_most_one_value_of_a_fact()
    {
        var random = new Random(1);
        foreach (var (play, table) in Told())
            for (var n = 0; n < 5; n++)
            {
                var shuffled = play.Happened.OrderBy(_ => random.Next()).ToList();
                var findings = new List<Finding>();
                var known = Timeline.Tell(Situation.Unknown(table.Sheet), play.File, shuffled, findings).Known;
                Assert.DoesNotContain(findings, f => f.Message.Contains("contradicts"));
                for (var t = 0; t < table.Sheet.FactCount; t++) Assert.True(BitOperations.PopCount(known[t]) >= 1);
            }
    }

    [Fact]
    public void Most_published_cases_that_are_told_by_moments_turn_on_them()
    {
        // without its moments such a play is no longer ruled, or ruled otherwise
        var (told, turning) = (0, 0);
        foreach (var (play, table) in Told().Where(p => p.Play.Standing != "own"))
        {
            told++;
            var findings = new List<Finding>();
            var given = Situation.Read(table.Sheet, play.File, play.Given, findings);
            var without = Umpire.Rule(table, given);
            var with = Umpire.Rule(table, Timeline.Tell(given, play.File, play.Happened, findings));
            if (with.InWords != without.InWords) turning++;
        }
        Assert.True(told >= 70 && turning >= told * 9 / 10, $"{turning} of {told}");
    }

    [Fact]
    public void A_moment_that_nobody_knows_is_told_with_its_neighbours()
    {
        var table = Shelf.Table("softball/12U", "leaving the base early");
        var known = table.Sheet.Bound.Moments[0].Alternatives[0];
        var findings = new List<Finding>();
        Timeline.Tell(Situation.Unknown(table.Sheet), "a.play", [new(known + "x", 7), new(known, 8), new(known, 9)], findings);
        Assert.Contains(findings, f => f.Line == 7 && f.Message.Contains($"did you mean '{known}'"));
        Assert.Contains(findings, f => f.Line == 9 && f.Message.Contains("told twice"));
    }

    [Fact]
    public void Two_tellings_that_one_order_could_hold_are_a_conflict()
    {
        const string Text = """
            Sheet: made up
            group: field
            about: nothing
            Moments
              hand leaves ball
              runner leaves base
            Facts
              departure : before < after
                ask: When?
                told by before: runner leaves base
                told by after: hand leaves ball, then runner leaves base
            Decides
              d : a | b
            Rule R1: one
              cite: made up | our own
              when departure is before
              then d is a
            Rule R2: two
              cite: made up | our own
              when departure is after
              then d is b
            """;
        Assert.Contains(Checker.Check(Shelf.Of(Text)), f => f.Kind == FindingKind.Conflict && f.Message.Contains("the same moments may tell"));
        Assert.Empty(Checker.Check(Shelf.Of(Text.Replace("told by before: runner leaves base", "told by before: runner leaves base, then hand leaves ball"))));
    }
}
