using System.Diagnostics;
using System.Text.Json;
using Umpirage.District.Clock;

namespace Umpirage.Tests.Cli;

/// <summary>The command line as programs rely on it: names, last lines, exit codes, JSON. Runs the built program itself.</summary>
public class ContractTests
{
    private static (int Code, string Out, string Error) Run(params string[] words)
    {
        var configuration = AppContext.BaseDirectory.Contains("/Release/") ? "Release" : "Debug";
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, RedirectStandardInput = true, WorkingDirectory = Folder.Root };
        start.ArgumentList.Add(Folder.Of("src", "Cli", "bin", configuration, "net10.0", "Umpirage.Cli.dll"));
        foreach (var word in words) start.ArgumentList.Add(word);
        start.Environment["UMPIRAGE_ROOT"] = Folder.Root;
        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var error = process.StandardError.ReadToEndAsync();
        var text = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, text, error.Result);
    }

    private static string Last(string text) => text.TrimEnd().Split('\n')[^1];

    [Fact]
    public void Check_ends_with_0_findings_and_exit_0()
    {
        var (code, text, _) = Run("check");
        Assert.Equal((0, "0 findings"), (code, Last(text)));
    }

    [Fact]
    public void Check_of_broken_codes_counts_them_and_exits_1()
    {
        var folder = Directory.CreateTempSubdirectory().FullName;
        Directory.CreateDirectory(Path.Combine(folder, "sheets"));
        File.Copy(Folder.Of("codes", "roster.txt"), Path.Combine(folder, "roster.txt"));
        File.Copy(Folder.Of("tests", "Tests", "Codes", "bad", "unused-fact.sheet"), Path.Combine(folder, "sheets", "broken.sheet"));
        var (code, text, _) = Run("check", "--codes", folder);
        Assert.Equal((1, "1 findings"), (code, Last(text)));
        Directory.Delete(folder, true);
    }

    [Fact]
    public void Casebook_counts_and_exits_1_when_one_is_ruled_otherwise()
    {
        var folder = Directory.CreateTempSubdirectory().FullName;
        var play = File.ReadAllText(Folder.Of("casebook", "double-first-base", "own-white-only-appealed.play"));
        File.WriteAllText(Path.Combine(folder, "a.play"), play);
        var (code, text, _) = Run("casebook", folder);
        Assert.Equal((0, "1 of 1 ruled as published"), (code, Last(text)));
        File.WriteAllText(Path.Combine(folder, "b.play"), play.Replace("batter-runner is out by R1b", "batter-runner is safe by R1b"));
        (code, text, _) = Run("casebook", folder);
        Assert.Equal((1, "1 of 2 ruled as published"), (code, Last(text)));
        Directory.Delete(folder, true);
    }

    [Fact]
    public void Rule_answers_in_text_and_json()
    {
        var (code, text, _) = Run("rule", "casebook/double-first-base/own-white-only-appealed.play");
        Assert.Equal(0, code);
        Assert.Contains("batter-runner: out", text);
        Assert.Contains("WHAT WOULD CHANGE IT", text);
        (code, text, _) = Run("rule", "casebook/double-first-base/own-white-only-appealed.play", "--json");
        Assert.Equal(0, code);
        using var json = JsonDocument.Parse(text);
        Assert.True(json.RootElement.GetProperty("Ruled").GetBoolean());
    }

    [Fact]
    public void Bank_covers_every_rule_and_exits_0()
    {
        var (code, text, _) = Run("bank", "--coverage");
        Assert.Equal(0, code);
        Assert.Equal(2, text.Split('\n').Count(l => l.Contains("(100 %)")));
        Assert.StartsWith("each question ruled again from its text: 0 findings", Last(text));
        (code, text, _) = Run("bank", "softball/12U", "infield fly", "--json");
        Assert.Equal(0, code);
        using var json = JsonDocument.Parse(text);
        Assert.All(json.RootElement.EnumerateArray(), q => Assert.Equal("infield fly", q.GetProperty("Sheet").GetString()));
    }

    [Fact]
    public void Lesson_writes_four_files_and_keeps_the_instructors()
    {
        var folder = Directory.CreateTempSubdirectory().FullName;
        var (code, text, _) = Run("lesson", "baseball/12U@2026-05-16", "softball/12U@2026-05-16", "--out", folder);
        Assert.Equal(0, code);
        Assert.Contains("slides", text);
        Assert.All((string[])["deck.html", "handout.html", "key.html", "instructor.txt"], f => Assert.True(File.Exists(Path.Combine(folder, f))));
        var own = Path.Combine(folder, "instructor.txt");
        var edited = File.ReadAllText(own) + "\nslide closing note: mine\n  note: bring the spare ball\n";
        File.WriteAllText(own, edited);
        Assert.Equal(0, Run("lesson", "baseball/12U@2026-05-16", "softball/12U@2026-05-16", "--out", folder).Code);
        Assert.Contains("bring the spare ball", File.ReadAllText(own));
        File.AppendAllText(own, "\nwhat is this\n");
        var deck = File.ReadAllText(Path.Combine(folder, "deck.html"));
        (code, _, var error) = Run("lesson", "baseball/12U@2026-05-16", "softball/12U@2026-05-16", "--out", folder);
        Assert.Equal(2, code);
        Assert.Contains("cannot read 'what is this'", error);
        Assert.Equal(deck, File.ReadAllText(Path.Combine(folder, "deck.html")));
        Directory.Delete(folder, true);
    }

    [Fact]
    public void Fit_prints_the_log_likelihood_last()
    {
        var file = Path.GetTempFileName();
        File.WriteAllText(file, "a,b,c,count\n0,0,0,3\n0,0,1,6\n0,1,0,2\n0,1,1,11\n1,0,0,1\n1,0,1,9\n1,1,0,3\n1,1,1,40\n");
        var (code, text, _) = Run("fit", file);
        Assert.Equal(0, code);
        Assert.StartsWith("log-likelihood -", Last(text));
        File.WriteAllText(file, "a,b\n1,2\n");
        Assert.Equal(2, Run("fit", file).Code);
        File.Delete(file);
    }

    [Theory]
    [InlineData("rule", "no-such-file.play")]
    [InlineData("fit")]
    [InlineData("fit", "no-such-file.csv")]
    [InlineData("bank", "sofball/12U")]
    [InlineData("bank", "softball/12U", "no such sheet")]
    [InlineData("lesson", "baseball/12U", "softball/12U")]
    [InlineData("lesson", "baseball/12U", "sofball/12U", "--out", "nowhere")]
    [InlineData("rule")]
    [InlineData("ask", "no such subject")]
    [InlineData("table", "no such sheet")]
    [InlineData("crossover", "softball/12U", "sofball/12U")]
    [InlineData("casebook", "no-such-folder")]
    [InlineData("replay", "no-such-file.game")]
    [InlineData("diamond")]
    [InlineData("diamond", "SB 11U")]
    [InlineData("diamond", "SB 12U", "--pdf")]
    [InlineData("stakeout")]
    [InlineData("survey", "no-such-file.survey")]
    [InlineData("survey", "README.md")]
    [InlineData("gear", "no-such-file.gear")]
    [InlineData("gear", "README.md")]
    [InlineData("replay", "--against", "README.md", "demo/pellwick-at-tarnholt.game")]
    [InlineData("clock", "no-such-file.clock")]
    [InlineData("clock", "README.md")]
    [InlineData("clock", "demo/thunder.clock", "--at", "late")]
    [InlineData("sun", "91", "0", "2026-05-16")]
    [InlineData("sun", "41.4", "-88.1", "2026-05-16", "--zone", "Nowhere")]
    [InlineData("heat", "94")]
    [InlineData("heat", "94", "150")]
    [InlineData("heat", "94", "50", "no such code")]
    [InlineData("chekc")]
    public void Unusable_input_exits_2_and_says_why(params string[] words)
    {
        var (code, _, error) = Run(words);
        Assert.Equal(2, code);
        Assert.NotEmpty(error.Trim());
    }

    [Fact]
    public void Without_arguments_one_screen_of_help_starts_with_an_example()
    {
        var (code, text, _) = Run();
        Assert.Equal(0, code);
        Assert.InRange(text.Split('\n').Length, 5, 30);
        Assert.Contains("./umpirage rule casebook/", text.Split("./umpirage")[1] is var first ? "./umpirage" + first : "");
    }

    [Fact]
    public void Every_example_in_the_help_and_the_readme_exists()
    {
        var readme = File.ReadAllText(Folder.Of("README.md")) + Run().Out;
        foreach (var path in System.Text.RegularExpressions.Regex.Matches(readme, @"(casebook|codes)/[\w./-]+\.(play|sheet|md)").Select(m => m.Value).Distinct())
            Assert.True(File.Exists(Folder.Of(path)), path);
    }

    [Fact]
    public void The_ruling_in_the_readme_is_what_the_program_says()
    {
        var (_, text, _) = Run("rule", "casebook/double-first-base/own-white-only-appealed.play");
        Assert.Contains(text.Trim(), File.ReadAllText(Folder.Of("README.md")));
    }

    [Fact]
    public void Ask_lists_subjects_and_gives_up_politely_when_nobody_answers()
    {
        var (code, text, _) = Run("ask");
        Assert.Equal(0, code);
        Assert.Contains("look-back", text);
        (code, text, _) = Run("ask", "look-back", "softball/12U");
        Assert.Equal(1, code);
        Assert.Contains("ASK NEXT", text);
    }

    [Fact]
    public void Replay_follows_the_demonstration_game()
    {
        var (code, text, _) = Run("replay", "demo/pellwick-at-tarnholt.game");
        Assert.Equal((0, "1 games, 0 with something that cannot have happened"), (code, Last(text)));
        Assert.Contains("goes on: bottom 3, 0 out, bases empty, 2-1", text);
    }

    [Fact]
    public void Replay_against_results_ends_with_the_counts()
    {
        var folder = Directory.CreateTempSubdirectory().FullName;
        // a game of one inning made up here: a home run and three outs; then a walk, and three outs
        File.WriteAllText(Path.Combine(folder, "a.events"), "id,A1\nplay,1,0,p1,00,,HR/7\nplay,1,0,p2,00,,63\nplay,1,0,p3,00,,K\nplay,1,0,p4,00,,8\nplay,1,1,q1,00,,W\nplay,1,1,q2,00,,64(1)3/GDP\nplay,1,1,q3,00,,9\n");
        File.WriteAllText(Path.Combine(folder, "r.csv"), "game_id,visitor_runs,home_runs,outs,innings_line_visitor,innings_line_home,visitor_LOB,home_LOB\nA1,1,0,6,1,0,0,0\n");
        var (code, text, _) = Run("replay", "--against", Path.Combine(folder, "r.csv"), Path.Combine(folder, "a.events"));
        Assert.Equal((0, "1 games: scores 1, line scores 1, outs 1, left on base 1 equal"), (code, Last(text)));
        File.WriteAllText(Path.Combine(folder, "r.csv"), File.ReadAllText(Path.Combine(folder, "r.csv")).Replace("A1,1,0,6", "A1,2,0,6"));
        (code, text, _) = Run("replay", "--against", Path.Combine(folder, "r.csv"), Path.Combine(folder, "a.events"));
        Assert.Equal((1, "1 games: scores 0, line scores 1, outs 1, left on base 1 equal"), (code, Last(text)));
        Directory.Delete(folder, true);
    }

    [Fact]
    public void The_clock_the_sun_and_the_heat_answer_with_their_cautions()
    {
        var (code, text, _) = Run("clock", "demo/thunder.clock", "--at", "18:52");
        Assert.Equal(0, code);
        Assert.Contains("restart not before 19:22", text);
        Assert.Contains(Cautions.Storm, text);
        (code, text, _) = Run("sun", "40.9", "-74.3", "1990-06-25", "--zone", "America/New_York");
        Assert.Equal(0, code);
        Assert.Contains("sunrise     05:26", text); // Almanac for Computers, US Naval Observatory, 1990, worked example
        Assert.Contains(Cautions.Dark, text);
        (code, text, _) = Run("heat", "94", "50", "BB-12");
        Assert.Equal(0, code);
        Assert.Contains("0.1 below the danger band", text);
        Assert.Contains(Cautions.Heat, text);
    }

    [Fact]
    public void A_field_is_told_drawn_staked_and_surveyed()
    {
        var folder = Directory.CreateTempSubdirectory().FullName;
        foreach (var (kind, begins) in ((string, string)[])[("--svg", "<svg"), ("--pdf", "%PDF"), ("--dxf", "  0\nSECTION")])
        {
            var file = Path.Combine(folder, "field" + kind[2..]);
            Assert.Equal(0, Run("diamond", "SB 12U", kind, file).Code);
            Assert.StartsWith(begins, File.ReadAllText(file));
        }
        Assert.Equal(0, Run("diamond", "SB 12U", "--svg", Path.Combine(folder, "a.svg"), "--dxf", Path.Combine(folder, "a.dxf")).Code);
        Assert.True(File.Exists(Path.Combine(folder, "a.svg")) && File.Exists(Path.Combine(folder, "a.dxf")));
        Directory.Delete(folder, true);
        var refused = Run("diamond", "SB 13U", "XX").Error;
        Assert.Contains("SB 12U", refused);
        Assert.Contains("'XX' is not a code", refused);
        Assert.Contains("there is no option '--nope'", Run("diamond", "SB 12U", "--nope").Error);
        Assert.Contains("no-such-folder", Run("diamond", "SB 12U", "--pdf", "no-such-folder/field.pdf").Error);
        Assert.DoesNotContain("IO_", Run("diamond", "SB 12U", "--pdf", "no-such-folder/field.pdf").Error);
        Assert.Contains("84 ft 10 1/4 in", Run("diamond", "SB 12U").Out);
        var (code, text, _) = Run("diamond", "SB 12U", "BB 11-12");
        Assert.Equal(1, code);
        Assert.Contains("CLASH, only 2 in apart", text);
        Assert.Contains("CLASH: the mound of BB 11-12", text);
        Assert.Contains("home to second: 84 ft 10 1/4 in", Run("stakeout", "SB 12U").Out);
        (code, text, _) = Run("survey", "demo/low-field.survey");
        Assert.Equal(1, code);
        Assert.Contains("tape it again", text);
    }

    [Fact]
    public void Gear_conforms_or_does_not()
    {
        var (code, text, _) = Run("gear", "demo/plate-meeting.gear");
        Assert.Equal(1, code);
        Assert.Contains("bat B: OUT", text);
        Assert.Contains("REMOVAL LOG", text);
        Assert.DoesNotContain("safe", text);
    }

    [Theory]
    [InlineData("diamond", "SB 12U", "--json")]
    [InlineData("stakeout", "SB 12U", "--json")]
    [InlineData("survey", "demo/low-field.survey", "--json")]
    [InlineData("gear", "demo/plate-meeting.gear", "--json")]
    [InlineData("crossover", "softball/12U", "baseball/12U", "--json")]
    [InlineData("table", "infield fly", "baseball/10U", "--json")]
    [InlineData("tally", "infield fly", "--json")]
    [InlineData("check", "infield fly", "--json")]
    [InlineData("clock", "demo/thunder.clock", "--at", "18:52", "--json")]
    [InlineData("sun", "41.40", "-88.10", "2026-05-16", "--zone", "America/Chicago", "--json")]
    [InlineData("heat", "94", "50", "BB-12", "--json")]
    [InlineData("heat", "--globe", "78", "110", "94", "--json")]
    public void Json_can_be_read(params string[] words) => Assert.NotEqual(JsonValueKind.Undefined, JsonDocument.Parse(Run(words).Out).RootElement.ValueKind);
}
