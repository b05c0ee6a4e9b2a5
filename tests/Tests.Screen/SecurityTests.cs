using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Routing;
using Umpirage.District.People;
using Umpirage.Web;

namespace Umpirage.Tests.Screen;

/// <summary>Each role at each door and each record of the demonstration; what leaks; forms from elsewhere; headers; the trail.</summary>
public class SecurityTests(FileDesk demo) : IClassFixture<FileDesk>
{
    /// <summary>A seat for each role, with the deeds beyond those of everybody signed in: typed from the table of roles in the job's description, not from the program.</summary>
    private static readonly (string Seat, string[] Opens)[] Roles =
    [
        ("chief", ["swap", "hours", "looks", "crews", "sets", "people", "contact", "letters", "questions", "options", "publish", "files", "trail", "accounts", "change", "eligible", "count", "plan", "evaluate", "visits", "forecast", "teach", "training", "certify"]),
        ("assigner", ["swap", "crews", "sets", "people", "letters", "visits", "forecast"]),
        ("umpire-001", ["swap", "hours", "looks", "crews", "people", "letters", "questions", "eligible", "evaluate", "visits", "teach", "training"]),
        ("umpire-050", ["swap", "hours", "looks", "crews", "eligible", "training"]),
        ("youth-01", ["swap", "looks", "crews", "eligible", "training"]),
        ("guardian-01", ["swap", "hours", "crews", "training"]),
        ("president-tarnholt", ["looks", "crews", "people", "options", "eligible", "count", "forecast"]),
        ("safety-tarnholt", ["looks", "people"]),
        ("manager-tar-sb12u-1", ["eligible", "count"]),
        ("coordinator-01", ["looks", "eligible"]),
        ("committee-1", []),
        ("nobody", []),
    ];

    /// <summary>Every page with what opens it; "public" is open to all, "own" to all who are signed in.</summary>
    private static readonly (string Path, string Opens)[] Pages =
    [
        ("/", "own"),
        ("/me", "own"),
        ("/ruling", "public"),
        ("/codes", "public"),
        ("/codes/appeal", "public"),
        ("/options", "public"),
        ("/options/Tarnholt", "public"),
        ("/crossover", "public"),
        ("/lessons", "public"),
        ("/lessons?one=baseball%2F12U&two=softball%2F12U&audience=umpire&minutes=45", "public"),
        ("/lessons/deck?one=baseball%2F12U&two=softball%2F12U&audience=umpire&minutes=45", "public"),
        ("/lessons/deck.css", "public"),
        ("/lessons/deck.js", "public"),
        ("/lessons/paper.css", "public"),
        ("/lessons/notes?one=baseball%2F12U&two=softball%2F12U&audience=umpire&minutes=45", "public"),
        ("/lessons/handout?one=baseball%2F12U&two=softball%2F12U&audience=umpire&minutes=45", "public"),
        ("/lessons/key?one=baseball%2F12U&two=softball%2F12U&audience=umpire&minutes=45", "public"),
        ("/lessons/slide?one=baseball%2F12U&two=softball%2F12U&audience=umpire&minutes=45&key=opening", "teach"),
        ("/mechanics", "public"),
        ("/mechanics/cards", "public"),
        ("/mechanics/questions", "public"),
        ("/leagues", "public"),
        ("/leagues/tarnholt", "public"),
        ("/diamonds", "public"),
        ("/games/W06-SB12U-03", "public"),
        ("/games/W06-SB12U-03/cards", "public"),
        ("/games/W06-SB12U-03/cards/plate.pdf", "public"),
        ("/games/W06-SB12U-03/cards/all.pdf", "public"),
        ("/feeds/league/tarnholt.ics", "public"),
        ("/feeds/team/TAR-SB12U-1.ics", "public"),
        ("/feeds/diamond/tarnholt-1.ics", "public"),
        ("/evaluate", "evaluate"),
        ("/evaluate/W06-BB910-01/umpire-f5", "evaluate"),
        ("/evaluations", "evaluate"),
        ("/visits", "visits"),
        ("/crews/forecast", "forecast"),
        ("/clinic/next", "teach"),
        ("/diamonds/tarnholt-1", "public"),
        ("/diamonds/tarnholt-1/survey", "public"),
        ("/diamonds/tarnholt-1/plan.svg", "public"),
        ("/diamonds/tarnholt-1/plan.pdf", "public"),
        ("/diamonds/tarnholt-1/plan.dxf", "public"),
        ("/diamonds/tarnholt-1/sun.svg", "public"),
        ("/gear", "public"),
        ("/gear/log", "looks"),
        ("/schedule", "public"),
        ("/crews", "crews"),
        ("/crews/search", "sets"),
        ("/crews/publish", "sets"),
        ("/crews/park/tarnholt", "crews"),
        ("/pitching-plan/TAR-SB12U-1", "count"),
        ("/schedule/rain", "plan"),
        ("/clock", "public"),
        ("/clock?game=S-F4", "public"),
        ("/weather?air=94&humidity=50", "public"),
        ("/pitchers", "eligible"),
        ("/pitchers/TAR-SB12U-2", "eligible"),
        ("/pitchers/TAR-SB12U-2/TAR-SB12U-2-04", "eligible"),
        ("/crews/game/S-F9", "sets"),
        ("/crews/game/S-F9?asked=yes&missing=plate&now=17:40&names=Bram+14", "sets"),
        ("/crews/me", "crews"),
        ("/crews/swaps", "swap"),
        ("/crews/hours", "crews"),
        ("/crews/swaps/new?game=none", "swap"),
        ("/people", "people"),
        ("/letters/new", "letters"),
        ("/questions", "questions"),
        ("/files", "files"),
        ("/files/people.csv", "files"),
        ("/trail", "trail"),
        ("/sign-in", "public"),
        ("/health", "public"),
        ("/first-run", "public"),
        ("/drill", "own"),
        ("/drill?code=softball/12U", "own"),
        ("/training", "training"),
        ("/training/clinic?unit=base+work&day=2026-03-07&place=Tarnholt+Mill", "teach"),
        ("/certify", "training"),
        ("/certify/test?kind=base+softball+12U&person=umpire-060", "teach"),
        ("/certify/paper?kind=base+softball+12U&person=umpire-060", "teach"),
        ("/certify/key?kind=base+softball+12U&person=umpire-060", "teach"),
    ];

