using System.Text.Json;

namespace Umpirage.Tests.Cli;

/// <summary>The verbs of crews as programs rely on them, on a district of their own. Runs the built program itself.</summary>
public sealed class CrewsContractTests : IDisposable
{
    private readonly OwnDemo demo = new();

    public void Dispose() => demo.Dispose();

    private (int Code, string Out, string Error) Run(params string[] words) => demo.Run(words.Prepend("crews"));

    [Fact]
    public void Why_tells_every_reason_and_exits_1_for_no()
    {
        var (code, text, _) = Run("why", "umpire-f5", "W06-BB910-10", "plate", "--heat", "102.9");
        Assert.Equal(1, code);
        Assert.Contains("Odile Harrowmere may not have the plate:", text);
        Assert.Contains("heat index 102.9 F: 0.1 below the danger band", text);
        Assert.Contains("instead: the bases from 14:20 on", text);
        (code, text, _) = Run("why", "umpire-f9-s", "S-F9", "base", "--json");
        using var read = JsonDocument.Parse(text);
        Assert.True(code == 0 && read.RootElement[0].GetProperty("may").GetBoolean());
    }

    [Fact]
    public void Subs_shortly_before_a_game_tells_whom_to_call()
    {
        var (code, text, _) = Run("subs", "S-F9", "--at", "17:40", "--away", "umpire-f9-p=14,umpire-f9-q=5,umpire-f9-r=9,umpire-f9-s=22,umpire-f9-t=6,umpire-f9-u=11");
        Assert.Equal(0, code);
        Assert.Equal(["call Bram Ravensholt for the plate, there at 17:54", "call Hana Underfell for the base, there at 18:02", "one umpire alone until 18:02"], text.Split('\n').Skip(1).Take(3));
        Assert.DoesNotContain("Kirkmallow", text);
    }

    [Fact]
    public void All_that_is_wrong_with_the_words_is_told_at_once()
    {
        var (code, _, error) = Run("slove", "--week", "soon", "--seconds", "0", "--oops", "x");
        Assert.Equal(2, code);
        foreach (var said in new[] { "there is no 'crews slove'", "--week: found 'soon'; allowed is a day written 2026-05-18", "--seconds: found '0'", "there is no option '--oops'", "write: ./umpirage crews solve" }) Assert.Contains(said, error);
        Assert.Contains("there is no game 'W06-BB910-1O'; did you mean", Run("subs", "W06-BB910-1O").Error);
        Assert.Contains("there is no person 'umpire-f55'", Run("why", "umpire-f55", "S-F9").Error);
    }

    [Fact]
    public void A_week_is_solved_told_and_kept_only_when_asked()
    {
        var (code, text, _) = Run("solve", "--week", "2026-05-18", "--seconds", "4");
        Assert.Equal(1, code);
        Assert.StartsWith("168 games, 272 places required: ", text);
        Assert.Contains("recounted: 0 against safety, 0 against rules", text);
        Assert.EndsWith("not saved; add --save", text.TrimEnd());
        using (var look = demo.Place.Open()) Assert.DoesNotContain(look.Assignments.ToList(), a => a.Game.StartsWith("W07") && a.Person is not null);
        Assert.EndsWith("saved", Run("solve", "--week", "2026-05-18", "--seconds", "4", "--save").Out.TrimEnd());
        using (var look = demo.Place.Open()) Assert.True(look.Assignments.Count(a => a.Game.StartsWith("W07") && a.Person != null) > 150);
        (code, text, _) = Run("check", "--week", "2026-05-18");
        Assert.Equal(0, code);
        Assert.Contains("0 against safety, 0 against rules", text);
        (code, text, _) = Run("forecast", "--week", "2026-05-18", "--json");
        using var read = JsonDocument.Parse(text);
        Assert.Equal((code, true), (1, read.RootElement.GetProperty("filled").GetInt32() < read.RootElement.GetProperty("required").GetInt32()));
    }
}
