using Umpirage.District.Clinic;
using Umpirage.District.Mechanics;

namespace Umpirage.Tests.Mechanics;

/// <summary>The manuals: complete, told alike in cards and questions, and the trainee's question of the stories.</summary>
public class CardTests
{
    private static readonly Codebook Manuals = Codebook.Read(new("roster.txt", File.ReadAllText(Folder.Of("codes", "mechanics", "roster.txt"))),
        Shelf.Files(Folder.Of("codes", "mechanics"), "*.mechanics").Select(f => new SourceText(Path.GetFileName(f), File.ReadAllText(f))));

    private static readonly Spots Places = Spots.Read("spots.txt", File.ReadAllText(Folder.Of("codes", "mechanics", "spots.txt")), [])!;

    /// <summary>Feet from base to base, from the rules' own sheet.</summary>
    private static double Feet(string address) => Shelf.Table(address, "field").Sheet.Values.First(v => v.Key.Name == "base distance").Value.Quantity!.Value;

    private static Card Draw(string manual, string crew, params string[] given)
    {
        var findings = new List<Finding>();
        var card = Cards.Of(Manuals, Places, crew, CodeAddress.Read($"softball/12U+{manual}")!, given, Feet("softball/12U"), Shelf.Today, findings);
        Assert.Empty(findings);
        return card!;
    }

    [Fact]
    public void The_manuals_are_proved_complete() => Assert.Empty(Checker.Check(Manuals));

    /// <summary>"Where do I stand?" Trainee base umpire, 60-ft diamond, runners on first and second, one out, liner through to right-centre (story F11; common practice, no source).</summary>
    [Fact]
    public void The_trainees_question_is_answered_by_both_manuals()
    {
        var card = Draw("Weir", "two umpires", "runners is first and second", "outs is one", "hit is hit through to the outfield", "where is middle");
        Assert.Equal(["infield fly possible"], card.Signs);
        Assert.Equal("a step behind the shortstop, third base side", card.Start.Single(s => s.Umpire == "base umpire").Spot);
        var (baseWork, plate) = (card.Work.Single(w => w.Umpire == "base umpire"), card.Work.Single(w => w.Umpire == "plate umpire"));
        Assert.Equal("goes inside", baseWork.Moves);
        Assert.Equal(["touch of first", "touch of second", "call at first", "call at second", "call at third", "tag-up at first", "tag-up at second"], baseWork.Has);
        Assert.Equal("stays home", plate.Moves);
        Assert.Equal(["fair or foul", "catch", "touch of third", "touch of home", "call at home", "tag-up at third"], plate.Has);
        Assert.Equal([new Variation("call at third", "base umpire", "plate umpire")], card.IfCaught);
        // the other manual: another shoulder of the shortstop, and the ball in the V is the base umpire's
        var other = card.Others.Single();
        Assert.Equal("the Quarry manual (invented)", other.Manual);
        Assert.Equal([new Variation("base umpire starts", "a step behind the shortstop, third base side", "a step behind the shortstop, second base side"), new Variation("catch", "plate umpire", "base umpire")], other.Otherwise);
        // a time play only with two out, an infield fly only with fewer
        Assert.Equal(["time play possible"], Draw("Weir", "two umpires", "runners is first and second", "outs is two", "hit is nothing yet").Signs);
        Assert.Contains("If it is caught: call at third plate umpire.", card.InTenSeconds);
        Assert.All(card.Sources, s => Assert.Contains("common practice, no source", s));
    }

    [Fact]
    public void Spots_lie_where_the_words_say_for_every_base_distance()
    {
        foreach (var (game, division) in new[] { ("softball", "12U"), ("baseball", "18U") })
        {
            var feet = Feet($"{game}/{division}");
            var table = Cards.Table(Manuals, Manuals.Sheet("two umpires")!, CodeAddress.Read($"{game}/{division}+Weir")!, Shelf.Today, [])!;
            var foul = Places.Of("in foul ground behind first", feet, table.Sheet)!;
            // past the base by the manual's 15 feet, in foul ground by its 2: measured along and off the line
            Assert.Equal(feet + 15, (foul.Across + foul.Deep) * Math.Sqrt(0.5), 0.02);
            Assert.Equal(2, (foul.Across - foul.Deep) * Math.Sqrt(0.5), 0.02);
            var shortstop = Places.Of("a step behind the shortstop, third base side", feet, table.Sheet)!;
            Assert.True(shortstop.Across < 0 && shortstop.Deep > feet);
        }
        // every spot a manual names has a place
        foreach (var value in Manuals.Sheets.SelectMany(s => s.Decisions).Where(d => d.Name.EndsWith(" starts")).SelectMany(d => d.Values)) Assert.Contains(value, Places.Names);
    }

    [Fact]
    public void Every_state_has_a_card_in_both_manuals_and_somebody_has_every_base()
    {
        var cards = 0;
        foreach (var sheet in Manuals.Sheets)
            foreach (var manual in (string[])["Weir", "Quarry"])
            {
                var table = Cards.Table(Manuals, sheet, CodeAddress.Read($"softball/12U+{manual}")!, Shelf.Today, [])!;
                foreach (var state in Cards.States(table))
                {
                    cards++;
                    if (cards % 7 > 0) continue; // every seventh is drawn, all are counted
                    var card = Draw(manual, sheet.Name, [.. state]);
                    Assert.NotEmpty(card.InTenSeconds);
                    if (sheet.Name == "one umpire") continue;
                    foreach (var call in (string[])["call at first", "call at second", "call at third", "call at home"]) Assert.Single(card.Work, w => w.Has.Contains(call));
                }
            }
        TestContext.Current.TestOutputHelper?.WriteLine($"{cards} cards of mechanics, two manuals, one to four umpires");
        Assert.True(cards > 600);
    }

    [Fact]
    public void Questions_come_from_the_same_table()
    {
        var findings = new List<Finding>();
        var phrases = PhraseReader.Read(Shelf.Files(Folder.Of("codes", "mechanics"), "*.phrases").Select(f => new SourceText(Path.GetFileName(f), File.ReadAllText(f))), Manuals, findings);
        findings.AddRange(PhraseReader.Missing(phrases, Manuals));
        var games = Coverage.Of(Manuals, phrases, findings);
        Assert.Empty(findings);
        Assert.All(games, g => Assert.Empty(g.Missed));
    }

    [Fact]
    public void What_cannot_be_is_told_with_what_may_be()
    {
        var findings = new List<Finding>();
        Assert.Null(Cards.Of(Manuals, Places, "two umpires", CodeAddress.Read("softball/12U+Weir")!, ["runners is fourth", "outs is one"], 60, Shelf.Today, findings));
        Assert.Equal(3, findings.Count);
        Assert.StartsWith("mechanics: 'runners is fourth' is no fact of 'two umpires' with one of its values", findings[0].ToString());
        findings.Clear();
        Assert.Null(Cards.Of(Manuals, Places, "two umpires", CodeAddress.Read("softball/12U+Weir")!, ["runners is nobody", "outs is one", "hit is steal of second"], 60, Shelf.Today, findings));
        Assert.Equal("mechanics: this cannot be: runners is nobody; outs is one; hit is steal of second", findings.Single().ToString());
    }
}