    /// <summary>Every deed with what opens it.</summary>
    private static readonly (string Path, string Opens, (string, string)[] Fields)[] Deeds =
    [
        ("/people/manager-pel-sb8u-1", "change", [("given", "X"), ("band", "adult")]),
        ("/people/umpire-060/account", "accounts", [("name", "x-account")]),
        ("/options", "options", [("league", "tarnholt"), ("text", "Layer: tarnholt"), ("deed", "check")]),
        ("/options/Nothing/publish", "publish", [("version", "1")]),
        ("/questions", "own", [("sheet", "appeal"), ("code", "softball/12U")]),
        ("/questions/q-none/done", "questions", []),
        ("/crews/search", "sets", [("week", "2026-05-18")]),
        ("/crews/search/stop", "sets", [("search", "none")]),
        ("/crews/search/take", "sets", [("search", "none")]),
        ("/crews/publish", "sets", [("week", "2026-05-18")]),
        ("/crews/freeze", "sets", [("game", "W07-SB12U-03"), ("freeze", "yes")]),
        ("/me/feed", "own", [("person", "umpire-050")]),
        ("/me/feed/end", "own", [("person", "umpire-050")]),
        ("/crews/place", "sets", [("game", "W06-SB12U-03"), ("place", "plate")]),
        ("/diamonds/tarnholt-1/bearing", "looks", [("looks", "30")]),
        ("/diamonds/tarnholt-1/survey", "looks", [("text", "home-first 60 ft"), ("on", "2026-05-16")]),
        ("/gear/log", "looks", [("code", "softball/12U"), ("on", "2026-05-16"), ("t", "helmet 1")]),
        ("/gear/log/r-none/back", "looks", []),
        ("/schedule/plans", "plan", [("plan", "none")]),
        ("/schedule/plans/back", "plan", [("plan", "none")]),
        ("/pitchers/count", "count", [("game", "S-F1-SAT"), ("player", "TAR-SB12U-2-04"), ("team", "TAR-SB12U-2")]),
        ("/evaluations", "evaluate", [("game", "W06-BB910-01"), ("umpire", "umpire-f5")]),
        ("/evaluations/W06-BB910-01/umpire-f5/umpire-001/reply", "own", [("reply", "x")]),
        ("/crews/game/S-F9/seats", "sets", [("seat", "plate=nobody")]),
        ("/crews/swaps", "swap", [("person", "x"), ("game", "x"), ("place", "plate"), ("other", "x")]),
        ("/crews/hours/none/offer", "hours", [("from", "17:30"), ("until", "21:00")]),
        ("/crews/hours/none/back", "hours", [("day", "Monday"), ("from", "17:30")]),
        ("/crews/hours/none/away", "hours", [("from", "2026-06-01")]),
        ("/crews/hours/none/there", "hours", [("from", "2026-06-01")]),
        ("/crews/hours/none/games", "hours", [("games", "2")]),
        ("/crews/swaps/none/answer", "swap", [("say", "yes")]),
        ("/crews/swaps/none/decide", "sets", [("say", "yes")]),
        ("/crews/mentor", "sets", [("game", "x"), ("person", "x"), ("mentor", "x")]),
        ("/letters", "letters", [("to", "umpire-060")]),
        ("/lessons/slide", "teach", [("one", "baseball/12U"), ("two", "softball/12U"), ("audience", "umpire"), ("minutes", "45"), ("before", "none"), ("key", "opening")]),
        ("/lessons/seen", "teach", [("one", "baseball/12U"), ("two", "softball/12U"), ("audience", "umpire"), ("minutes", "45"), ("before", "none")]),
        ("/files", "files", []),
        ("/me/password", "own", [("old", "x"), ("new", "y")]),
        ("/me/passkeys", "own", [("credential", "{}")]),
        ("/me/passkeys/options", "own", []),
        ("/me/passkeys/remove", "own", [("id", "00")]),
        ("/theme", "public", [("theme", "sun")]),
        ("/seat", "public", [("person", "chief")]),
        ("/sign-out", "public", []),
        ("/sign-in", "public", [("name", "x"), ("password", "y")]),
        ("/sign-in/passkey", "public", [("credential", "{}")]),
        ("/sign-in/passkey/options", "public", []),
        ("/first-run", "public", [("code", "x"), ("district", "x"), ("zone", "x"), ("given", "x"), ("name", "x"), ("password", "x")]),
        ("/drill", "own", [("code", "softball/12U"), ("q", "none")]),
        ("/training/clinics", "teach", [("unit", "base work"), ("day", "2026-06-01"), ("from", "18:30"), ("place", "x"), ("taught", "chief")]),
        ("/training/sign-in", "teach", [("unit", "base work"), ("day", "2026-03-07"), ("place", "Tarnholt Mill"), ("shown", "umpire-060")]),
        ("/certify/test", "teach", [("kind", "base softball 12U"), ("person", "umpire-060"), ("form", "x")]),
        ("/certify/talk", "certify", [("person", "umpire-050"), ("kind", "base softball 12U"), ("form", "base softball 12U 2026 C")]),
        ("/certify/issue", "certify", [("person", "umpire-044"), ("kind", "base softball 12U")]),
    ];

