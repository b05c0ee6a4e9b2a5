using System.Diagnostics;
using System.Text.Json;
using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.Store;

namespace Umpirage.Tests.Cli;

/// <summary>The verbs of crews as programs rely on them, on a district of their own. Runs the built program itself.</summary>
public sealed class CrewsContractTests(ITestOutputHelper output) : IDisposable
{
    /// <summary>Bytes of a journal that holds more than what opening a store writes.</summary>
    private const int Growing = 65536;

    private readonly OwnDemo demo = new();

    public void Dispose() => demo.Dispose();

    private (int Code, string Out, string Error) Run(params string[] words) => Tell(["crews", .. words]);

    private (int Code, string Out, string Error) Tell(params string[] words) => demo.Run(words);

    private Process Start(params string[] words) => demo.Start(words);

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

    /// <summary>Neither a file nor a backup taken in by a command brings a minor to a game of players of the same age.</summary>
    [Fact]
    public void No_command_saves_a_crew_that_a_safety_rule_bars()
    {
        var file = demo.PathOf("crews.csv");
        File.WriteAllText(file, "game,place,person\nW07-BB1314-01,base,youth-03\n");
        var (code, _, error) = Tell("import", "crews", file);
        Assert.Equal(1, code);
        Assert.Contains("age gap", error);
        using (var look = demo.Place.Open()) Assert.Null(look.Assignments.Find("W07-BB1314-01", "base")!.Person);
        // the same file is taken once it names an adult
        File.WriteAllText(file, "game,place,person\nW07-BB1314-01,base,umpire-001\n");
        Assert.Equal(0, Tell("import", "crews", file).Code);
        using (var look = demo.Place.Open()) Assert.Equal("umpire-001", look.Assignments.Find("W07-BB1314-01", "base")!.Person);
        // a backup that holds it all the same: the place is open when it has been taken in
        var backup = demo.PathOf("backup.zip");
        using (var store = demo.Place.Open())
        {
            store.Actor = "tester";
            store.Put(new Assignment("W07-BB1314-01", "base", "youth-03"));
            store.SaveChanges();
            Backup.Write(store, backup);
        }
        Store.OwnStore.Rest(demo.Place);
        Assert.Equal(0, Tell("restore", backup).Code);
        using (var look = demo.Place.Open()) Assert.Null(look.Assignments.Find("W07-BB1314-01", "base")!.Person);
    }

    /// <summary>Killed at any moment while a week's crews are found and saved: afterwards the week is open as it was, or crewed wholly, and the trail says the same.</summary>
    [Fact]
    public async Task Killed_while_a_week_is_saved_the_old_plan_stands_or_the_new_one()
    {
        var random = new Random(20260518);
        var (rounds, old, whole, wal) = (Folder.Count(3, 60), 0, 0, demo.Place.File + "-wal");
        for (var round = 0; round < rounds; round++)
        {
            int trail;
            using (var store = demo.Place.Open())
            {
                store.Actor = "tester";
                foreach (var place in store.Assignments.Where(a => a.Game.StartsWith("W07") && a.Person != null).ToList()) store.Put(place with { Person = null });
                store.SaveChanges();
                trail = store.Trail.Count();
            }
            Store.OwnStore.Rest(demo.Place);
            using (var solver = Start("crews", "solve", "--week", "2026-05-18", "--seconds", "1", "--save"))
            {
                var said = solver.StandardOutput.ReadToEndAsync();
                var told = solver.StandardError.ReadToEndAsync();
                // two of three when the store's own journal begins to grow, the others anywhere
                var clock = Stopwatch.StartNew();
                if (round % 3 == 2) await Task.Delay(random.Next(200, round == 2 ? 1500 : 6000));
                else while (!solver.HasExited && clock.Elapsed.TotalSeconds < 60 && !(File.Exists(wal) && new FileInfo(wal).Length > Growing)) await Task.Delay(1);
                if (round % 3 == 1) await Task.Delay(random.Next(0, 60));
                if (!solver.HasExited) solver.Kill();
                await solver.WaitForExitAsync();
                await Task.WhenAll(said, told);
            }
            using var look = demo.Place.Open();
            var filled = look.Assignments.Count(a => a.Game.StartsWith("W07") && a.Person != null);
            Assert.Equal(filled, look.Trail.Count() - trail);
            if (filled == 0) { old++; continue; }
            whole++;
            // a hurried search leaves some open, but no half: a half would miss whole nights
            Assert.True(filled >= 200, $"round {round}: {filled} places");
            var plan = CrewPlan.Of(CrewReader.Read(look), UmpiresCodes.For(Shelf.Codes));
            Assert.DoesNotContain(CrewCheck.All(plan).Where(b => b.Game.StartsWith("W07")), b => b.Hold != Hold.Wish);
        }
        output.WriteLine($"{rounds} kills: {old} left the old plan, {whole} the new one");
        Assert.True(old > 0, "nothing was killed in time");
    }
}
