using Umpirage.District.Cards;
using Umpirage.District.People;
using Umpirage.Store;

namespace Umpirage.Tests.Carried;

/// <summary>What stands on the cards of the stories, held against the job's own figures, published values and the records.</summary>
public class ContentTests
{
    private static string Text(Card card) => string.Join('\n', Deck.Words(card));

    /// <summary>Which rules (the demonstration's own options): the host's 100 minutes against the guest's 110, no run limit against 4 and 5, courtesy runner for pitcher or catcher against catcher only.</summary>
    [Fact]
    public void Plate_card_of_a_game_between_two_leagues_says_what_each_bench_is_not_used_to()
    {
        var lines = Deck.Of("S-F6", "plate").Parts.OfType<CardPart.Line>().ToList();
        Assert.Equal("Rules: Oslemoor interleague agreement (2026)", lines[0].Words);
        Assert.Equal(["No new inning after 1:40 (100 min)", "No run limit in an inning", "Courtesy runner for: pitcher or catcher"], lines.Skip(1).Take(3).Select(l => l.Words));
        Assert.Contains("Wrenfall League: 110 min", lines[1].Beside);
        Assert.Contains("Tarnholt League: 4 runs", lines[2].Beside);
        Assert.Contains("5 runs", lines[2].Beside);
        Assert.Equal("Tarnholt League: catcher only", lines[3].Beside);
        // first pitch at 19:00, 100 minutes: worked out by hand
        Assert.Contains(Deck.Of("S-F6", "plate").Parts.OfType<CardPart.Key>(), k => k is { Words: "20:40" } && k.Label.Contains("first pitch is at 19:00"));
    }

    [Fact]
    public void Six_to_eight_differences_stand_on_every_plate_card_and_each_differs_from_what_it_names()
    {
        foreach (var key in Deck.Games)
        {
            var card = Deck.Of(key, "plate");
            var start = card.Parts.ToList().FindIndex(p => p is CardPart.Heading { Words: "What differs today" });
            var lines = card.Parts.Skip(start + 1).TakeWhile(p => p is not CardPart.OtherSide).OfType<CardPart.Line>().Where(l => l.Strong).ToList();
            Assert.InRange(lines.Count, 6, 8);
            Assert.All(lines, l => Assert.NotEqual("", l.Beside));
            Assert.Distinct(lines.Select(l => l.Words));
            // what another code has is said in words: a bare yes or no answers nothing at the plate
            Assert.All(lines, l => Assert.DoesNotMatch(": (yes|no)(;|$)", l.Beside));
        }
    }

    /// <summary>The order is that of the plan, first for what is special to the game, then for what is other than usual; counted again here from the codes themselves.</summary>
    [Fact]
    public void Nothing_is_left_out_for_something_of_less_consequence()
    {
        var plan = Deck.Plans.Single(p => p.Name == "plate");
        foreach (var key in Deck.Games)
        {
            var game = Deck.Game(key);
            var day = game.Game.Day;
            var here = Deck.Codes.Of(game.Address, day, [])!.Code;
            var bare = game.Address[..game.Address.IndexOf('+')] + (here.Body is { } body ? $"+{body.Name}" : "");
            var special = game.Benches.Select(b => b.Address).Append(bare).Select(a => Deck.Codes.Of(a, day, [])!.Code).ToList();
            var wanted = plan.Order.Where(s => s.Say(here) is not null && special.Any(o => s.Value(o) is { } v && !string.Equals(v.Word, s.Value(here)!.Value.Word, StringComparison.OrdinalIgnoreCase))).Select(s => s.Say(here)!).Take(8).ToList();
            var said = Deck.Of(key, "plate").Parts.OfType<CardPart.Line>().Where(l => l.Strong).Skip(1).Select(l => l.Words).Take(wanted.Count);
            Assert.Equal(wanted, said);
        }
    }