    private static bool May(string seat, string opens) => opens == "public" || (seat != "nobody" && (opens == "own" || Roles.Single(r => r.Seat == seat).Opens.Contains(opens)));

    [Fact]
    public async Task Each_role_comes_in_at_its_own_doors_only()
    {
        var wrong = new List<string>();
        foreach (var (seat, _) in Roles)
        {
            using var door = new Door(demo.Desk!.Address, seat);
            foreach (var (path, opens) in Pages)
            {
                var (status, _, _) = await door.Get(path);
                var allowed = May(seat, opens);
                var fine = allowed ? status == HttpStatusCode.OK : seat == "nobody" ? status == HttpStatusCode.Redirect : status == HttpStatusCode.Forbidden;
                if (!fine) wrong.Add($"{seat} GET {path}: {(int)status}, {(allowed ? "should come in" : "should not")}");
            }
        }
        Assert.Empty(wrong);
    }

    [Fact]
    public async Task No_deed_is_done_by_a_role_that_may_not_and_none_without_the_pages_own_token()
    {
        var wrong = new List<string>();
        foreach (var (seat, _) in Roles)
            foreach (var (path, opens, fields) in Deeds)
            {
                using var door = new Door(demo.Desk!.Address, seat);
                long before;
                using (var store = demo.Desk.Place.Open()) before = store.Trail.Max(t => t.Number);
                var (status, _, _) = await door.Post(path, fields, token: false);
                if (May(seat, opens) ? status != HttpStatusCode.BadRequest : status is not (HttpStatusCode.Forbidden or HttpStatusCode.Unauthorized)) wrong.Add($"{seat} POST {path} without token: {(int)status}");
                if (May(seat, opens)) continue;
                (status, _, _) = await door.Post(path, fields);
                if (status is not (HttpStatusCode.Forbidden or HttpStatusCode.Unauthorized)) wrong.Add($"{seat} POST {path}: {(int)status}");
                using (var store = demo.Desk.Place.Open()) if (store.Trail.Max(t => t.Number) != before) wrong.Add($"{seat} POST {path} wrote something");
            }
        Assert.Empty(wrong);
    }

