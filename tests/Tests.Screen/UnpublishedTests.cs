using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.Calendar;
using Umpirage.District.People;
using Umpirage.Store;

namespace Umpirage.Tests.Screen;

/// <summary>Crews that are not published yet: nobody sees them who does not set crews, on any page. Once they are published those see them whom they concern.</summary>
[Collection("screen")]
public class UnpublishedTests(FileDesk demo) : IClassFixture<FileDesk>
{
    private const string Umpire = "umpire-050", Partner = "umpire-044", Youth = "youth-01", Guardian = "guardian-01";

    private sealed record Draft(ScheduledGame Game, string League, string Park, Person Umpire, Person Partner, Person Youth, ScheduledGame YouthGame);

    /// <summary>Two games of the coming week, in draft: two umpires on one, a minor on the other. Set without the check of crews, which is not the matter here.</summary>
    private Draft Make()
    {
        using var store = demo.Desk!.Place.Open();
        var (from, until) = (new DateTime(2026, 5, 18), new DateTime(2026, 5, 25));
        var leagues = store.Teams.ToDictionary(t => t.Key, t => t.League);
        var coming = store.Games.AsNoTracking().Where(g => g.Start >= from && g.Start < until).OrderBy(g => g.Start).ThenBy(g => g.Key).ToList().Where(g => g.IsAhead).ToList();
        var game = coming.First(g => leagues[g.Home] == "tarnholt" && store.Divisions.Find(g.Division) is { Crew: > 1 });
        var youth = coming.First(g => store.Divisions.Find(g.Division) is { YouthBase: true });
        foreach (var place in (Assignment[])[new(game.Key, "plate", Umpire), new(game.Key, "base", Partner), new(youth.Key, "youth base", Youth)]) store.Put(place);
        store.SaveChanges();
        Person Of(string key) => store.People.Find(key)!;
        return new(game, leagues[game.Home], store.Diamonds.Find(game.Diamond)!.Park, Of(Umpire), Of(Partner), Of(Youth), youth);
    }

    /// <summary>Each page as somebody sees it, and what would stand there if they saw the draft.</summary>
    private static IEnumerable<(string Seat, string Path, string Tells)> Looks(Draft draft, string feed)
    {
        var (game, youth) = (draft.Game, draft.YouthGame);
        string Day(ScheduledGame of) => of.Start.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        string Own(ScheduledGame of) => $"/crews/swaps/new?person={(of == youth ? Youth : Umpire)}&amp;game={of.Key}";
        return
        [
            (Umpire, "/", $"plate, {game.Division}:"), (Partner, "/", $"base, {game.Division}:"), (Youth, "/", $"youth base, {youth.Division}:"), (Guardian, "/", $"youth base, {youth.Division}:"),
            (Umpire, $"/games/{game.Key}", "<h2>Crew</h2>"), (Youth, $"/games/{youth.Key}", "<h2>Crew</h2>"), ($"president-{draft.League}", $"/games/{game.Key}", "<h2>Crew</h2>"),
            (Umpire, "/crews/me?week=2026-05-18", Own(game)), (Umpire, $"/crews/person/{Umpire}?week=2026-05-18", Own(game)), (Guardian, $"/crews/person/{Youth}?week=2026-05-18", Own(youth)),
            (Umpire, $"/crews/swaps/new?person={Umpire}&game={game.Key}&place=plate", "Give it away"),
            (Umpire, feed, "SUMMARY:plate\\, " + game.Division),
            ($"president-{draft.League}", $"/crews/park/{draft.Park}?day={Day(game)}", $"<b>{draft.Umpire.ListName}</b>"), ($"president-{draft.League}", $"/crews?night={Day(game)}", $"<span>{draft.Umpire.ListName}</span>"),
            (Umpire, $"/games/{game.Key}/cards?card=crew", $"Plate: {draft.Umpire.Given}"), ($"president-{draft.League}", $"/games/{game.Key}/cards?card=crew", $"Plate: {draft.Umpire.ListName}"),
            ("umpire-001", $"/evaluate/{game.Key}/{Umpire}", "action=\"/evaluations\""),
        ];
    }

    [Fact]
    public async Task Nobody_sees_a_draft_who_does_not_set_crews_and_published_it_is_seen()
    {
        var draft = Make();
        using var own = new Door(demo.Desk!.Address, Umpire);
        var (_, made, _) = await own.Post("/me/feed", [("person", Umpire)]);
        var feed = Regex.Match(made, "/feeds/own/[0-9a-f]+\\.ics").Value;
        Assert.NotEqual("", feed);
        async Task<List<string>> Seen()
        {
            var seen = new List<string>();
            foreach (var (seat, path, tells) in Looks(draft, feed))
            {
                using var door = new Door(demo.Desk.Address, seat);
                var (_, body, _) = await door.Get(path);
                if (WebUtility.HtmlDecode(body).Contains(WebUtility.HtmlDecode(tells), StringComparison.Ordinal)) seen.Add($"{seat} {path}");
            }
            return seen;
        }
        Assert.Empty(await Seen());
        // the assigner sees it all along
        using (var assigner = new Door(demo.Desk.Address, "assigner"))
        {
            Assert.Contains("<h2>Crew</h2>", (await assigner.Get($"/games/{draft.Game.Key}")).Body);
            Assert.Contains(draft.Umpire.ListName, (await assigner.Get($"/crews/park/{draft.Park}?day={draft.Game.Start:yyyy-MM-dd}")).Body);
        }
        using (var store = demo.Desk.Place.Open())
        {
            var records = CrewReader.Read(store);
            string[] keys = [draft.Game.Key, draft.YouthGame.Key];
            store.AddRange(District.Crews.Published.Of([]).Against(records, records.Games.Where(g => keys.Contains(g.Key)), new(2026, 5, 15, 0, 0, 0, DateTimeKind.Utc)).Select(c => c.Now));
            store.SaveChanges();
        }
        Assert.Equal(Looks(draft, feed).Select(l => $"{l.Seat} {l.Path}"), await Seen());
        // a change by hand is a draft again: everybody still reads what was published
        using (var store = demo.Desk.Place.Open())
        {
            store.Put(new Assignment(draft.Game.Key, "plate", null));
            store.Put(new Assignment(draft.YouthGame.Key, "youth base", null));
            store.SaveChanges();
        }
        Assert.Equal(Looks(draft, feed).Select(l => $"{l.Seat} {l.Path}"), await Seen());
    }
}
