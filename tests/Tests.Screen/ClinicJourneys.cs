using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.Crews.Constraints;
using Umpirage.District.Clinic;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Plays;
using Umpirage.Store;

namespace Umpirage.Tests.Screen;

public class ClinicJourneysInAFile(FileDesk desk, Browser browser) : ClinicJourneys(desk, browser), IClassFixture<FileDesk>;

public class ClinicJourneysOnAServer(ServerDesk desk, Browser browser) : ClinicJourneys(desk, browser), IClassFixture<ServerDesk>;

/// <summary>A drill on a phone, and the way to a certificate.</summary>
public abstract class ClinicJourneys(DemoDesk demo, Browser browser) : AtTheDesk(demo, browser)
{
    private static Codebook Codes()
    {
        var codes = Path.Combine(DeskProcess.Root, "codes");
        SourceText Text(string file) => new(Path.GetFileName(file), File.ReadAllText(file));
        return Codebook.Read(Text(Path.Combine(codes, "roster.txt")), Directory.EnumerateFiles(codes, "*.sheet", SearchOption.AllDirectories).Concat(Directory.EnumerateFiles(codes, "*.layer", SearchOption.AllDirectories)).Order(StringComparer.Ordinal).Select(Text));
    }

    [Fact]
    public async Task Five_minutes_of_rules_on_a_phone_end_with_what_was_shaky()
    {
        var page = await Open("/drill", "umpire-058", phone: true);
        await page.GetByLabel("Rules of").SelectOptionAsync("softball/12U+Oslemoor");
        await page.GetByRole(AriaRole.Button, new() { Name = "Begin" }).ClickAsync();
        var answers = page.Locator("form.drill button.answer");
        await Assertions.Expect(page.Locator("h1.question")).ToBeVisibleAsync();
        // a thumb, then a key, then a key for what is not known
        await answers.First.ClickAsync();
        foreach (var key in (string[])["2", "0"])
        {
            await Assertions.Expect(page.Locator("#came")).ToHaveTextAsync(new System.Text.RegularExpressions.Regex("Right|Not right"));
            await Assertions.Expect(page.Locator("article.ruling .lines b")).Not.ToBeEmptyAsync();
            await page.GetByRole(AriaRole.Link, new() { Name = "Next question" }).ClickAsync();
            await Assertions.Expect(page.Locator("h1.question")).ToBeVisibleAsync();
            await page.Keyboard.PressAsync(key);
        }
        await Assertions.Expect(page.Locator("#came")).ToContainTextAsync("Not right");
        await Assertions.Expect(page.Locator("article.ruling")).ToContainTextAsync("You did not know");
        await page.GoBackAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "End here" }).ClickAsync();
        await Assertions.Expect(page.Locator("h1")).ToContainTextAsync("3 answered");
        await Assertions.Expect(Heading(page, "What was shaky")).ToBeVisibleAsync();
        using var store = Store();
        var kept = store.Answers.Where(a => a.Person == "umpire-058" && a.Edition != "demo").ToList();
        Assert.Equal(3, kept.Count);
        Assert.Contains(kept, a => a.Answer == "" && !a.Right);
        Assert.All(kept, a => Assert.StartsWith("softball/12U+Oslemoor", a.Code));
    }

    /// <summary>A question that stands in a test form of the year is refused at the drill's door: nobody learns its answer there.</summary>
    [Fact]
    public async Task A_question_of_a_test_is_not_answered_in_a_drill()
    {
        var (book, day) = (Codes(), new DateOnly(2026, 5, 16));
        var phrases = PhraseReader.Read(Directory.EnumerateFiles(Path.Combine(DeskProcess.Root, "codes", "phrases"), "*.phrases").Select(f => new SourceText(Path.GetFileName(f), File.ReadAllText(f))), book, []);
        var bank = Bank.Of(book, phrases, Casebook.Code(book, "softball/12U", day, _ => { })!, []);
        using var door = Knock("chief");
        var (_, form, _) = await door.Get("/certify/test?kind=base+softball+12U&person=umpire-060&as=desk");
        form = System.Net.WebUtility.HtmlDecode(form);
        var tested = bank.Questions.Where(q => form.Contains($". {q.Situation} <b>{q.Ask}</b>", StringComparison.Ordinal)).DistinctBy(q => q.Situation + q.Ask).ToList();
        Assert.True(tested.Count >= 25, $"{tested.Count}");
        Task<(System.Net.HttpStatusCode Status, string Body, HttpResponseMessage Response)> Answer(Question question) => door.Post("/drill", [("code", "softball/12U"), ("q", question.Id), ("answer", question.Answer)]);
        Assert.Equal(System.Net.HttpStatusCode.UnprocessableEntity, (await Answer(tested[0])).Status);
        Assert.Contains("stands in no test of this year", (await Answer(tested[1])).Body);
        Assert.Contains(bank.Questions.Take(40), q => Answer(q).Result.Status == System.Net.HttpStatusCode.Redirect);
        using var store = Store();
        Assert.DoesNotContain(store.Answers.Where(a => a.Person == "chief" && a.Form == "").AsEnumerable(), a => tested.Any(q => q.Id == a.Question));
    }

    /// <summary>What was asked and missed leads to a lesson of it: slides with pairs of plays of that subject and of no other.</summary>
    [Fact]
    public async Task What_to_teach_next_leads_to_a_lesson_of_it()
    {
        var page = await Open("/clinic/next?game=softball", "chief");
        var topic = page.Locator("#rules .topics > li").First;
        var subject = (await topic.Locator("h3").EvaluateAsync<string>("h => h.firstChild.textContent")).Trim();
        Assert.Equal(await page.Locator(".topics > li").CountAsync(), await page.GetByRole(AriaRole.Link, new() { NameRegex = new("^(Make a lesson of|Cards to walk through for) ") }).CountAsync());
        await topic.GetByRole(AriaRole.Link, new() { Name = "Make a lesson of" }).ClickAsync();
        await Assertions.Expect(Heading(page, "Slide by slide")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Slides", Exact = true }).ClickAsync();
        var named = await page.Locator("section.pair h2").AllTextContentsAsync();
        Assert.NotEmpty(named);
        Assert.All(named, n => Assert.Equal(subject, n));
        await page.GoBackAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Key", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("h1")).ToContainTextAsync(subject.ToLowerInvariant());
    }

    /// <summary>A test sat at the desk, the content signed in, the certificate given: from then on the person may be put on the bases of that division.</summary>
    [Fact]
    public async Task A_certificate_given_at_the_desk_opens_a_place_in_a_crew()
    {
        var page = await Open("/certify");
        string person, game;
        var codes = UmpiresCodes.For(Codes());
        bool Barred()
        {
            using var store = Store();
            var plan = CrewPlan.Of(CrewReader.Read(store), codes);
            return new Certified().Find(plan, new(plan.Game(game)!, CrewPlace.Base, plan.Person(person)!)).Any();
        }
        using (var store = Store())
        {
            game = store.Games.Where(g => g.Division == "SB 12U" && g.Status == GameStatus.Planned).OrderByDescending(g => g.Start).First().Key;
            // somebody with everything but this certificate, and with two units attended
            person = store.Officials.Select(o => o.Person).OrderBy(p => p).ToList().First(p => p.StartsWith("umpire-", StringComparison.Ordinal) && store.Certificates.Where(c => c.Person == p && c.Game == "softball").All(c => c.Division == "SB 10U"));
        }
        Assert.True(Barred());
        await page.GetByLabel("Who sits a test").SelectOptionAsync(person);
        await page.GetByLabel("For", new() { Exact = true }).SelectOptionAsync("base softball 12U");
        await page.GetByRole(AriaRole.Button, new() { Name = "Next form" }).ClickAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("Give or take");
        var test = page.Url;
        await page.GetByRole(AriaRole.Link, new() { Name = "The key" }).ClickAsync();
        var key = (await page.Locator("td:nth-child(2)").AllTextContentsAsync()).Select(k => k[2..]).ToList();
        Assert.Equal(25, key.Count);
        await page.GotoAsync(test);
        await page.GetByRole(AriaRole.Link, new() { Name = "Print it" }).ClickAsync();
        await Assertions.Expect(page.Locator(".quiz > li")).ToHaveCountAsync(25);
        Assert.NotEqual(0, await page.Locator(".quiz svg").CountAsync());
        await page.GotoAsync(test);
        await page.GetByRole(AriaRole.Link, new() { Name = "Sit it at this desk" }).ClickAsync();
        // two wrong: 23 of 25 stand well above the cut
        for (var i = 0; i < key.Count; i++)
        {
            var choices = page.Locator($"input[name=a{i + 1}]");
            var values = await choices.EvaluateAllAsync<string[]>("all => all.map(c => c.value)");
            await choices.Nth(Array.FindIndex(values, v => i < 2 ? v != key[i] : v == key[i])).CheckAsync();
        }
        await page.GetByRole(AriaRole.Button, new() { Name = "Hand it in" }).ClickAsync();
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("23 of 25 right (92 %)");
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("passed");
        // what is still missing is signed in where it was taught
        foreach (var (unit, day, place) in ((string, string, string)[])[("rules softball", "2026-02-07", "Pellwick hall"), ("base work", "2026-03-07", "Tarnholt Mill"), ("with young people", "2026-02-26", "Pellwick hall")])
        {
            await page.GotoAsync($"/training/clinic?unit={Uri.EscapeDataString(unit)}&day={day}&place={Uri.EscapeDataString(place)}");
            await page.Locator($"input[name=came][value={person}]").CheckAsync();
            await page.GetByRole(AriaRole.Button, new() { Name = "Keep who came" }).ClickAsync();
            await Assertions.Expect(page.Locator($"input[name=came][value={person}]")).ToBeCheckedAsync();
        }
        await page.GotoAsync($"/training/{person}");
        await page.GetByRole(AriaRole.Button, new() { Name = "Give the certificate" }).First.ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "The card" }).First.ClickAsync();
        await Assertions.Expect(page.Locator(".certificate")).ToContainTextAsync("up to SB 12U");
        Assert.False(Barred());
        // the next form has none of these questions
        using (var store = Store())
        {
            var asked = store.Answers.Where(a => a.Person == person && a.Form != "").Select(a => a.Question).ToHashSet();
            Assert.Equal(25, asked.Count);
            Assert.Equal("base softball 12U 2026 A", Assert.Single(store.Sittings.Where(s => s.Person == person).ToList()).Form);
        }
        await page.GotoAsync(test);
        await Assertions.Expect(page.Locator("main")).ToContainTextAsync("2026 B");
    }
}
