using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.AspNetCore.Components;
using Umpirage.Web;

namespace Umpirage.Tests.Screen;

/// <summary>Every page in both themes and both widths, held against the accessibility rules of axe-core; and nothing wider than the screen.</summary>
public class AxeTests(FileDesk desk, Browser browser) : IClassFixture<FileDesk>
{
    public static TheoryData<string> Paths { get; } = new(
        "/",
        "/ruling",
        "/ruling?q=The+runner+touched+only+the+white+bag+on+a+grounder",
        "/ruling?sheet=double+first+base&code=softball/12U",
        "/ruling?sheet=time+limit&code=softball/12U",
        "/ruling?sheet=double+first+base&code=softball/12U&f=bag+at+first+is+double&f=her+foot+is+white+part+only&f=throw+is+from+the+fair+side&f=fielder's+foot+is+white+part&f=appeal+is+before+she+returned&far=true",
        "/codes",
        "/codes/double-first-base",
        "/codes/nothing",
        "/options",
        "/options/Tarnholt",
        "/options/new",
        "/crossover",
        "/crossover?full=true",
        "/people?role=President",
        "/people/chief",
        "/people/youth-01",
        "/people/nobody-here",
        "/drill",
        "/drill?code=softball/12U%2BOslemoor",
        "/drill?code=softball/12U%2BOslemoor&since=1778806830&q=t6whvf6g0h&asked=1778806830",
        "/drill?code=softball/12U%2BOslemoor&since=1778806830&end=true",
        "/drill?code=chess",
        "/training",
        "/training/umpire-050",
        "/training/nobody-here",
        "/training/clinic?unit=base+work&day=2026-03-07&place=Tarnholt+Mill",
        "/training/clinic?unit=base+work&day=2026-05-30&place=Tarnholt+Mill",
        "/certify",
        "/certify/card?person=umpire-001&division=none&position=Base&from=2026-03-01",
        "/certify/test?kind=base+softball+12U&person=umpire-060",
        "/certify/test?kind=base+softball+12U&person=umpire-060&as=desk",
        "/certify/test?kind=base+softball+12U&person=umpire-060&as=paper",
        "/certify/test?kind=none&person=none",
        "/evaluate",
        "/evaluate/W06-BB910-01/umpire-f5",
        "/evaluate/none/none",
        "/visits",
        "/visits?position=plate",
        "/clinic/next",
        "/clinic/next?game=softball&all=true",
        "/crews/forecast",
        "/crews/forecast?week=2025-01-06",
        "/evaluations",
        "/evaluations/none/none/none",
        "/people/umpire-005",
        "/diamonds/tarnholt-2?division=SB+12U",
        "/diamonds/none",
        "/diamonds/tarnholt-school-1?lengths=m&looks=x",
        "/diamonds/tarnholt-1/survey",
        "/diamonds/tarnholt-1/survey?ft=60&ft=85&ft=60&ft=40&ft=60&ft=84&ft=42&ft=60&in=&in=2&in=&in=&in=3&in=10&in=6&in=3&t=third-plate+42+ft+6+in",
        "/diamonds/tarnholt-1/survey?ft=x",
        "/diamonds/veldhollow-school-1?looks=62.5",
        "/games/S-F4/cards?card=pitching",
        "/gear",
        "/gear?kind=bat",
        "/gear?kind=helmet&t=bat+A%0A++marks:+none",
        "/gear?t=hat",
        "/gear/log",
        "/schedule?week=2026-05-25",
        "/crews?week=2026-05-18",
        "/crews?week=2026-05-11&night=2026-05-16",
        "/crews?week=1999-01-01",
        "/pitching-plan/TAR-BB1112-1",
        "/pitching-plan/none",
        "/schedule/rain?day=2026-05-21&closed=wrenfall",
        "/clock",
        "/clock?game=S-F4",
        "/clock?t=Clock%3A+BB-12+on+2026-05-16%0Aplace%3A+41.40+N+88.10+W%2C+America%2FChicago%0Alit%3A+no%0A17%3A32+first+pitch%0A18%3A40+thunder&add=thunder&time=18:52",
        "/clock?t=nothing&add=thunder",
        "/lessons?one=baseball%2F12U&two=softball%2F12U&audience=umpire&minutes=45",
        "/lessons/slide?one=baseball%2F12U&two=softball%2F12U&audience=umpire&minutes=45&key=opening",
        "/lessons/deck?one=baseball%2F12U&two=softball%2F12U&audience=umpire&minutes=45",
        "/lessons/handout?one=baseball%2F12U&two=softball%2F12U&audience=umpire&minutes=45",
        "/mechanics?runners=first+and+second&outs=one&hit=hit+through+to+the+outfield",
        "/mechanics/cards?runners=first",
        "/mechanics/questions?n=3",
        "/weather?air=94&humidity=50",
        "/weather?air=x",
        "/pitchers",
        "/pitchers/PEL-BB1112-3?on=2026-05-16&game=S-F2",
        "/pitchers/PEL-BB1112-3/PEL-BB1112-3-01?on=2026-05-16&game=S-F2&pitches=87&before=83&innings=5&atbat=yes",
        "/pitchers/none/none",
        "/crews/game/S-F9",
        "/crews/game/S-F9?asked=yes&missing=plate&missing=base&now=17:40&names=Bram+Ravensholt+14,Juno+K+5,Desh+Stonehythe+9,Hana+Underfell+22,Leif+Swallowdale+6,Rhea+N+11",
        "/crews/game/S-F9?asked=yes&missing=plate&now=5pm&names=Nobody+x",
        "/crews/game/none",
        "/crews/search?week=2026-05-25",
        "/crews/publish?week=2026-05-18",
        "/crews/park/tarnholt?day=2026-05-16",
        "/crews/park/none",
        "/crews/me",
        "/crews/hours",
        "/crews/hours/umpire-f5",
        "/crews/hours/youth-f12",
        "/crews/person/umpire-f5?game=W06-BB910-10&place=plate&air=94&humidity=50",
        "/crews/person/youth-f12",
        "/crews/person/none",
        "/crews/swaps",
        "/crews/swaps/new?game=none",
        "/leagues",
        "/leagues/tarnholt",
        "/games/W06-SB12U-03",
        "/games/W06-BB910-12",
        "/games/W06-BB910-10/cards",
        "/games/W06-BB910-10/cards?card=crew",
        "/games/S-F1-SAT/cards?card=pitching",
        "/games/S-F4/cards?card=gear",
        "/games/none/cards",
        "/diamonds",
        "/questions",
        "/files",
        "/trail",
        "/letters/new?to=youth-01&to=chief",
        "/me",
        "/sign-in");