    /// <summary>60-ft bases: 84 ft 10 1/4 in across (USA SB 2-1 and OBR 2.01 diagrams | published); the tapes of the field card.</summary>
    [Fact]
    public void Field_card_has_the_published_diagonal_and_warns_of_a_diamond_that_is_laid_out_otherwise()
    {
        Assert.Contains("84 ft 10 1/4 in", Text(Deck.Of("S-F4", "field")));
        Assert.DoesNotContain(Deck.Of("S-F4", "field").Parts, p => p is CardPart.Note);
        // the circle is softball's (radius 8 ft, field layout pages | published); baseball's card does not speak of one
        Assert.Contains("8 ft from the middle of the plate's front edge", Text(Deck.Of("S-F6", "field")));
        Assert.DoesNotContain("pitcher's circle", Text(Deck.Of("S-F4", "field")));
        var game = Deck.Game("S-F4");
        var card = Deck.Make(Deck.Plans.Single(p => p.Name == "field"), game with { Diamond = game.Diamond with { BasePath = 80 } });
        var note = Assert.Single(card.Parts.OfType<CardPart.Note>());
        Assert.Contains("asks for 60 ft", note.Words);
        Assert.Contains("on record with 80 ft", note.Words);
    }

    /// <summary>Story F1: 7 innings on Thursday, 5 this morning; may pitch, 7 left (the job's figures). An opponent sees no history.</summary>
    [Fact]
    public void Pitching_sheet_says_who_may_pitch_and_what_is_left_and_keeps_the_history_to_itself()
    {
        var card = Deck.Of("S-F1-SAT", "pitching");
        using var store = Deck.Open();
        var place = store.RosterPlaces.Single(r => r.Player == "TAR-SB12U-2-04");
        var name = store.Players.Find(place.Player)!.Name;
        var row = card.Parts.OfType<CardPart.Grid>().SelectMany(g => g.Rows).Single(r => r[1] == name && r[0] == place.Jersey.ToString());
        Assert.Equal("YES", row[2]);
        Assert.StartsWith("7 innings left of 12 today", row[3]);
        Assert.DoesNotContain("14 May", Text(card));
        Assert.DoesNotContain("S-F1-THU", Text(card));
        Assert.Contains("Legal is not safe", Text(card));
        // both rosters whole, by given name and letter
        var rosters = store.RosterPlaces.Count(r => r.Team == "TAR-SB12U-2" || r.Team == "PEL-SB12U-3");
        Assert.Equal(rosters, card.Parts.OfType<CardPart.Grid>().Where(g => g.Columns[1].Head == "Pitcher").Sum(g => g.Rows.Count));
    }

    /// <summary>The wait after thunder is 30 minutes (NFHS sports medicine guideline, rev. Oct 2014 | published); danger from 103 F (US weather service heat-index chart | published).</summary>
    [Fact]
    public void Weather_and_heat_cards_state_the_wait_the_shelter_and_the_steps()
    {
        var weather = Text(Deck.Of("S-F4", "weather"));
        Assert.Contains("Wait 30 min from the last sign", weather);
        Assert.Contains("Dugouts, sheds, open shelters and trees are no shelter", weather);
        Assert.Contains("not lit", weather);
        var rows = Deck.Of("S-F4", "heat").Parts.OfType<CardPart.Grid>().First().Rows;
        Assert.Equal(["80 F", "90 F", "103 F", "125 F"], rows.Select(r => r[0]));
        Assert.All(rows.Skip(2), r => Assert.Equal("stops", r[2]));
    }

    /// <summary>Story F8, the youth baseball bat standard from 2018 (published): its own mark, and a bat of another body does not carry it.</summary>
    [Fact]
    public void Gear_card_says_carries_the_mark_and_never_that_a_piece_is_safe()
    {
        foreach (var key in Deck.Games) foreach (var card in Deck.Of(key)) Assert.DoesNotMatch("(?i)(?<!not |is not )\\bsafe\\b", Text(card).Replace("Legal is not safe", ""));
        var gear = Text(Deck.Of("S-F4", "gear"));
        Assert.Contains("wood-like youth standard", gear);
        Assert.Contains("mark of another body only", gear);
        Assert.Contains("in doubt it stays out", gear);
    }

