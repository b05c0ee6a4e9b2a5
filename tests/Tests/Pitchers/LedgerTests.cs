using Umpirage.District.Pitchers;

namespace Umpirage.Tests.Pitchers;

/// <summary>What a ledger keeps, and that neither the order of lines nor anybody's clock matters.</summary>
public class LedgerTests
{
    private static readonly DateOnly Day = new(2026, 5, 16);

    [Fact]
    public void Two_counters_stay_two_and_the_answer_says_when_it_matters()
    {
        var seventy = Arms.Line(Day.AddDays(-3), 70, 65, 4);
        var answer = Arms.Ask("BB 11-12", Day, seventy, seventy with { Counter = "visitors' book", Pitches = 66, BeforeLastBatter = 60 });
        Assert.Equal((MayPitch.No, MayPitch.No), (answer.Answer, answer.ByTheSmaller)); // three days and four both bar after two full days
        Assert.Equal([66, 70], Assert.Single(answer.Disputed).Lines.Select(l => l.Pitches).Order());
        var aDayLater = Arms.Ask("BB 11-12", Day.AddDays(1), seventy, seventy with { Counter = "visitors' book", Pitches = 66, BeforeLastBatter = 60 });
        Assert.Equal((MayPitch.No, MayPitch.Yes), (aDayLater.Answer, aDayLater.ByTheSmaller));
        Assert.True(aDayLater.Depends);
    }

    [Fact]
    public void A_correction_stands_in_the_place_of_the_first_count_and_both_are_kept()
    {
        var first = Arms.Line(Day.AddDays(-1), 40, 39, 3);
        Appearance[] lines = [first, first with { Entry = 2, Pitches = 20, BeforeLastBatter = 17 }];
        Assert.Equal(20, Arms.Ledger("baseball", "12U", lines).Outings[0].Most.Pitches);
        Assert.Equal(MayPitch.Yes, Arms.Ask("BB 11-12", Day, lines).Answer);
        Assert.Equal(MayPitch.No, Arms.Ask("BB 11-12", Day, first).Answer);
    }

    [Fact]
    public void The_other_sport_is_counted_apart()
    {
        var code = Arms.Code("BB 11-12");
        var ledger = Ledger.Of("7", [Arms.Line(Day.AddDays(-1), 90, 88, 7, game: "soft")], key => new(key, "softball", "12U", 600));
        Assert.Equal(MayPitch.Yes, Eligible.Of(ledger, code, code, new(Day)).Answer);
        Assert.Single(ledger.Outings);
    }

    /// <summary>A full game in the older division first bars from the younger; one in the younger leaves the older division's limit. One community youth code, 2022, common practice.</summary>
    [Fact]
    public void Two_divisions_on_one_day()
    {
        Eligibility Ask(string there, string here, int innings)
        {
            var code = Arms.Code(here);
            return Eligible.Of(Ledger.Of("7", [Arms.Line(Day, 60, 59, innings, game: "there")], key => new(key, "softball", there, 540)), code, code, new(Day, new("here", "softball", code.Code.Division, 840)));
        }
        Assert.Equal("Z3c", Assert.Single(Ask("12U", "SB 10U", 6).Bars).Rule);
        Assert.Equal(MayPitch.Yes, Ask("10U", "SB 12U", 6).Answer);
        Assert.Equal(MayPitch.Yes, Ask("12U", "SB 10U", 3).Answer);
        Assert.Equal(MayPitch.No, Ask("12U", "SB 10U", 12).Answer);
    }

    [Fact]
    public void A_suspended_game_is_a_line_for_each_day()
    {
        var began = Arms.Line(Day.AddDays(-2), 40, 38, 3, game: "long");
        var answer = Arms.Ask("BB 11-12", Day, began, began with { Day = Day, Pitches = 10, BeforeLastBatter = 9, Innings = 1 });
        Assert.Equal(10, answer.Rooms.Single(r => r.Unit == Unit.Pitches).Used);
    }

    [Fact]
    public void Four_innings_caught_bar_from_pitching() =>
        Assert.Equal("A1b", Assert.Single(Arms.Ask("BB 11-12", Day, Arms.Line(Day, caught: 4, game: "next")).Bars).Rule);

    [Fact]
    public void The_order_in_which_lines_come_in_does_not_matter() => CsCheck.Check.Sample(CsCheck.Gen.Int[0, int.MaxValue], seed =>
    {
        var dice = new Random(seed);
        var lines = Enumerable.Range(0, 8).SelectMany(d => new[] { Arms.Line(Day.AddDays(-d), dice.Next(0, 90), -1, 0, 0, 0), Arms.Line(Day.AddDays(-d), dice.Next(0, 90), -1, 0, 0, 0, counter: "visitors' book") }).ToArray();
        var shuffled = lines.ToArray();
        dice.Shuffle(shuffled);
        Assert.Equal(Told(Arms.Ask("BB 11-12", Day, lines)), Told(Arms.Ask("BB 11-12", Day, shuffled)));
    }, iter: 500);

    private static string Told(Eligibility e) => $"{e.Answer} {e.ByTheSmaller} {e.NextDay} {e.AfterToday} {string.Join('|', e.Bars)} {string.Join('|', e.Rooms)} {e.NoCatching}";
}
