using Umpirage.District.Cards;
using Umpirage.Rules.Ground;

namespace Umpirage.Tests.Carried;

/// <summary>Plans of cards are read, or every fault is told at once.</summary>
public class PlanTests
{
    [Fact]
    public void Every_plan_of_the_codes_folder_can_be_read_and_made_for_every_game()
    {
        Assert.Equal(["conduct", "crew", "field", "gear", "heat", "line-up", "pitching", "plate", "protest", "protest-form", "weather"], Deck.Plans.Select(p => p.Name).Order());
        foreach (var game in Deck.Games) Assert.Equal(Deck.Plans.Count, Deck.Of(game).Count);
    }

    [Fact]
    public void All_faults_of_a_plan_are_told_with_their_lines_and_what_may_stand_there()
    {
        var findings = new List<Finding>();
        var plan = CardPlanReader.Read("bad.card", """
            Card: bad
            title: Bad
            leaf: board
            make: heat step
            caution: rain
            appeals: no new inning after = x
            time limit: no new innings = x
            time limit: weather delay stops the clock = x | maybe = y
            faults: bat, bat conditions = {list}
            blank 99 rows of 2 mm: name
            write 40: much
            before noon: rest
            nonsense
            """, Shelf.Codes, findings);
        Assert.Null(plan);
        Assert.Equal(
        [
            "bad.card, line 3: there is no leaf 'board'; it may be card or sheet",
            "bad.card, line 4: nothing can be made by the name 'heat step'; did you mean 'heat steps'?",
            "bad.card, line 5: there is no caution 'rain'; it may be arms, gear, lightning, heat or dark",
            "bad.card, line 6: 'appeals' is neither a word of this file nor a sheet; did you mean 'appeal'?",
            "bad.card, line 7: the sheet 'time limit' has no value 'no new innings'; it may be no new inning after, kind of limit used, clock starts at, new inning begins, weather delay stops the clock, hard stop after, level when the time is up, score of an unfinished inning, too few innings make a game once the time is up or known",
            "bad.card, line 8: 'weather delay stops the clock' has no value 'maybe'; it may be yes or no",
            "bad.card, line 9: the sheet 'bat' has no fact 'bat conditions'; did you mean 'bat condition'?",
            "bad.card, line 10: write 'blank 9 rows of 8 mm: column 3 | column 1'; 1 to 40 rows of 4 to 30 mm",
            "bad.card, line 11: 'write 40' says no number of lines from 1 to 20; write 'write 2: …'",
            "bad.card, line 12: 'before noon' says no number of minutes from 1 to 240; write 'before 30: …'",
        ], findings.Take(10).Select(f => f.ToString()));
        Assert.StartsWith("bad.card, line 13: cannot read 'nonsense'; write 'Part: heading'", findings[10].ToString());
        Assert.Equal(11, findings.Count);
    }

    [Fact]
    public void A_plan_without_a_name_is_none()
    {
        var findings = new List<Finding>();
        Assert.Null(CardPlanReader.Read("bare.card", "Part: nothing", Shelf.Codes, findings));
        Assert.Contains("a card has a name and a title", Assert.Single(findings).Message);
    }

    [Fact]
    public void Words_follow_the_value_of_the_code()
    {
        var findings = new List<Finding>();
        var plan = CardPlanReader.Read("a.card", """
            Card: a
            title: A
            leaf: sheet
            Part: Empty
            Part: Time
            time limit: no new inning after = After {time}, {number}, {value}. | none = No limit.
            and regulation game: full game = {value}.
            balk: known = - | yes = Balks. | no = No balks.
            before 30: Be there.
            """, Shelf.Codes, findings)!;
        Assert.Empty(findings);
        string[] Said(string game) => [.. Deck.Make(plan, Deck.Game(game)).Parts.Select(p => p switch { CardPart.Line l => l.Words, CardPart.Heading h => h.Words, _ => "" })];
        // 105 min and 6 innings in the district's baseball, 100 min in the game at Tarnholt (codes/layers, codes/sheets)
        Assert.Equal(["Time", "After 1:45, 105, 105 min. 6 innings.", "Balks.", "17:00 Be there."], Said("S-F4"));
        Assert.Equal(["Time", "After 1:40, 100, 100 min. 6 innings.", "No balks.", "18:30 Be there."], Said("S-F6"));
    }
}
