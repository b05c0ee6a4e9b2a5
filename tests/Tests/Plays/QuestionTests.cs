using System.Numerics;

namespace Umpirage.Tests.Plays;

/// <summary>The interactive session: how many questions it needs, and that it asks nothing in vain.</summary>
public class QuestionTests
{
    /// <summary>Plays a session with somebody who knows what a play says and nothing more. Returns the questions asked and the end.</summary>
    private static (int Asked, Ruling End) Session(Table table, Situation knows)
    {
        var situation = Situation.Unknown(table.Sheet);
        // what another sheet decides is not asked of a person here; it is part of what the caller says
        for (var t = table.Sheet.FactCount; t < table.Sheet.Terms.Count; t++) situation = situation.With(t, knows.Known[t]);
        var declined = new HashSet<int>();
        var asked = 0;
        while (Questions.Next(table, situation, declined) is { } fact)
        {
            asked++;
            if (BitOperations.PopCount(knows.Known[fact.Index]) < BitOperations.PopCount(situation.Known[fact.Index])) situation = situation.With(fact.Index, knows.Known[fact.Index]);
            if (BitOperations.PopCount(situation.Known[fact.Index]) > 1) declined.Add(fact.Index);
        }
        return (asked, Umpire.Rule(table, situation));
    }

    [Fact]
    public void The_median_session_on_the_published_cases_needs_at_most_four_questions()
    {
        var counts = new List<int>();
        foreach (var file in Shelf.Files(Folder.Of("casebook"), "*.play"))
        {
            var findings = new List<Finding>();
            var play = PlayReader.Read(file, File.ReadAllText(file), findings);
            if (play.Standing == "own" || play.Collection != "" || Casebook.Table(Shelf.Codes, play.Code, play.Sheet, Shelf.Today, file, findings) is not { } table) continue;
            var knows = Timeline.Tell(Situation.Read(table.Sheet, file, play.Given, findings), file, play.Happened, findings);
            if (findings.Count > 0) continue;
            var straight = Umpire.Rule(table, knows);
            var (asked, end) = Session(table, knows);
            // the session gets to the same place as reading the whole play
            if (straight.IsRuled) Assert.Equal(straight.InWords, end.InWords);
            counts.Add(asked);
        }
        counts.Sort();
        Assert.True(counts.Count > 100);
        TestContext.Current.TestOutputHelper?.WriteLine($"{counts.Count} sessions: median {counts[counts.Count / 2]}, mean {counts.Average():F2}, nine in ten {counts[counts.Count * 9 / 10]}, most {counts[^1]}");
        Assert.True(counts[counts.Count / 2] <= 4, $"median {counts[counts.Count / 2]}");
    }

    [Fact]
    public void A_question_is_only_asked_when_two_answers_lead_to_different_rulings()
    {
        var random = new Random(7);
        foreach (var sheet in Shelf.Codes.Sheets)
        {
            var table = Shelf.Table($"{sheet.OnlyFor ?? "softball"}/12U", sheet.Name);
            for (var n = 0; n < 5 && table.Cells.Count > 1; n++)
            {
                var cell = table.Cells[random.Next(table.Cells.Count)];
                var situation = Situation.Unknown(table.Sheet);
                while (Questions.Next(table, situation) is { } fact)
                {
                    Assert.True(CanMatter(table, situation, fact.Index), $"{sheet.Name}: asks '{fact.Term.Question}' in vain");
                    var values = Enumerable.Range(0, fact.Values.Count).Where(v => (cell.Facts[fact.Index] >> v & 1) != 0).ToList();
                    situation = situation.With(fact.Index, 1UL << values[random.Next(values.Count)]);
                }
                Assert.True(Umpire.Rule(table, situation).IsRuled, sheet.Name);
            }
        }
    }

    /// <summary>Whether two cases exist that differ in this fact alone and are ruled differently. Looks at every pair of lines.</summary>
    private static bool CanMatter(Table table, Situation situation, int fact)
    {
        var lines = Umpire.Lines(table, situation).ToArray();
        if (lines.Length > 1500) return true; // pairs would be too many; sheets this large are tried further down their sessions
        foreach (var a in lines)
            foreach (var b in lines)
            {
                if (table.OwnDecisions.All(d => a.Values[d] == b.Values[d])) continue;
                var alone = true;
                for (var t = 0; t < table.Sheet.FactCount && alone; t++)
                    alone = t == fact || (a.Facts[t] & b.Facts[t] & situation.Known[t]) != 0;
                if (alone) return true;
            }
        return false;
    }
}
