using Umpirage.District.Pitchers;
using Umpirage.Rules.Plays;

namespace Umpirage.Tests.Pitchers;

/// <summary>
/// The national youth pitching guideline's table by age, retyped: pitches a day, and from which number on one, two, three and four days of rest (page of about 2015;
/// 17-18 by the corrected copy; 19-22 with five days from 106 from memory).
/// </summary>
public class GuidelineTests
{
    private static readonly (int From, int To, int Day, int[] Steps)[] Published =
    [
        (7, 8, 50, [21, 36]), (9, 10, 75, [21, 36, 51, 66]), (11, 12, 85, [21, 36, 51, 66]), (13, 14, 95, [21, 36, 51, 66]),
        (15, 16, 95, [31, 46, 61, 76]), (17, 18, 105, [31, 46, 61, 81]), (19, 22, 120, [31, 46, 61, 81, 106]),
    ];

    [Fact]
    public void Every_age_and_every_number_of_pitches()
    {
        string[] words = ["none", "one day", "two days", "three days", "four days", "five days"];
        var table = Casebook.Table(Shelf.Codes, "baseball/12U", "pitching guideline by age", Arms.Saturday, "test", [])!;
        var (age, thrown) = (table.Sheet.Bound.Facts.Single(f => f.Name == "age"), table.Sheet.Bound.Facts.Single(f => f.Name == "pitches"));
        foreach (var (from, to, day, rest) in Published)
            for (var years = from; years <= to; years++)
                for (var pitches = 0; pitches <= 130; pitches++)
                {
                    var asked = new int[2];
                    asked[age.Index] = table.Sheet.BandOf(age.Index, years);
                    asked[thrown.Index] = table.Sheet.BandOf(thrown.Index, pitches);
                    var line = table.At(asked)!;
                    string Value(string decision) { var term = table.Sheet.Bound.Decisions.Single(d => d.Name == decision); return term.Values[line.Values[term.Index - 2]]; }
                    Assert.Equal((years, pitches, pitches >= day ? "limit reached" : "room left"), (years, pitches, Value("day")));
                    Assert.Equal((years, pitches, words[rest.Count(r => pitches >= r)]), (years, pitches, Value("rest")));
                }
    }

    /// <summary>The divisions' own limits, where a league plays by that table: the day's number, and the first day on which one may pitch again.</summary>
    [Theory]
    [InlineData("BB 9-10", 1), InlineData("BB 11-12", 2), InlineData("BB 13-14", 3), InlineData("BB 15-16", 4)]
    public void The_divisions_follow_it(string division, int row)
    {
        var (_, _, day, rest) = Published[row];
        for (var first = 1; first <= day; first++)
        {
            var answer = Arms.Ask(division, Arms.Saturday, Arms.Line(Arms.Saturday, first, first - 1, 1, game: "next"));
            Assert.Equal(first >= day ? MayPitch.No : MayPitch.Yes, answer.Answer);
            Assert.Equal((first, Arms.Saturday.AddDays(1 + rest.Count(r => first >= r))), (first, answer.AfterToday!.Value));
            Assert.Equal(day - first, answer.Rooms.Single(r => r.Unit == Unit.Pitches).Left);
        }
    }
}