    /// <summary>Story F7: a judgment may not be protested, a rule wrongly applied may; a pitch closes it.</summary>
    [Fact]
    public void Protest_card_says_what_may_be_protested_and_until_when()
    {
        var lines = Deck.Of("S-F4", "protest").Parts.OfType<CardPart.Line>().Select(l => l.Words).ToList();
        Assert.Contains("A judgment: may not be protested.", lines);
        Assert.Contains(lines, l => l.StartsWith("A rule wrongly applied: may be protested"));
        Assert.Contains(lines, l => l.StartsWith("Too late for a rule wrongly applied after:") && l.Contains("pitch thrown"));
        // the district's baseball hands in within 24 hours (the job's figures, F7); its softball by the book's 48
        Assert.Contains("In writing within 24 hours of the end of the game.", lines);
        Assert.Contains("In writing within 48 hours of the end of the game.", Deck.Of("S-F6", "protest").Parts.OfType<CardPart.Line>().Select(l => l.Words));
    }

    [Fact]
    public void A_minor_is_a_given_name_and_a_letter_and_nobody_can_be_reached_by_a_card()
    {
        using var store = Deck.Open();
        var people = store.People.ToList();
        var seen = 0;
        foreach (var key in Deck.Games)
            foreach (var card in Deck.Of(key))
            {
                var text = Text(card);
                Assert.DoesNotContain("555 0", text);
                Assert.DoesNotContain(".example", text);
                Assert.All(people.Where(p => p.IsMinor), p => Assert.DoesNotContain($"{p.Given} {p.Family}", text));
                seen += card.Name == "crew" && text.Contains("Youth base: ") && !text.Contains("Youth base: open") ? 1 : 0;
            }
        Assert.True(seen > 0);
        var crew = Text(Deck.Of("W06-BB910-12", "crew"));
        var youth = people.Single(p => p.Key == "youth-f12");
        Assert.Contains($"Youth base: {youth.Given} {youth.Family[0]}.", crew);
        Assert.Contains("the adult for the youth umpire", crew);
    }

    [Fact]
    public void A_youth_umpire_without_an_adult_named_is_warned_of()
    {
        var card = Deck.Make(Deck.Plans.Single(p => p.Name == "crew"), Deck.Game("W06-BB910-12") with { Coordinator = null });
        Assert.Contains(card.Parts.OfType<CardPart.Note>(), n => n.Words.Contains("no adult is named"));
    }

    [Fact]
    public void Crew_and_pitchers_go_only_to_whom_they_may_be_named()
    {
        var open = new CardReader(false, false, false, CrewSight.All);
        var game = Deck.Game("W06-BB910-12", open);
        Assert.Empty(game.Crew);
        Assert.Empty(game.Staffs);
        Assert.Null(game.Coordinator);
        Assert.Equal(["crew", "pitching"], Deck.Plans.Where(p => !open.May(p)).Select(p => p.Name).Order());
        Assert.DoesNotContain(Deck.Plans, p => !CardReader.All.May(p));
    }

    [Fact]
    public void The_stamp_changes_with_the_code_the_day_and_any_value_of_it()
    {
        var stamp = Deck.Of("S-F6", "plate").Stamp;
        Assert.Equal(("softball/12U+interleague(Tarnholt,Wrenfall)", "Oslemoor interleague agreement (2026)", new DateOnly(2026, 5, 16)), (stamp.Address, stamp.Edition, stamp.Day));
        Assert.NotEqual(stamp.Digest, Deck.Of("S-F1-SAT", "plate").Stamp.Digest);
        Assert.NotEqual(stamp.Digest, CardStamp.Of(Deck.Codes.Of(stamp.Address, stamp.Day.AddDays(1), [])!.Code).Digest);
        Assert.Equal(stamp.Digest, CardStamp.Of(Shelf.Read(Folder.Of("codes")) is var again ? new CardCodes(again).Of(stamp.Address, stamp.Day, [])!.Code : null!).Digest);
        var changed = Rules.Codes.Codebook.Read(("roster.txt", Shelf.RosterText), Shelf.Files(Folder.Of("codes"), "*.sheet").Concat(Shelf.Files(Folder.Of("codes"), "*.layer"))
            .Select(f => new Rules.Codes.SourceText(Path.GetFileName(f), File.ReadAllText(f).Replace("= 100 min | Tarnholt options 2026, 1", "= 95 min | Tarnholt options 2026, 1"))));
        Assert.NotEqual(stamp.Digest, new CardCodes(changed).Of(stamp.Address, stamp.Day, [])!.Stamp.Digest);
    }
}
