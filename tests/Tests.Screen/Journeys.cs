using Microsoft.EntityFrameworkCore;
using Umpirage.District.Calendar;
using Umpirage.Store;

namespace Umpirage.Tests.Screen;

/// <summary>The demonstration's desk on one kind of database.</summary>
public abstract class DemoDesk(bool postgres) : IAsyncLifetime
{
    public DeskProcess? Desk { get; private set; }

    public async ValueTask InitializeAsync()
    {
        if (!postgres || DeskProcess.Server is not null) Desk = await DeskProcess.Open(postgres, demo: true);
    }

    public async ValueTask DisposeAsync()
    {
        if (Desk is not null) await Desk.DisposeAsync();
    }
}

public sealed class FileDesk() : DemoDesk(postgres: false);

public sealed class ServerDesk() : DemoDesk(postgres: true);

public class JourneysInAFile(FileDesk desk, Browser browser) : Journeys(desk, browser), IClassFixture<FileDesk>;

public class JourneysOnAServer(ServerDesk desk, Browser browser) : Journeys(desk, browser), IClassFixture<ServerDesk>;

/// <summary>What people do at the desk, in a real browser.</summary>
public abstract class Journeys(DemoDesk demo, Browser browser) : AtTheDesk(demo, browser)
{
    [Fact]
    public async Task Today_shows_the_most_urgent_first_and_leads_to_it()
    {
        var page = await Open("/");
        await Assertions.Expect(Heading(page, "Today").First).ToBeVisibleAsync();
        var dues = await page.Locator(".matters .due").AllTextContentsAsync();
        Assert.NotEmpty(dues);
        await page.Locator(".matters a").First.ClickAsync();
        await Assertions.Expect(page.Locator("h1")).ToBeVisibleAsync();
        Assert.DoesNotContain("Nobody here", await page.Locator("h1").TextContentAsync());
    }

    /// <summary>Seven innings on Thursday, a day of rest, five this morning: eligible, seven left, and two more cost the Sunday (one community youth code, 2022, from memory).</summary>
    [Fact]
    public async Task She_threw_on_Thursday_and_the_answer_is_on_one_screen()
    {
        var page = await Open("/pitchers/TAR-SB12U-2?on=2026-05-16&game=S-F1-SAT", phone: true);
        await page.GetByRole(AriaRole.Link, new() { Name = "Edda C." }).ClickAsync();
        await Assertions.Expect(page.Locator(".ruling .lines")).ToContainTextAsync("May pitch");
        await Assertions.Expect(page.Locator(".ruling .lines")).ToContainTextAsync("7 innings left of 12 today");
        await Assertions.Expect(page.Locator(".ruling")).ToContainTextAsync("after 2 more innings (7 today): rest 1 day, may pitch again Mon 18 May");
        await Assertions.Expect(page.Locator(".ruling")).ToContainTextAsync("a pitch in 7 innings on Thu 14 May: rest needed one day, had 1");
    }