    [Fact]
    public void Every_door_says_what_it_needs_and_stands_in_the_lists_above()
    {
        var settings = Settings.Read(["--data", Path.Combine(Directory.CreateTempSubdirectory().FullName, "x.db")], DeskProcess.Root, out _)!;
        using var app = Desk.Build(settings);
        var doors = ((IEndpointRouteBuilder)app).DataSources.SelectMany(s => s.Endpoints).OfType<RouteEndpoint>().Where(e => e.Metadata.GetMetadata<HttpMethodMetadata>() is not null || e.Metadata.Any(m => m.GetType().Name == "ComponentTypeMetadata")).ToList();
        var known = Pages.Select(p => p.Path.Split('?')[0]).Concat(Deeds.Select(d => d.Path)).Concat(["/people/x", "/crews/person/x", "/crews/hours/x", "/evaluations/x/y/z", "/feeds/own/x.ics", "/training/x", "/certify/card"]).ToList();
        var wrong = new List<string>();
        foreach (var door in doors)
        {
            var pattern = "/" + door.RoutePattern.RawText!.TrimStart('/');
            if (pattern.Contains("desk.", StringComparison.Ordinal) || pattern.Contains("path:file", StringComparison.Ordinal) || pattern.Contains("_framework", StringComparison.Ordinal) || pattern.Contains("_blazor", StringComparison.Ordinal)) continue;
            if (door.Metadata.GetMetadata<NeedsAttribute>() is null && door.Metadata.GetMetadata<ForAnybodyAttribute>() is null) wrong.Add($"{pattern} says nothing of who may");
            var like = "^" + Regex.Replace(Regex.Escape(pattern), @"\\\{[^}]*}", "[^/]+") + "$";
            if (!known.Any(k => Regex.IsMatch(k, like))) wrong.Add($"{pattern} is in no list");
        }
        Assert.True(doors.Count > 35, $"{doors.Count} doors");
        Assert.Empty(wrong);
    }