    /// <summary>A page nobody holds against the rules here is a page nobody looked at.</summary>
    [Fact]
    public void Every_page_is_held()
    {
        var held = Paths.Select(row => row.Data.Split('?')[0].Split('/')).ToList();
        var pages = typeof(Shelf).Assembly.GetTypes().SelectMany(t => t.GetCustomAttributes(typeof(RouteAttribute), false).Cast<RouteAttribute>()).Select(r => r.Template).ToList();
        Assert.NotEmpty(pages);
        // the first run is answered only by a desk of no district
        Assert.Equal(["/first-run"], pages.Where(page => !held.Any(path => Fits(page.Split('/'), path))).Order());

        static bool Fits(string[] page, string[] path) => page.Length == path.Length && page.Zip(path).All(p => p.First.StartsWith('{') || p.First == p.Second);
    }

    [Theory, MemberData(nameof(Paths))]
    public async Task No_page_has_a_violation(string path)
    {
        Browser.Needed();
        var page = await browser.Page(desk.Desk!.Address);
        foreach (var (phone, theme) in ((bool, string)[])[(false, "sun"), (false, "night"), (true, "sun")])
        {
            // the theme of a page is one attribute of it; that the attribute follows the choice is another test's matter
            if (theme == "night") await page.EvaluateAsync("document.documentElement.dataset.theme = 'night'");
            else
            {
                await page.SetViewportSizeAsync(phone ? 390 : 1440, phone ? 844 : 900);
                await page.GotoAsync(path);
            }
            // a theme changes colours only
            var result = theme == "night" ? await page.RunAxe(new AxeRunOptions { RunOnly = new() { Type = "rule", Values = ["color-contrast", "color-contrast-enhanced", "link-in-text-block"] } }) : await page.RunAxe();
            Assert.True(result.Violations.Length == 0, $"{path} {theme} {(phone ? "phone" : "desk")}: {string.Join("; ", result.Violations.Select(v => $"{v.Id}: {v.Help} at {string.Join(", ", v.Nodes.Take(3).Select(n => n.Html))}"))}");
            Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth - innerWidth") <= 0, $"{path} is wider than the {(phone ? "phone" : "desk")}");
            Assert.Empty(await Small(page));
        }
        await page.Context.CloseAsync();
    }

    /// <summary>Buttons, fields and answers lower than 48 px, and text smaller than 16 px.</summary>
    private static async Task<string[]> Small(IPage page) => await page.EvaluateAsync<string[]>("""
        () => [...document.querySelectorAll('button, .button, .answer, select, input:not([type=hidden]):not([type=checkbox]):not([type=radio]), summary, nav a, label.tick')]
          .filter(e => e.checkVisibility() && e.getBoundingClientRect().height < 47.5).map(e => 'low: ' + e.outerHTML.slice(0, 80))
          .concat([...document.querySelectorAll('main *')].filter(e => e.checkVisibility() && !e.closest('svg') && [...e.childNodes].some(n => n.nodeType === 3 && n.textContent.trim()) && parseFloat(getComputedStyle(e).fontSize) < 16).map(e => 'small: ' + e.outerHTML.slice(0, 80)))
        """);
}