    /// <summary>At 83 when the batter stepped in, 87 now, limit 85 (youth baseball leagues' published pitching rules), typed in the dugout.</summary>
    [Fact]
    public async Task At_the_limit_the_batter_is_finished_and_the_next_day_is_told()
    {
        var page = await Open("/pitchers/PEL-BB1112-3/PEL-BB1112-3-01?on=2026-05-16&game=S-F2", "manager-pel-bb1112-3", phone: true);
        await page.GetByLabel("Pitches thrown in this game").FillAsync("87");
        await page.GetByLabel("Of these before the present (or last) batter came up").FillAsync("83");
        await page.GetByLabel("This batter is still at bat").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Ask", Exact = true }).ClickAsync();
        var lines = page.Locator(".ruling .lines");
        foreach (var said in (string[])["May finish this batter, then off the mound", "May pitch again: Thu 21 May", "May not catch any more today"]) await Assertions.Expect(lines).ToContainTextAsync(said);
        // a slip of the hand is told, and nothing is asked with it
        await page.GetByLabel("Of these before the present (or last) batter came up").FillAsync("99");
        await page.GetByRole(AriaRole.Button, new() { Name = "Ask", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("allowed is at most the 87 pitches");
    }

    /// <summary>Begun 17:32, thunder at 18:40 and 18:52: not before 19:22, no new inning after 19:59, 43 minutes to the site's dark at 20:05; not official, suspended (NFHS guideline of October 2014 for the wait; the limits are the district's own).</summary>
    [Fact]
    public async Task Thunder_on_an_unlit_field_is_worked_out_by_pressing_buttons()
    {
        var page = await Open("/clock?game=S-F4", "umpire-050", phone: true);
        await page.GetByLabel("The clock as written").FillAsync((await page.GetByLabel("The clock as written").InputValueAsync()).TrimEnd() + "\ndark: 20:05\n17:45 inning 1 top over, 1-0\n17:58 inning 1 bottom over, 1-1\n18:11 inning 2 top over, 3-1\n18:24 inning 2 bottom over, 3-2\n18:36 inning 3 top over, 4-2\n");
        foreach (var (time, button) in ((string, string)[])[("17:32", "First pitch"), ("18:40", "Thunder"), ("18:40", "Play stopped, storm"), ("18:52", "Thunder")])
        {
            await page.GetByLabel("Time", new() { Exact = true }).FillAsync(time);
            await page.GetByRole(AriaRole.Button, new() { Name = button, Exact = true }).ClickAsync();
        }
        var answer = page.Locator("article.ruling");
        foreach (var said in (string[])["Play is stopped", "Not before 19:22", "No new inning after 19:59", "37 of 105 min left", "43 min at the earliest restart", "Dugouts", "suspended, not complete", "Official game: no"])
            await Assertions.Expect(answer).ToContainTextAsync(said);
        // Enter works it out, and presses nobody's button
        await page.GetByLabel("Time", new() { Exact = true }).FillAsync("19:30");
        await page.GetByLabel("Time", new() { Exact = true }).PressAsync("Enter");
        await Assertions.Expect(page.GetByLabel("The clock as written")).Not.ToHaveValueAsync(new System.Text.RegularExpressions.Regex("19:30"));
    }

    /// <summary>A lesson made, a note kept, and both there when it is made again; the slides turn by key and need nothing that the desk forbids.</summary>
    [Fact]
    public async Task A_lesson_is_made_and_the_instructors_note_stays()
    {
        var page = await Open("/lessons", "umpire-001");
        await page.GetByLabel("They know").SelectOptionAsync("baseball/12U");
        await page.GetByLabel("They learn").SelectOptionAsync("softball/12U");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the lesson" }).ClickAsync();
        await Assertions.Expect(Heading(page, "Softball 12U for those who know Baseball 12U")).ToBeVisibleAsync();
        var lesson = page.Url;
        await page.GetByRole(AriaRole.Link, new() { Name = "Infield fly" }).First.ClickAsync();
        await page.GetByLabel("What you want to say").FillAsync("Tell the one about the wet Saturday.");
        await page.GetByLabel("Seconds", new() { Exact = false }).FillAsync("61");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Tell the one about the wet Saturday.");
        await page.GotoAsync(lesson);
        await page.GetByRole(AriaRole.Link, new() { Name = "Slides", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("section.on h1")).ToHaveTextAsync("Softball 12U");
        await page.Keyboard.PressAsync("ArrowRight");
        await Assertions.Expect(page.Locator("section.on header")).ToContainTextAsync("2 /");
        await page.Keyboard.PressAsync("n");
        await Assertions.Expect(page.Locator("section.on .notes")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".own").First).ToContainTextAsync("wet Saturday");
    }

    /// <summary>Story F11: trainee base umpire, 60-ft diamond, first and second, one out, liner through to right-centre (common practice, no source).</summary>
    [Fact]
    public async Task Where_do_I_stand_shows_both_manuals()
    {
        var page = await Open("/mechanics", "youth-01", phone: true);
        await page.Locator("#runners").SelectOptionAsync("first and second");
        await page.Locator("#outs").SelectOptionAsync("one");
        await page.Locator("#hit").SelectOptionAsync("hit through to the outfield");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show it" }).ClickAsync();
        var cards = page.Locator("article.mechanics");
        await Assertions.Expect(cards).ToHaveCountAsync(2);
        var weir = cards.First;
        foreach (var told in (string[])["infield fly possible", "Start a step behind the shortstop, third base side.", "Then: goes inside.", "Has touch of first, touch of second, call at first, call at second, call at third", "Then: stays home.", "touch of third, touch of home, call at home", "If it is caught: call at third plate umpire.", "The Quarry manual (invented) has it otherwise: base umpire starts: a step behind the shortstop, second base side"])
            await Assertions.Expect(weir).ToContainTextAsync(told);
        await Assertions.Expect(weir).ToContainTextAsync("Bases 60 ft apart");
        await Assertions.Expect(weir.Locator("svg")).ToHaveAttributeAsync("aria-label", new System.Text.RegularExpressions.Regex("Runners on first, second"));
        await page.GetByRole(AriaRole.Link, new() { Name = "Questions from the same table" }).ClickAsync();
        await page.Locator(".answers a").First.ClickAsync();
        await Assertions.Expect(page.Locator(".ruling .lines")).ToBeVisibleAsync();
    }

    /// <summary>94 F and 50 % are 102.9 by the weather service's formula, below its danger band at 103, and the desk says by how little.</summary>
    [Fact]
    public async Task The_heat_index_is_never_rounded_to_the_milder_side_or_the_harsher()
    {
        var page = await Open("/weather");
        await page.GetByLabel("Air in the shade").FillAsync("94");
        await page.GetByLabel("Humidity").FillAsync("50");
        await page.GetByRole(AriaRole.Button, new() { Name = "Work it out" }).ClickAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("102.9 °F");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("0.1 below the danger band");
    }

    [Fact]
    public async Task A_wet_evening_gets_new_times_is_kept_and_taken_back()
    {
        var page = await Open("/schedule/rain?day=2026-06-04");
        await page.GetByLabel("What is closed").SelectOptionAsync("all");
        await page.GetByRole(AriaRole.Button, new() { Name = "Find new times" }).ClickAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("games move, at least", new() { Timeout = 60_000 });
        using (var before = Store()) Assert.Empty(before.Moves.Where(m => m.ToStatus == GameStatus.Moved && m.TakesBack == null));
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep this plan" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Take it back" })).ToBeVisibleAsync();
        var day = new DateTime(2026, 6, 4);
        using (var kept = Store()) Assert.DoesNotContain(kept.Games.Where(g => g.Start >= day && g.Start < day.AddDays(1)).ToList(), g => g.IsAhead);
        await page.GetByRole(AriaRole.Button, new() { Name = "Take it back" }).ClickAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("takes back");
        using var after = Store();
        Assert.Equal(18, after.Games.Where(g => g.Start >= day && g.Start < day.AddDays(1)).AsEnumerable().Count(g => g.IsAhead));
        Assert.All(after.Games.Where(g => g.Start >= day && g.Start < day.AddDays(1)).ToList(), g => Assert.Equal(2, g.Sequence));
    }

    /// <summary>Tarnholt hosts Wrenfall: the district's code, the host's 100 minutes, no run limit, the district's courtesy runner; each bench sees what is other than at home (the demonstration's own options).</summary>
    [Fact]
    public async Task Which_rules_a_game_between_two_leagues_is_under()
    {
        var page = await Open("/games/S-F6", "umpire-050", phone: true);
        var main = page.Locator("main");
        await Assertions.Expect(main).ToContainTextAsync("Oslemoor District softball options (2026)");
        await Assertions.Expect(main).ToContainTextAsync("Oslemoor interleague agreement (2026)");
        await Assertions.Expect(main).ToContainTextAsync("time limit, no new inning after: 100 min");
        await Assertions.Expect(main).ToContainTextAsync("not 110 min");
        foreach (var limit in (string[])["not 4 runs", "not 5 runs"]) await Assertions.Expect(main).ToContainTextAsync(limit);
        await Assertions.Expect(main).ToContainTextAsync("position that may have one");
    }

    /// <summary>From the game to what is said at the plate, to the sheet of pitchers, and to paper; a parent at the fence sees neither crew nor pitchers.</summary>
    [Fact]
    public async Task Cards_of_a_game_are_read_on_the_phone_and_printed()
    {
        var page = await Open("/games/S-F6", "umpire-050", phone: true);
        await page.GetByRole(AriaRole.Link, new() { Name = "Cards to carry" }).ClickAsync();
        var card = page.Locator("article.card");
        await Assertions.Expect(card).ToContainTextAsync("No new inning after 1:40 (100 min)");
        await Assertions.Expect(card).ToContainTextAsync("Wrenfall League: 110 min");
        await Assertions.Expect(card).ToContainTextAsync("20:40");
        await page.GetByText("Other cards of this game").ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Pitching sheet", Exact = true }).ClickAsync();
        await Assertions.Expect(card).ToContainTextAsync("May pitch?");
        foreach (var name in (string[])["Print: Pitching sheet", "Print all"])
        {
            var printed = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Link, new() { Name = name }).ClickAsync());
            var start = new byte[5];
            await using var file = await printed.CreateReadStreamAsync();
            await file.ReadExactlyAsync(start);
            Assert.Equal("%PDF-", System.Text.Encoding.ASCII.GetString(start));
        }
        var fence = await Open("/games/S-F6/cards", "committee-1", phone: true);
        await Assertions.Expect(fence.Locator("article.card")).ToContainTextAsync("What differs today");
        await fence.GetByText("Other cards of this game").ClickAsync();
        foreach (var name in (string[])["Pitching sheet", "Crew card"]) await Assertions.Expect(fence.GetByRole(AriaRole.Link, new() { Name = name })).ToHaveCountAsync(0);
        int[] answers = await Task.WhenAll(((string[])["pitching", "crew", "plate"]).Select(async c => (await fence.APIRequest.GetAsync($"/games/S-F6/cards/{c}.pdf")).Status));
        Assert.Equal([404, 404, 200], answers);
    }

    [Fact]
    public async Task A_count_is_corrected_by_adding_and_both_stay()
    {
        var page = await Open("/pitchers/TAR-SB12U-2/TAR-SB12U-2-04?on=2026-05-16&game=W06-SB12U-02");
        await page.GetByText("Keep a count, or correct one").ClickAsync();
        var form = page.Locator("form[action='/pitchers/count']");
        await form.GetByLabel("Pitches", new() { Exact = true }).FillAsync("63");
        await form.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await Assertions.Expect(page.Locator("table")).ToContainTextAsync("correction 1");
        using var store = Store();
        var lines = store.Appearances.AsNoTracking().Where(a => a.Game == "W06-SB12U-02" && a.Player == "TAR-SB12U-2-04").OrderBy(a => a.Entry).ToList();
        Assert.Equal([(1, 61), (2, 63)], lines.Select(l => (l.Entry, l.Pitches)));
        Assert.Contains("Appearance", store.Trail.OrderByDescending(t => t.Number).First().What);
    }

    [Fact]
    public async Task A_ruling_is_reached_one_answer_at_a_time_and_back_takes_a_step_back()
    {
        var page = await Open("/ruling?sheet=double+first+base&code=softball/12U", phone: true);
        var steps = 0;
        while (await page.Locator("article.ruling").CountAsync() == 0 && steps++ < 12) await page.Locator(".answers .answer").First.ClickAsync();
        await Assertions.Expect(page.Locator("article.ruling .lines")).ToContainTextAsync("ball");
        await page.GetByText("Why", new() { Exact = true }).First.ClickAsync();
        await Assertions.Expect(page.Locator("ul.why li").First).ToBeVisibleAsync();
        await page.GoBackAsync();
        await Assertions.Expect(page.Locator(".answers .answer").First).ToBeVisibleAsync();
        Assert.InRange(steps, 2, 11);
    }

    [Fact]
    public async Task Facts_said_can_be_taken_back_and_the_play_ruled_under_another_code()
    {
        var page = await Open("/ruling?sheet=double+first+base&code=softball/12U&f=bag+at+first+is+double&f=her+foot+is+white+part+only&f=throw+is+from+the+fair+side&f=appeal+is+before+she+returned&far=true");
        await Assertions.Expect(page.Locator(".ruling .lines")).ToContainTextAsync("batter-runner: out");
        await page.SelectOptionAsync("#other", "baseball/12U");
        await page.GetByRole(AriaRole.Button, new() { Name = "Rule it there" }).ClickAsync();
        await Assertions.Expect(page.Locator(".ruling")).ToContainTextAsync("baseball/12U");
        await page.GetByRole(AriaRole.Link, new() { Name = "Take back: appeal is before she returned" }).ClickAsync();
        Assert.DoesNotContain("appeal+is", page.Url);
    }

    [Fact]
    public async Task A_question_is_kept_in_the_log_and_looked_at()
    {
        var page = await Open("/ruling?q=She+only+got+the+white+one&sheet=double+first+base&code=softball/12U&f=bag+at+first+is+double&f=her+foot+is+white+part+only&far=true");
        await page.GetByText("Somebody has to look at this again").ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep in the questions log" }).ClickAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("She only got the white one");
        var kept = page.Locator("li", new() { HasText = "She only got the white one" });
        await kept.GetByRole(AriaRole.Button, new() { Name = "Looked at" }).ClickAsync();
        await Assertions.Expect(kept).ToHaveCountAsync(1);
        await Assertions.Expect(kept.GetByRole(AriaRole.Button, new() { Name = "Looked at" })).ToHaveCountAsync(0);
        using var store = Store();
        Assert.Contains(store.Trail.Where(t => t.What == "AskedQuestion").AsEnumerable(), t => t.Deed == "changed" && t.By.Contains("chief", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_sheet_shows_its_table_and_where_each_value_comes_from()
    {
        var page = await Open("/codes?code=softball/12U%2BTarnholt");
        await page.FillAsync("#part", "courtesy");
        await page.GetByRole(AriaRole.Button, new() { Name = "Show" }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "courtesy runner", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("table").First).ToContainTextAsync("catcher only");
        await Assertions.Expect(page.Locator("table").First).ToContainTextAsync("Tarnholt");
        await Assertions.Expect(Heading(page, "Decision table")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_local_option_is_proposed_its_faults_shown_mended_and_published()
    {
        const string bad = "Layer: Farrowgate\nkind: league\non: Oslemoor\ntitle: Farrowgate League softball options (2026)\n\nSheet: run limit in an inning\nSet run limit\n  softball from 2026-01-01 = many | Farrowgate options 2026, 1 | our own\n\nSheet: double first base\nSet nothing of the kind\n  softball = yes | Farrowgate options 2026, 2 | our own\n";
        var page = await Open("/options/new");
        await page.SelectOptionAsync("#league", "farrowgate");
        await page.FillAsync("#text", bad);
        await page.GetByRole(AriaRole.Button, new() { Name = "See what it does" }).ClickAsync();
        await Assertions.Expect(page.Locator("ul.warn")).ToContainTextAsync("nothing of the kind");
        await Assertions.Expect(page.Locator("ul.warn")).ToContainTextAsync("many");
        await page.SelectOptionAsync("#league", "farrowgate");
        await page.FillAsync("#text", bad[..bad.IndexOf("\nSheet: double", StringComparison.Ordinal)].Replace("many", "6 runs"));
        await page.GetByRole(AriaRole.Button, new() { Name = "See what it does" }).ClickAsync();
        await Assertions.Expect(Heading(page, "Nothing left open, nothing contradicted")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("table").First).ToContainTextAsync("6 runs");
        await page.GetByRole(AriaRole.Button, new() { Name = "Propose it" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Publish version 1" }).ClickAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Version 1, published");
        await page.GotoAsync("/codes/run-limit-in-an-inning?code=softball/12U%2BFarrowgate");
        await Assertions.Expect(page.Locator("table").First).ToContainTextAsync("6 runs");
    }

    [Fact]
    public async Task The_crossover_prints_on_two_pages()
    {
        var page = await Open("/crossover?one=baseball/12U&two=softball/12U");
        await Assertions.Expect(page.Locator(".sheet li").First).ToBeVisibleAsync();
        var pdf = await page.PdfAsync(new() { Format = "Letter", PreferCSSPageSize = false });
        var pages = System.Text.RegularExpressions.Regex.Count(System.Text.Encoding.Latin1.GetString(pdf), @"/Type\s*/Page\b");
        Assert.InRange(pages, 1, 2);
        await page.GetByRole(AriaRole.Link, new() { Name = "Everything that differs" }).ClickAsync();
        await Assertions.Expect(page.Locator(".difference").Nth(50)).ToBeAttachedAsync();
    }

    [Fact]
    public async Task A_person_is_found_changed_and_the_change_is_in_the_trail()
    {
        var page = await Open("/people?role=President");
        await page.Locator("tbody a").First.ClickAsync();
        await page.FillAsync("#given", "Changed");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the change" }).ClickAsync();
        await Assertions.Expect(page.Locator("h1")).ToContainTextAsync("Changed");
        await page.GotoAsync("/trail");
        await Assertions.Expect(page.Locator("tbody tr").First).ToContainTextAsync("→ Changed");
    }

    [Fact]
    public async Task A_minor_gets_no_phone_whoever_enters_it()
    {
        var page = await Open("/people/youth-01");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Only through a guardian");
        await page.FillAsync("#phone", "555 0177");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep the change" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("reached through a guardian");
        using var store = Store();
        Assert.Null(store.People.Single(p => p.Key == "youth-01").Phone);
    }

    [Fact]
    public async Task A_letter_to_a_minor_goes_to_the_guardian_with_a_second_adult()
    {
        var page = await Open("/people/youth-02");
        await page.GetByRole(AriaRole.Link, new() { Name = "Write to the guardians" }).ClickAsync();
        await page.FillAsync("#subject", "Saturday");
        await page.SelectOptionAsync("#second", "coordinator-01");
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the letter" }).ClickAsync();
        await Assertions.Expect(Heading(page, "The letter is ready")).ToBeVisibleAsync();
        using var store = Store();
        var (guardian, second) = (store.People.Single(p => p.Key == "guardian-02"), store.People.Single(p => p.Key == "coordinator-01"));
        var mail = await page.GetByRole(AriaRole.Link, new() { Name = "Open in your mail" }).GetAttributeAsync("href");
        Assert.Contains(Uri.EscapeDataString(guardian.Mail!), mail);
        Assert.Contains("cc=" + Uri.EscapeDataString(second.Mail!), mail);
    }

    [Fact]
    public async Task A_file_is_tried_its_faults_shown_and_then_taken_in()
    {
        var folder = Directory.CreateTempSubdirectory().FullName;
        var (bad, good) = (Path.Combine(folder, "bad.csv"), Path.Combine(folder, "good.csv"));
        await File.WriteAllTextAsync(bad, "team,name,league,division\nX-1,Rooks,nowhere,SB 12U\nX-2,,tarnholt,SB 99\n");
        await File.WriteAllTextAsync(good, "team,name,league,division\nX-1,Rooks,tarnholt,SB 12U\n");
        var page = await Open("/files");
        await page.SelectOptionAsync("#kind", "teams");
        await page.SetInputFilesAsync("#file", bad);
        await page.GetByRole(AriaRole.Button, new() { Name = "Take it in" }).ClickAsync();
        await Assertions.Expect(Heading(page, "Nothing was changed")).ToBeVisibleAsync();
        Assert.Equal(3, await page.Locator("tbody tr").CountAsync());
        await page.GotoAsync("/files");
        await page.SelectOptionAsync("#kind", "teams");
        await page.SetInputFilesAsync("#file", good);
        await page.GetByRole(AriaRole.Button, new() { Name = "Try it" }).ClickAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("1 added");
        using (var store = Store()) Assert.False(store.Teams.Any(t => t.Key == "X-1"));
        await page.GotoAsync("/files");
        await page.SelectOptionAsync("#kind", "teams");
        await page.SetInputFilesAsync("#file", good);
        await page.GetByRole(AriaRole.Button, new() { Name = "Take it in" }).ClickAsync();
        await Assertions.Expect(Heading(page, "Taken in")).ToBeVisibleAsync();
        using (var store = Store()) Assert.True(store.Teams.Any(t => t.Key == "X-1"));
        Directory.Delete(folder, true);
    }

    [Fact]
    public async Task The_night_theme_stays_and_a_seat_can_be_changed()
    {
        var page = await Open("/");
        await page.GetByRole(AriaRole.Button, new() { Name = "Night colours" }).ClickAsync();
        await page.GotoAsync("/leagues");
        Assert.Equal("night", await page.Locator("html").GetAttributeAsync("data-theme"));
        await page.SelectOptionAsync("#seat", "manager-tar-sb12u-1");
        await page.GetByRole(AriaRole.Button, new() { Name = "Change seat" }).ClickAsync();
        await Assertions.Expect(page.Locator(".banner")).ToContainTextAsync("Manager");
        await Assertions.Expect(page.Locator("header nav").GetByRole(AriaRole.Link, new() { Name = "People" })).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task A_ruling_can_be_reached_by_keyboard_alone()
    {
        var page = await Open("/ruling?sheet=infield+fly&code=baseball/12U");
        for (var steps = 0; steps < 20 && await page.Locator("article.ruling").CountAsync() == 0; steps++)
        {
            var reached = false;
            for (var tabs = 0; tabs < 120 && !reached; tabs++)
            {
                await page.Keyboard.PressAsync("Tab");
                reached = await page.EvaluateAsync<bool>("document.activeElement.matches('.answers .answer')");
            }
            Assert.True(reached, $"no answer was reached by tabs on {page.Url}");
            var before = page.Url;
            // listened for before the key goes down; a key that went astray while a page was made is pressed again
            var turned = page.WaitForURLAsync(url => url != before, new() { Timeout = 10_000 });
            await page.Keyboard.PressAsync("Enter");
            try { await turned; }
            catch (TimeoutException) { await page.ReloadAsync(); }
        }
        await Assertions.Expect(page.Locator("article.ruling")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task A_league_and_a_game_lead_to_the_rule_code_and_a_calendar()
    {
        var page = await Open("/leagues", seat: "nobody");
        await page.GetByRole(AriaRole.Link, new() { Name = "Tarnholt League" }).ClickAsync();
        var feed = await page.Context.APIRequest.GetAsync(await page.GetByRole(AriaRole.Link, new() { Name = "Calendar feed" }).GetAttributeAsync("href") ?? "");
        Assert.StartsWith("BEGIN:VCALENDAR", await feed.TextAsync());
        await page.Locator(".rows a").First.ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Rule a play of this game" }).ClickAsync();
        await Assertions.Expect(Heading(page, "What happened?")).ToBeVisibleAsync();
        Assert.DoesNotContain("Crew", await page.ContentAsync());
    }
}