    [Fact]
    public async Task Records_of_others_do_not_leak()
    {
        using var store = demo.Desk!.Place.Open();
        var people = store.People.ToList();
        var minors = people.Where(p => p.IsMinor).ToList();
        var logs = store.Appearances.Take(400).ToList();
        var teamOf = store.Teams.ToDictionary(t => t.Key);
        var game = store.Games.Single(g => g.Key == logs[0].Game);
        string[] paths =
        [
            "/", "/?all=true", "/people", "/people?part=a", .. (string[])["chief", "umpire-001", "umpire-060", "youth-01", "youth-09", "guardian-01", "guardian-09", "president-tarnholt", "manager-tar-sb12u-1", "manager-wre-sb12u-1"],
            "/games/W06-BB910-12", "/crews/me", "/crews/me?week=2026-05-18", "/crews/swaps", "/crews/game/S-F9", .. ((string[])["umpire-001", "umpire-050", "umpire-f5", "youth-01", "youth-f12"]).SelectMany(p => new[] { $"/crews/person/{p}", $"/crews/hours/{p}" }), $"/games/{game.Key}", $"/games/{game.Key}/cards?card=crew", "/games/W06-BB910-12/cards?card=crew", "/leagues/tarnholt", "/feeds/league/tarnholt.ics", "/crews", "/crews?week=2026-05-18", "/questions", "/letters/new?part=a&to=youth-01",
        ];
        paths = [.. paths.Select(p => p[0] == '/' ? p : "/people/" + p)];
        var wrong = new List<string>();
        var seen = 0;
        foreach (var (seat, opens) in Roles)
        {
            using var door = new Door(demo.Desk.Address, seat);
            var roles = store.Roles.Where(r => r.Person == seat).ToList();
            foreach (var path in paths)
            {
                var (status, body, _) = await door.Get(path);
                if (status != HttpStatusCode.OK) continue;
                seen++;
                // the chief and the assigner reach any adult; everybody else their own entry, a guardian also the child's
                foreach (var person in people.Where(p => p.Phone is not null && (body.Contains(p.Phone, StringComparison.Ordinal) || body.Contains(p.Mail!, StringComparison.OrdinalIgnoreCase))))
                    if (seat is not ("chief" or "assigner") && person.Key != seat) wrong.Add($"{seat} {path} shows how to reach {person.Key}");
                if (seat != "chief")
                    foreach (var minor in minors.Where(m => body.Contains($"{m.Given} {m.Family}", StringComparison.Ordinal))) wrong.Add($"{seat} {path} shows the family name of {minor.Key}");
                if (path.StartsWith("/games/", StringComparison.Ordinal) && body.Contains("Pitching, as counted", StringComparison.Ordinal)
                    && !(seat == "chief" || roles.Any(r => (r.Role == Role.President && (teamOf[game.Home].League == r.League || teamOf[game.Visitor].League == r.League)) || (r.Role == Role.Manager && (r.Team == game.Home || r.Team == game.Visitor))))) wrong.Add($"{seat} {path} shows pitching logs");
                // another's page opens to those who may see people of that league, or to the person and the guardian
                if (path.StartsWith("/people/", StringComparison.Ordinal) && people.Single(p => p.Key == path[8..]) is var whom && !Sees(seat, whom)) wrong.Add($"{seat} {path} is open");
            }
        }
        Assert.Empty(wrong);
        Assert.True(seen > 100, $"{seen} pages seen");

        foreach (var (seat, whom, open) in ((string, string, bool)[])[("umpire-050", "umpire-050", true), ("umpire-050", "umpire-f5", false), ("guardian-01", "youth-01", true), ("guardian-01", "youth-f12", false), ("youth-01", "youth-f12", false), ("president-tarnholt", "umpire-f5", false), ("assigner", "youth-f12", true)])
        {
            using var door = new Door(demo.Desk.Address, seat);
            Assert.Equal((seat, whom, open ? HttpStatusCode.OK : HttpStatusCode.NotFound), (seat, whom, (await door.Get($"/crews/person/{whom}")).Status));
            Assert.Equal((seat, whom, open ? HttpStatusCode.OK : HttpStatusCode.NotFound), (seat, whom, (await door.Get($"/crews/hours/{whom}")).Status));
        }

        static bool Sees(string seat, Person whom) => seat is "chief" or "assigner" or "umpire-001" || seat == whom.Key || (seat == "guardian-01" && whom.Key == "youth-01")
            || (seat is "president-tarnholt" or "safety-tarnholt" && whom.League == "tarnholt");
    }

    /// <summary>A minor's answers, tests and card: to the minor, the guardian, who teaches and the chief; to nobody else.</summary>
    [Fact]
    public async Task Training_opens_to_oneself_ones_guardian_and_those_who_teach()
    {
        using var store = demo.Desk!.Place.Open();
        var certificate = store.Certificates.First(c => c.Person == "youth-01");
        Assert.Contains(store.Answers, a => a.Person == "youth-01");
        string[] paths = ["/training/youth-01", $"/certify/card?person=youth-01&division={Uri.EscapeDataString(certificate.Division)}&position={certificate.Position}&from={certificate.From:yyyy-MM-dd}"];
        var wrong = new List<string>();
        foreach (var (seat, _) in Roles)
        {
            using var door = new Door(demo.Desk.Address, seat);
            foreach (var path in paths)
            {
                var (status, body, _) = await door.Get(path);
                var allowed = seat is "chief" or "umpire-001" or "youth-01" or "guardian-01";
                if (allowed ? status != HttpStatusCode.OK : status is not (HttpStatusCode.NotFound or HttpStatusCode.Forbidden or HttpStatusCode.Redirect)) wrong.Add($"{seat} {path}: {(int)status}");
                if (!allowed && body.Contains("Shaky", StringComparison.Ordinal)) wrong.Add($"{seat} {path} tells");
                if (body.Contains($"{store.People.Single(p => p.Key == "youth-01").Given} {store.People.Single(p => p.Key == "youth-01").Family}", StringComparison.Ordinal)) wrong.Add($"{seat} {path} shows a minor's family name");
            }
        }
        Assert.Empty(wrong);
    }

