using Umpirage.District.Clock;

namespace Umpirage.Tests.Clock;

/// <summary>What is said of a clock file that cannot be used: every fault at once, each with its line and what may stand there.</summary>
public class ClockFileTests
{
    [Fact]
    public void Every_fault_is_told_at_once()
    {
        var text = """
            Clock: BB-12 on 2026-02-30
            place: 91.40 N 88.10 W, America/Chicgo
            lit: sometimes
            lights: no
            dark: 25:05
            dark: 20:05
            17:32 first pitsch
            1740 thunder
            17:50 inning 0 top over
            18:00 play stopped: stormy
            18:01 heat 194 F 150 %
            18:02 not before 30:00
            18:03
            """;
        string[] told =
        [
            "test.clock, line 4: cannot read 'lights: no'; the head has Clock, place, lit, scheduled and dark, each with a colon, and every other line begins with a time",
            "test.clock, line 6: 'dark' stands here and in line 5; write it once",
            "test.clock, line 1: '2026-02-30' is not a day from 1900 to 2100; write 'Clock: BB-12 on 2026-05-16'",
            "test.clock, line 2: '91.40 N' is not a side of the earth; write 0 to 90 and N or S",
            "test.clock, line 2: there is no time zone 'America/Chicgo'; did you mean 'America/Chicago'?",
            "test.clock, line 3: 'lit' is 'sometimes'; it may be yes or no",
            "test.clock, line 5: '25:05' is not a time; write 17:32; after midnight 2026-05-17 00:10; where a time comes twice 01:30-05:00",
            "test.clock, line 7: cannot read '17:32 first pitsch'; did you mean 'first pitch'?",
            "test.clock, line 8: '1740' is not a time; write 17:32; after midnight 2026-05-17 00:10; where a time comes twice 01:30-05:00",
            "test.clock, line 9: there is no inning 0; it may be 1 to 40",
            "test.clock, line 10: play is stopped for 'stormy'; did you mean 'storm'?",
            "test.clock, line 11: the air temperature is '194 F'; it may be 0 to 130 F (-17.8 to 54.4 C)",
            "test.clock, line 11: the relative humidity is '150 %'; it may be 0 to 100 %",
            "test.clock, line 12: '30:00' is not a time; write 17:32; after midnight 2026-05-17 00:10; where a time comes twice 01:30-05:00",
            "test.clock, line 13: cannot read '18:03'; write a time and what happened, as '17:32 first pitch'",
        ];
        Assert.Equal(told, Evening.Faults(text));
    }

    [Theory]
    [InlineData("17:32 first pitch\n17:40 first pitch", "line 5: the first pitch is at 17:40 here and at 17:32 in line 4; it may be once")]
    [InlineData("17:30 score 1-0\n17:32 first pitch", "line 4: 'score 1-0' at 17:30 stands before any first pitch; write the first pitch, or a later time here")]
    [InlineData("17:32 first pitch\n17:40 play resumed", "line 5: play is resumed at 17:40, but it was not stopped; write when it was stopped, at an earlier minute")]
    [InlineData("17:32 first pitch\n17:40 play stopped: rain\n17:45 play stopped: storm", "line 6: play is stopped at 17:45, but it was stopped already in line 5; write when it was resumed between them")]
    [InlineData("17:32 first pitch\n17:40 play stopped: rain\n17:45 inning 1 top over", "line 6: 'inning 1 top over' at 17:45 stands while play was stopped (line 5); it may stand before the stop or after play is resumed")]
    [InlineData("17:32 first pitch\n17:50 inning 2 top over\n17:55 inning 1 bottom over", "line 6: 'inning 1 bottom over' at 17:55 comes after top 2 was over (line 5); innings go forward")]
    [InlineData("17:32 first pitch\n17:50 score 2-0\n17:55 score 1-0", "line 6: the score 1-0 at 17:55 is less than 2-0 before; visitors stand first; where a run was taken back, mend the earlier line")]
    [InlineData("17:32 first pitch\n17:50 stopped for good\n17:55 score 1-0", "line 6: 'score 1-0' at 17:55 stands after the game was stopped for good in line 5; nothing of play may follow")]
    [InlineData("17:32 first pitch\n17:50 not before 17:40", "line 5: 'not before 17:40' is said at 17:50; the moment must be later, since a wait is only ever made longer")]
    [InlineData("17:32 first pitch\n17:35 plate meeting over", "line 5: the plate meeting is over at 17:35, after the first pitch in line 4; it may only be before")]
    public void What_cannot_all_be_true_is_a_finding(string events, string told) => Assert.Equal("test.clock, " + told, Evening.Faults(Evening.Head() + events).Single());

    [Fact]
    public void An_empty_file_says_what_a_clock_needs() => Assert.Equal(
    [
        "test.clock: the file does not say which game's clock it is; add 'Clock: BB-12 on 2026-05-16'",
        "test.clock: the file names no place; add 'place: 41.40 N 88.10 W, America/Chicago'",
        "test.clock: the file tells no event; write one a line, as '17:32 first pitch'",
    ], Evening.Faults(""));

    [Fact]
    public void A_code_that_is_not_there_is_told()
    {
        var findings = new List<Finding>();
        Assert.Null(Evening.Try(Evening.Head("BB-13") + "17:32 first pitch\n", null, Shelf.Codes, findings));
        Assert.Contains("'BB-13@2026-05-16' is not a code", findings.Single().Message);
    }

    [Fact]
    public void The_page_on_clocks_shows_a_clock_that_can_be_read_and_every_event_it_names()
    {
        var page = File.ReadAllText(Folder.Of("codes", "CLOCKS.md"));
        var clock = page.Split("```")[1].Trim();
        Assert.Equal("19:10", Evening.At(clock).Storm.EarliestRestart!.Clock);
        // each `form` of the second table, alone behind a time; those that need others first are only held against unreadable lines
        var forms = page[page.IndexOf("| event |", StringComparison.Ordinal)..].Split('\n').TakeWhile(l => l.StartsWith('|')).Skip(2).SelectMany(l => l.Split('|')[1].Split('`').Where((_, i) => i % 2 == 1)).ToList();
        Assert.True(forms.Count > 15);
        foreach (var form in forms)
        {
            var findings = new List<Finding>();
            ClockFileReader.Read("test.clock", Evening.Head() + $"17:32 first pitch\n18:00 {form}\n", findings);
            Assert.DoesNotContain(findings, f => f.Kind == FindingKind.UnreadableLine);
        }
    }
}
