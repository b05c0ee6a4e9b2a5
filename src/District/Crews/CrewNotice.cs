using System.Globalization;
using Umpirage.District.Calendar;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Crews;

/// <summary>What one person is to be told of changed crews: games gained, lost and moved, and new partners.</summary>
public sealed record CrewNotice(string Person, IReadOnlyList<string> Lines)
{
    /// <param name="told">Lines that are, were or would be published together, at one moment.</param>
    public static IReadOnlyList<CrewNotice> Of(CrewRecords records, IReadOnlyList<PublishedPlace> told)
    {
        if (told.Count == 0) return [];
        List<PublishedPlace> earlier = [.. records.Published.Where(p => p.At < told[0].At)];
        var before = Published.Of(earlier);
        var crews = Published.Of(earlier.Concat(told)).Places.Where(p => p.Person is not null).Select(p => (p.Game, p.Place, Person: p.Person!)).OrderBy(s => s.Place, StringComparer.Ordinal).ToLookup(s => s.Game);
        var (games, teams, diamonds, people) = (records.Games.ToDictionary(g => g.Key), records.Teams.ToDictionary(t => t.Key), records.Diamonds.ToDictionary(d => d.Key), records.People.ToDictionary(p => p.Key));
        var lines = new Dictionary<string, List<string>>();
        var concerned = told.Select(t => new PlaceChange(before.Find(t.Game, t.Place), t)).Where(c => c.Concerns).ToList();
        foreach (var change in concerned)
        {
            var game = games[change.Game];
            if (change.From is { } lost && lost != change.To) Tell(lost, $"You no longer have the {change.Place}: {Game(change.Was!)}{(game.Stands ? "" : " (the game is not played then)")}.");
            if (change.To is { } gained && gained != change.From) Tell(gained, $"You have the {change.Place}: {Game(change.Now)}{With(gained, game.Key)}.");
            if (change.Moves) Tell(change.To!, $"Moved: the {change.Place} of {Game(change.Was!)} is now {When(change.Now)}.");
        }
        // who stays hears of new partners
        foreach (var crew in concerned.Where(c => c.From != c.To).GroupBy(c => c.Game))
            foreach (var (game, place, person) in crews[crew.Key].Where(s => crew.All(c => c.Place != s.Place)))
                Tell(person, $"Your {place} stands, the crew changes: {Game(crew.First().Now)}{(With(person, game) is { Length: > 0 } with ? with : ", alone")}.");
        return [.. lines.OrderBy(l => people[l.Key].ListName, StringComparer.Ordinal).ThenBy(l => l.Key, StringComparer.Ordinal).Select(l => new CrewNotice(l.Key, l.Value))];

        void Tell(string person, string line)
        {
            if (!lines.TryGetValue(person, out var own)) lines[person] = own = [];
            own.Add(line);
        }
        string When(PublishedPlace place) => string.Create(CultureInfo.InvariantCulture, $"{place.Start:ddd d MMM H:mm}, {diamonds[place.Diamond].Name}");
        string Game(PublishedPlace place) => $"{When(place)}, {games[place.Game].Division}, {teams[games[place.Game].Visitor].Name} at {teams[games[place.Game].Home].Name}";
        // a partner is known by the first name
        string With(string person, string game) => crews[game].Where(s => s.Person != person).Select(s => $"{people[s.Person].Given} ({s.Place})").ToList() is { Count: > 0 } partners ? $", with {Words.And(partners)}" : "";
    }

    /// <summary>The letter's text; of a minor it speaks to the guardians.</summary>
    public static string Text(People.Person person, IReadOnlyList<string> lines) =>
        $"{(person.IsMinor ? $"To the guardians of {person.ListName}: the crews were published; for {person.Given} this is new:" : $"{person.Given}, the crews were published; for you this is new:")}\n\n{string.Join('\n', lines)}\n\nPlease say at once when something cannot be.";
}