    /// <summary>Who sits a test does not proctor it, and who is certified does not give the certificate.</summary>
    [Fact]
    public async Task Nobody_proctors_or_certifies_oneself()
    {
        using var door = new Door(demo.Desk!.Address, "umpire-001");
        var (_, page, _) = await door.Get("/certify/key?kind=base+softball+12U&person=umpire-001");
        Assert.Contains("somebody else than who sits the test", page);
        Assert.DoesNotContain("key, for the proctor only", page);
        using var chief = new Door(demo.Desk.Address, "chief");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await chief.Post("/certify/issue", [("person", "chief"), ("kind", "base softball 12U")])).Status);
    }

    /// <summary>An answer is judged here, whatever the page sends; the first one counts; a form that is not the next one is not taken.</summary>
    [Fact]
    public async Task What_is_sent_is_held_against_the_question()
    {
        using var door = new Door(demo.Desk!.Address, "committee-1");
        var (_, page, _) = await door.Get("/drill?code=softball/12U");
        string Field(string name) => Regex.Match(page, $"name=\"{name}\" value=\"([^\"]*)\"").Groups[1].Value;
        (string, string)[] sent = [("code", "softball/12U"), ("since", Field("since")), ("asked", Field("asked")), ("q", Field("q"))];
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await door.Post("/drill", [.. sent, ("answer", "whatever I say"), ("right", "true")])).Status);
        Assert.Equal(HttpStatusCode.Redirect, (await door.Post("/drill", [.. sent, ("answer", "")])).Status);
        var first = WebUtility.HtmlDecode(Regex.Match(page, "name=\"answer\" value=\"([^\"]+)\"").Groups[1].Value);
        Assert.Equal(HttpStatusCode.Redirect, (await door.Post("/drill", [.. sent, ("answer", first)])).Status);
        using var store = demo.Desk.Place.Open();
        var kept = Assert.Single(store.Answers.Where(a => a.Person == "committee-1").ToList());
        Assert.Equal(("", false), (kept.Answer, kept.Right));
        using var trainer = new Door(demo.Desk.Address, "umpire-001");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await trainer.Post("/certify/test", [("kind", "base softball 12U"), ("person", "umpire-060"), ("form", "base softball 12U 2026 D")])).Status);
        Assert.DoesNotContain(store.Sittings, s => s.Person == "umpire-060");
    }

    /// <summary>The coordinator named for a game knows the minor in its crew by first name; who has nothing to do with the game knows nothing.</summary>
    [Fact]
    public async Task A_minor_in_a_crew_is_seen_by_that_crew_and_its_coordinator_only()
    {
        foreach (var (seat, sees) in ((string, bool)[])[("coordinator-f12", true), ("guardian-f12", true), ("youth-f12", true), ("president-tarnholt", false), ("coordinator-01", false), ("umpire-f5", false), ("manager-tar-sb12u-1", false), ("nobody", false)])
        {
            using var door = new Door(demo.Desk!.Address, seat);
            var (_, body, _) = await door.Get("/games/W06-BB910-12");
            Assert.Equal((seat, sees), (seat, body.Contains("Teo", StringComparison.Ordinal)));
            Assert.Equal((seat, sees), (seat, body.Contains("Adult coordinator", StringComparison.Ordinal)));
            Assert.DoesNotContain("Merrivane", body.Replace("Calla Merrivane", "", StringComparison.Ordinal));
            if (seat != "guardian-f12") Assert.DoesNotContain("220 555 0197", body);
        }
    }

    [Fact]
    public async Task A_manager_sees_the_own_pitchers_only()
    {
        using var store = demo.Desk!.Place.Open();
        var log = store.Appearances.First(a => a.Team == "TAR-SB12U-1");
        var game = store.Games.Single(g => g.Key == log.Game);
        var other = game.Home == "TAR-SB12U-1" ? game.Visitor : game.Home;
        using var door = new Door(demo.Desk.Address, "manager-tar-sb12u-1");
        var (_, body, _) = await door.Get($"/games/{log.Game}");
        Assert.Contains("<td>TAR-SB12U-1</td>", body);
        Assert.DoesNotContain($"<td>{other}</td>", body);
    }

    /// <summary>An opponent sees who may pitch and nothing of how much was pitched before; the counts of another team are not theirs to keep.</summary>
    [Fact]
    public async Task An_opponent_sees_eligibility_and_no_history()
    {
        using var own = new Door(demo.Desk!.Address, "chief");
        using var other = new Door(demo.Desk.Address, "manager-tar-sb12u-1");
        const string Pitcher = "/pitchers/TAR-SB12U-2/TAR-SB12U-2-04?on=2026-05-16&game=S-F1-SAT";
        var (_, all, _) = await own.Get(Pitcher);
        Assert.Contains("S-F1-THU", all);
        var (_, some, _) = await other.Get(Pitcher);
        Assert.Contains("May pitch", some);
        foreach (var history in (string[])["S-F1-THU", "On record", "Thu 14 May", "home book"]) Assert.DoesNotContain(history, some);
        var (_, team, _) = await other.Get("/pitchers/TAR-SB12U-2?on=2026-05-16");
        Assert.DoesNotContain("Thu 14 May", team);
        var (status, _, _) = await other.Post("/pitchers/count", [("game", "S-F1-SAT"), ("player", "TAR-SB12U-2-04"), ("team", "TAR-SB12U-2"), ("counter", "x"), ("pitches", "3"), ("before", "2"), ("innings", "1")]);
        Assert.Equal(HttpStatusCode.Forbidden, status);
    }

    /// <summary>The chief, the evaluator, the umpire and a minor's guardian read an evaluation; nobody reads a minor's steps, and other evaluators read their own only.</summary>
    [Fact]
    public async Task An_evaluation_is_read_by_those_whom_it_concerns()
    {
        using var store = demo.Desk!.Place.Open();
        var all = store.Evaluations.ToList();
        var guardians = store.Guardianships.ToDictionary(g => g.Child, g => g.Guardian);
        var minors = store.People.AsEnumerable().Where(p => p.IsMinor).Select(p => p.Key).ToHashSet();
        var wrong = new List<string>();
        foreach (var one in all.GroupBy(e => (minors.Contains(e.Umpire), e.Evaluator == "umpire-001")).Select(g => g.First()))
        {
            string[] readers = ["chief", one.Evaluator, one.Umpire, .. guardians.TryGetValue(one.Umpire, out var guardian) ? [guardian] : (string[])[]];
            foreach (var seat in (string[])["chief", "assigner", "umpire-001", "umpire-002", "umpire-050", "youth-01", "guardian-01", "president-tarnholt", "safety-tarnholt", "manager-tar-sb12u-1", "coordinator-01", "committee-1", "nobody", .. readers])
            {
                using var door = new Door(demo.Desk.Address, seat);
                var (status, body, _) = await door.Get($"/evaluations/{one.Key}");
                if ((status == HttpStatusCode.OK) != readers.Contains(seat)) wrong.Add($"{seat} {one.Key}: {(int)status}");
                if (minors.Contains(one.Umpire) && body.Contains("What was seen", StringComparison.Ordinal)) wrong.Add($"{seat} sees the steps of {one.Umpire}");
                if (status != HttpStatusCode.OK && body.Contains(one.OwnView, StringComparison.Ordinal)) wrong.Add($"{seat} reads {one.Key}");
                var (open, page, _) = await door.Get($"/people/{one.Umpire}");
                if (open != HttpStatusCode.OK) continue;
                if (page.Contains($"/evaluations/{one.Key}", StringComparison.Ordinal) != readers.Contains(seat)) wrong.Add($"{seat} {(readers.Contains(seat) ? "does not see" : "sees")} {one.Key} on the umpire's page");
                if (page.Contains("on the scale", StringComparison.Ordinal) && (minors.Contains(one.Umpire) || (seat != "chief" && seat != one.Umpire))) wrong.Add($"{seat} sees a level of {one.Umpire}");
                var reply = await door.Post($"/evaluations/{one.Key}/reply", [("reply", one.Reply)]);
                var has = minors.Contains(one.Umpire) ? guardians[one.Umpire] == seat : seat == one.Umpire;
                if (reply.Response.Headers.Location?.ToString() == $"/evaluations/{one.Key}" != has) wrong.Add($"{seat} {(has ? "may not reply" : "replies")} to {one.Key}: {(int)reply.Status}");
            }
        }
        Assert.Empty(wrong);
        using var chief = new Door(demo.Desk.Address, "chief");
        var (_, list, _) = await chief.Get("/evaluations");
        Assert.All(all.Select(e => e.Umpire).Where(minors.Contains), m => Assert.DoesNotContain($"/people/{m}\"", list));
        using var trainer = new Door(demo.Desk.Address, "umpire-001");
        var (_, own, _) = await trainer.Get("/evaluations");
        Assert.All(all, e => Assert.Equal(e.Evaluator == "umpire-001", own.Contains($"/evaluations/{e.Key}\"", StringComparison.Ordinal)));
        foreach (var told in (string[])["on the scale", "To talk about"]) Assert.DoesNotContain(told, own);
    }

    [Fact]
    public async Task Fields_that_a_form_does_not_have_change_nothing()
    {
        using var door = new Door(demo.Desk!.Address, "chief");
        var (status, _, _) = await door.Post("/people/manager-pel-sb8u-1", [("given", "Ilse"), ("family", "Cranmoss"), ("band", "adult"), ("key", "chief"), ("league", "tarnholt"), ("roles", "chief"), ("Person", "chief"), ("IsMinor", "true")]);
        Assert.Equal(HttpStatusCode.Redirect, status);
        using var store = demo.Desk.Place.Open();
        var person = store.People.Single(p => p.Key == "manager-pel-sb8u-1");
        Assert.Equal(("Ilse", "pellwick"), (person.Given, person.League));
        Assert.DoesNotContain(store.Roles.Where(r => r.Person == person.Key).AsEnumerable(), r => r.Role == Role.Chief);
    }

    [Fact]
    public async Task Headers_forbid_what_the_desk_does_not_use_and_redirects_stay_at_home()
    {
        using var door = new Door(demo.Desk!.Address, "chief");
        var (_, _, response) = await door.Get("/people/youth-01");
        string Header(string name) => string.Join(',', response.Headers.TryGetValues(name, out var values) ? values : []);
        Assert.Contains("default-src 'none'", Header("Content-Security-Policy"));
        Assert.DoesNotContain("unsafe", Header("Content-Security-Policy"));
        Assert.Equal("nosniff", Header("X-Content-Type-Options"));
        Assert.Equal("DENY", Header("X-Frame-Options"));
        Assert.Equal("no-referrer", Header("Referrer-Policy"));
        Assert.Equal("", Header("Server"));
        Assert.True(response.Headers.CacheControl!.NoStore);
        foreach (var to in (string[])["https://elsewhere.example/", "//elsewhere.example", "/\\elsewhere.example", "javascript:alert(1)"])
            Assert.Equal("/", (await door.Post("/theme", [("theme", "sun"), ("to", to)])).Response.Headers.Location!.ToString());
    }

    [Fact]
    public async Task Words_typed_come_back_as_words()
    {
        using var door = new Door(demo.Desk!.Address, "chief");
        foreach (var path in (string[])["/ruling?q=<script>alert(1)</script>", "/codes?part=\"><img src=x>", "/codes/<b>x", "/people?part=<i>", "/ruling?sheet=<b>x</b>&code=<u>y", "/leagues/<b>x", "/crossover?one=<b>x"])
        {
            var (_, body, _) = await door.Get(path);
            foreach (var raw in (string[])["<script>alert", "<img src=x", "<b>x", "<i>\"", "<u>y"]) Assert.DoesNotContain(raw, body);
        }
    }
}
