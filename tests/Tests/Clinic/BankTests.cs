using System.Diagnostics;
using Umpirage.District.Clinic;

namespace Umpirage.Tests.Clinic;

/// <summary>Questions computed from the tables: they exercise every rule, have one right answer, and read like speech.</summary>
public class BankTests
{
    [Fact]
    public void Every_fact_and_decision_has_its_words()
    {
        Assert.Empty(Desk.Findings);
        Assert.Empty(PhraseReader.Missing(Desk.Phrases, Shelf.Codes));
    }

    [Fact]
    public void Every_rule_and_exception_is_exercised_in_both_games_in_under_ten_seconds()
    {
        var findings = new List<Finding>();
        var watch = Stopwatch.StartNew();
        var games = Coverage.Of(Shelf.Codes, Desk.Phrases, findings);
        var seconds = watch.Elapsed.TotalSeconds;
        Assert.Empty(findings);
        Assert.Equal(2, games.Count);
        foreach (var game in games)
        {
            Assert.Empty(game.Missed);
            Assert.True(game.Rules > 1000, game.ToString());
        }
        TestContext.Current.TestOutputHelper?.WriteLine($"bank: {string.Join("; ", games.Select(g => $"{g.Game} {g.Exercised}/{g.Rules} rules and exceptions, {g.Questions} questions, {g.Distinct} different"))}; {seconds:0.0} s");
        Assert.True(seconds < 10, $"{seconds:0.0} s");
    }

    /// <summary>The text of a question goes the way of a play somebody wrote: read as a file, bound to a code by its address, ruled, and held against what it expects.</summary>
    [Fact]
    public void A_thousand_questions_are_ruled_alike_from_their_text_and_their_other_answers_are_wrong()
    {
        var random = new Random(20260516);
        List<Question> sample = [.. Desk.Softball.Questions.Concat(Desk.Baseball.Questions).OrderBy(_ => random.Next()).Take(Folder.Count(1000, 20000))];
        var wrong = new List<string>();
        foreach (var question in sample)
        {
            var findings = new List<Finding>();
            var play = PlayReader.Read(question.Id, question.Play, findings);
            var outcome = Casebook.Hold(Shelf.Codes, play, Shelf.Today);
            wrong.AddRange(findings.Select(f => f.ToString()));
            wrong.AddRange(outcome.Misses);
            // and held against each wrong answer it misses
            foreach (var choice in question.Choices.Where(c => !c.Right))
                if (Casebook.Hold(Shelf.Codes, PlayReader.Read(question.Id, question.Play.Replace($"is {question.Answer} by {question.Rule}", $"is {choice.Text}"), findings), Shelf.Today).AsPublished) wrong.Add($"{question.Id}: '{choice.Text}' is right too");
        }
        Assert.True(sample.Count >= 1000);
        Assert.Empty(wrong);
    }

    [Fact]
    public void Every_question_offers_one_right_answer_and_different_ones()
    {
        foreach (var question in Desk.Softball.Questions.Concat(Desk.Baseball.Questions))
        {
            Assert.Single(question.Choices, c => c.Right);
            Assert.InRange(question.Choices.Count, 2, 4);
            Assert.Equal(question.Choices.Count, question.Choices.Select(c => c.Text.ToLowerInvariant()).Distinct().Count());
            Assert.NotEmpty(question.Source);
            Assert.DoesNotContain("{", question.Situation);
        }
        Assert.Equal(Desk.Softball.Questions.Count, Desk.Softball.Questions.Select(q => q.Id).Distinct().Count());
    }

    [Fact]
    public void A_wrong_answer_says_with_which_fact_it_would_be_right()
    {
        foreach (var question in Desk.Softball.Questions.Where(q => q.Sheet == "double first base"))
            foreach (var choice in question.Choices.Where(c => c.Had is not null)) Assert.DoesNotContain(choice.Had!, question.Situation);
        var near = Desk.Softball.Questions.SelectMany(q => q.Choices).Where(c => !c.Right).ToList();
        // most wrong answers come from a neighbouring ruling, one fact away
        Assert.True(near.Count(c => c.Had is not null) > near.Count / 2, $"{near.Count(c => c.Had is not null)} of {near.Count}");
    }

    [Fact]
    public void Safety_questions_say_that_allowed_is_not_safe()
    {
        var safety = Desk.Baseball.Questions.Where(q => q.Group == "safety").ToList();
        Assert.NotEmpty(safety);
        Assert.All(safety, q => Assert.Contains("not the same as safe", q.Caution!));
    }

    [Fact]
    public void Questions_are_the_same_every_time() =>
        Assert.Equal(Desk.Softball.Questions.Select(q => q.Id), Desk.Of("softball/12U").Questions.Select(q => q.Id));

    [Fact]
    public void Bad_phrases_tell_every_fault_at_once()
    {
        var findings = new List<Finding>();
        PhraseReader.Read([("p.phrases", "Phrases: infield fly\nouts is none: Nobody.\nouts is nine: Nine.\nouts: {n} outs.\n? batter: What?\n? bater: What?\nno colon here\nouts is none: Again.\nbegins with: hit | hitt\n")], Shelf.Codes, findings);
        Assert.Equal(
        [
            "p.phrases, line 3: 'outs is nine' is no fact of 'infield fly' with one of its values; did you mean 'outs is none', 'outs is one' or 'outs is two'?",
            "p.phrases, line 4: 'outs' is no number; write 'fact is value: sentence', 'fact: sentence with {number}' for a number, '? decision: question', 'else decision: answer | answer', 'setting: sentence' or 'begins with: fact | fact'",
            "p.phrases, line 6: 'infield fly' decides no 'bater'; did you mean 'batter'?",
            "p.phrases, line 7: cannot read 'no colon here'; write 'fact is value: sentence', 'fact: sentence with {number}' for a number, '? decision: question', 'else decision: answer | answer', 'setting: sentence' or 'begins with: fact | fact'",
            "p.phrases, line 8: 'outs is none' has a sentence already",
            "p.phrases, line 9: 'infield fly' has no fact 'hitt'; did you mean 'hit'?",
        ], findings.Select(f => f.ToString()));
    }
}
