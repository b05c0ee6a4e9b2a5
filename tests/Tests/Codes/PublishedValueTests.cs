namespace Umpirage.Tests.Codes;

/// <summary>Values as their sources print them, typed here again by hand, each beside its source.</summary>
public class PublishedValueTests
{
    [Theory]
    // national youth pitching guideline, page of about 2015, table by age; 17-18 as two copies agree
    [InlineData("baseball/10U", "pitcher limits", "pitches a day", "75 pitches")]
    [InlineData("baseball/12U", "pitcher limits", "pitches a day", "85 pitches")]
    [InlineData("baseball/14U", "pitcher limits", "pitches a day", "95 pitches")]
    [InlineData("baseball/18U", "pitcher limits", "pitches a day", "105 pitches")]
    [InlineData("baseball/12U", "rest after pitching", "one day from", "21 pitches")]
    [InlineData("baseball/12U", "rest after pitching", "two days from", "36 pitches")]
    [InlineData("baseball/12U", "rest after pitching", "three days from", "51 pitches")]
    [InlineData("baseball/12U", "rest after pitching", "four days from", "66 pitches")]
    [InlineData("baseball/18U", "rest after pitching", "one day from", "31 pitches")]
    [InlineData("baseball/18U", "rest after pitching", "two days from", "46 pitches")]
    [InlineData("baseball/18U", "rest after pitching", "three days from", "61 pitches")]
    [InlineData("baseball/18U", "rest after pitching", "four days from", "81 pitches")]
    // US softball association field table, Rule 2-1 (undated scan), girls
    [InlineData("softball/10U", "field", "pitching distance", "35 ft")]
    [InlineData("softball/12U", "field", "pitching distance", "40 ft")]
    [InlineData("softball/14U", "field", "pitching distance", "43 ft")]
    [InlineData("softball/18U", "field", "pitching distance", "43 ft")]
    [InlineData("softball/12U", "field", "base distance", "60 ft")]
    // OBR 2.01: distance to the rear point of home; diagonal 127 ft 3 3/8 in (2016 text)
    [InlineData("baseball/18U+OBR", "field", "pitching distance", "60 ft 6 in")]
    [InlineData("baseball/18U+OBR", "field", "second base diagonal", "127 ft 3 3/8 in")]
    // USA Softball 6A-1E (2020 changes); WBSC 4.3 (congress of 2017)
    [InlineData("softball/18U+USA@2020-06-01", "hands together and stepping back", "least time together", "1 s")]
    [InlineData("softball/18U+USA@2020-06-01", "hands together and stepping back", "most time together", "10 s")]
    [InlineData("softball/18U+WBSC@2018-06-01", "hands together and stepping back", "least time together", "2 s")]
    [InlineData("softball/18U+WBSC@2018-06-01", "hands together and stepping back", "most time together", "5 s")]
    // NFHS sports medicine guideline on lightning (rev. Oct 2014); US weather service heat-index categories
    [InlineData("softball/12U", "lightning", "lightning wait", "30 min")]
    [InlineData("baseball/12U", "heat", "extreme caution from", "90 F")]
    [InlineData("baseball/12U", "heat", "danger from", "103 F")]
    // common practice, no source: one community youth code, 2022
    [InlineData("softball/10U+community", "field", "pitching distance", "35 ft")]
    [InlineData("softball/12U+community", "field", "pitching distance", "40 ft")]
    [InlineData("softball/14U+community", "field", "pitching distance", "43 ft")]
    [InlineData("softball/12U+community", "field marks", "circle radius", "8 ft")]
    public void A_value_is_what_its_source_prints(string address, string sheet, string parameter, string value)
    {
        var code = Casebook.Code(Shelf.Codes, address, Shelf.Today, f => Assert.Fail(f))!;
        var found = code.Value(Shelf.Codes.Sheet(sheet)!.Parameters.Single(p => p.Name == parameter))!;
        Assert.True(Quantity.TryRead(value, out var expected));
        Assert.Equal((expected.Value, expected.Unit), (found.Quantity!.Value, found.Quantity.Unit));
    }

    [Theory]
    // both feet off the ground: USA Softball 6A-3k from 2022; NFHS 6-1-2c from 2024 (release of 12 July 2023); NCAA from 2023-24; WBSC 4.3 from 2018
    [InlineData("USA", "2021-06-01", false)]
    [InlineData("USA", "2022-06-01", true)]
    [InlineData("NFHS", "2023-04-01", false)]
    [InlineData("NFHS", "2024-04-01", true)]
    [InlineData("NCAA", "2023-04-01", false)]
    [InlineData("NCAA", "2024-04-01", true)]
    [InlineData("WBSC", "2018-06-01", true)]
    public void The_leap_is_legal_from_the_edition_that_allows_it(string body, string day, bool legal)
    {
        var table = Shelf.Table($"softball/18U+{body}@{day}", "delivery");
        var parameter = table.Sheet.Values.Single(v => v.Key.Name.Contains("air", StringComparison.Ordinal) || v.Key.Name.Contains("leap", StringComparison.Ordinal));
        Assert.Equal(legal, parameter.Value.Value is "legal" or "yes" or "allowed");
    }

    [Theory]
    // runner award on an illegal pitch: NFHS to 2018 one base, from season 2019 none (officials' magazine); USA JO to 2019 one base, from 2020 none (2020 changes)
    [InlineData("NFHS", "2018-04-01", true)]
    [InlineData("NFHS", "2019-04-01", false)]
    [InlineData("USA", "2019-06-01", true)]
    [InlineData("USA", "2020-06-01", false)]
    public void Runners_are_awarded_a_base_only_under_the_old_penalty(string body, string day, bool awarded)
    {
        var play = new Play { File = "test", Code = $"softball/18U+{body}@{day}", Sheet = "illegal pitch penalty" };
        play.Given.AddRange(new[] { "result is strike", "runners is not all advanced", "balls is fewer than three", "ball got away is no", "coach is silent" }.Select((t, i) => new Phrase(t, i)));
        var findings = new List<Finding>();
        var ruling = Casebook.Rule(Shelf.Codes, play, Shelf.Today, findings);
        Assert.Empty(findings);
        Assert.Equal(awarded ? "one base" : "stay", ruling!.Find("penalty for the runners")!.Values.Single());
    }

    [Theory]
    // second-base diagonal = base x square root of two: plain geometry
    [InlineData(60)]
    [InlineData(70)]
    [InlineData(80)]
    [InlineData(90)]
    public void A_diagonal_printed_for_a_square_is_that_of_the_square(double bases)
    {
        foreach (var game in Shelf.Roster.Games)
            foreach (var division in Shelf.Roster.Divisions)
            {
                var code = Shelf.Code(Shelf.Codes, $"{game}/{division}");
                Quantity Of(string name) => code.Value(Shelf.Codes.Sheet("field")!.Parameters.Single(p => p.Name == name))!.Quantity!;
                if (Of("base distance").Value != bases) continue;
                Assert.InRange(Of("second base diagonal").Value, bases * Math.Sqrt(2) - 1.0 / 12, bases * Math.Sqrt(2) + 1.0 / 12);
            }
    }
}
