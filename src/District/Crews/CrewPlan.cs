using Umpirage.District.Calendar;
using Umpirage.District.Options;
using Umpirage.District.People;

namespace Umpirage.District.Crews;

/// <summary>
/// A plan: games and who sits where, with what is on record about both. It does not change; <see cref="With"/> gives another that shares all but
/// the places that differ.
/// </summary>
public sealed class CrewPlan
{
    private readonly Index index;
    private readonly IReadOnlyDictionary<string, Seated[]> games, persons;

    private sealed record Index(
        IReadOnlyDictionary<string, CrewGame> Games, IReadOnlyDictionary<string, CrewPerson> People, IReadOnlyDictionary<string, Seated[]> ByGame,
        IReadOnlyDictionary<string, Seated[]> ByPerson, IReadOnlyDictionary<string, CrewGame[]> ByCoordinator, IReadOnlyDictionary<string, int> Divisions, CrewRecords Records);

    private CrewPlan(Index index, IReadOnlyDictionary<string, Seated[]> games, IReadOnlyDictionary<string, Seated[]> persons) => (this.index, this.games, this.persons) = (index, games, persons);

    /// <summary>
    /// A plan from records. Games that were played or broken off are in it beside those ahead, since they fill their umpires' day as any other; those called
    /// off are not, nor places that refer to what is not on record.
    /// </summary>
    public static CrewPlan Of(CrewRecords records, UmpiresCodes codes)
    {
        var people = PeopleOf(records);
        var (divisions, teams, leagues) = (records.Divisions.ToDictionary(d => d.Key), records.Teams.ToDictionary(t => t.Key), records.Leagues.ToDictionary(l => l.Key));
        var (diamonds, parks) = (records.Diamonds.ToDictionary(d => d.Key), records.Parks.ToDictionary(p => p.Key));
        var endings = records.Endings.ToDictionary(e => e.Game, e => e.At);
        var coordinators = records.Coordinations.ToDictionary(c => c.Game, c => c.Person);
        var games = new Dictionary<string, CrewGame>();
        foreach (var game in records.Games.Where(g => g.Stands))
        {
            var (home, visitor, division) = (teams[game.Home], teams[game.Visitor], divisions[game.Division]);
            var code = codes.Of(Governing.Code(codes.Book, division, leagues[home.League], leagues[visitor.League]), DateOnly.FromDateTime(game.Start));
            var known = endings.TryGetValue(game.Key, out var at);
            games[game.Key] = new(game, known ? at : game.Start.AddMinutes(code.PlannedMinutes), known, division, diamonds[game.Diamond], parks[diamonds[game.Diamond].Park], home, visitor, code,
                coordinators.TryGetValue(game.Key, out var adult) ? people.GetValueOrDefault(adult) : null);
        }
        var seats = records.Assignments.Where(a => a.Person is not null && games.ContainsKey(a.Game) && people.ContainsKey(a.Person))
            .Select(a => new Seated(games[a.Game], a.Place, people[a.Person!])).ToList();
        var index = new Index(games, people, seats.GroupBy(s => s.Game.Key).ToDictionary(g => g.Key, g => g.ToArray()), seats.GroupBy(s => s.Person.Key).ToDictionary(g => g.Key, g => g.ToArray()),
            games.Values.Where(g => g.Coordinator is not null).GroupBy(g => g.Coordinator!.Key).ToDictionary(g => g.Key, g => g.ToArray()),
            divisions.ToDictionary(d => d.Key, d => Place(codes.Book, d.Value)), records);
        return new(index, new Dictionary<string, Seated[]>(), new Dictionary<string, Seated[]>());
    }

    private static int Place(Rules.Codes.Codebook book, Division division) =>
        Rules.Ground.CodeAddress.Read(division.Code) is { } address ? book.Roster.PlaceOf(address.Division) : -1;

    private static Dictionary<string, CrewPerson> PeopleOf(CrewRecords records)
    {
        var officials = records.Officials.ToDictionary(o => o.Person);
        var (clearances, certificates, hours, aways) = (records.Clearances.ToLookup(c => c.Person), records.Certificates.ToLookup(c => c.Person), records.Hours.ToLookup(h => h.Person), records.Aways.ToLookup(a => a.Person));
        var (approvals, interests, roles) = (records.Approvals.ToLookup(a => a.Child), records.Interests.ToLookup(i => i.Person), records.Roles.ToLookup(r => r.Person));
        var pairings = records.Pairings.SelectMany(p => new[] { (Key: p.Person, p), (Key: p.Other, p) }).ToLookup(x => x.Key, x => x.p);
        var (guardians, elsewhere, homes) = (records.Guardianships.ToLookup(g => g.Child, g => g.Guardian), records.Elsewhere.ToLookup(e => e.Person), records.Homes.ToDictionary(h => h.Person));
        return records.People.ToDictionary(p => p.Key, p => new CrewPerson(p)
        {
            Official = officials.GetValueOrDefault(p.Key), Clearances = [.. clearances[p.Key]], Certificates = [.. certificates[p.Key]], Hours = Availability.United(hours[p.Key]), Aways = [.. aways[p.Key]], Approvals = [.. approvals[p.Key]],
            Interests = [.. interests[p.Key]], Pairings = [.. pairings[p.Key]], Roles = [.. roles[p.Key]], Guardians = guardians[p.Key].ToHashSet(), Elsewhere = [.. elsewhere[p.Key]],
            Home = homes.GetValueOrDefault(p.Key),
        });
    }

    public IEnumerable<CrewGame> Games => index.Games.Values;
    public IEnumerable<CrewPerson> People => index.People.Values;
    public IEnumerable<CrewPerson> Officials => index.People.Values.Where(p => p.Official is not null);
    public CrewRecords Records => index.Records;
    public CrewGame? Game(string key) => index.Games.GetValueOrDefault(key);
    public CrewPerson? Person(string key) => index.People.GetValueOrDefault(key);
    public double? HeatOn(DateOnly day) => index.Records.Heat.TryGetValue(day, out var f) ? f : null;

    /// <summary>A division's place in the roster's order, youngest first; -1 where it has none.</summary>
    public int DivisionPlace(string division) => index.Divisions.GetValueOrDefault(division, -1);

    /// <summary>Those who sit in a game's crew.</summary>
    public IReadOnlyList<Seated> CrewOf(CrewGame game) => games.TryGetValue(game.Key, out var changed) ? changed : index.ByGame.GetValueOrDefault(game.Key, []);

    /// <summary>Everything that somebody works.</summary>
    public IReadOnlyList<Seated> Of(CrewPerson person) => persons.TryGetValue(person.Key, out var changed) ? changed : index.ByPerson.GetValueOrDefault(person.Key, []);

    public IReadOnlyList<CrewGame> CoordinatedBy(CrewPerson person) => index.ByCoordinator.GetValueOrDefault(person.Key, []);

    public IEnumerable<Seated> Seats => index.Games.Values.SelectMany(CrewOf);

    /// <summary>The games of somebody's day in the order of their starts, those elsewhere among them.</summary>
    public IReadOnlyList<DayGame> DayOf(CrewPerson person, DateOnly day)
    {
        var list = new List<DayGame>();
        foreach (var s in Of(person)) if (s.Game.Day == day) list.Add(new(s.Game.Start, s.Game.End, s.IsPlate, s));
        foreach (var e in person.Elsewhere) if (DateOnly.FromDateTime(e.Start) == day) list.Add(new(e.Start, e.Until, e.Place == CrewPlace.Plate, null));
        list.Sort((a, b) => a.Start != b.Start ? a.Start.CompareTo(b.Start) : string.CompareOrdinal(a.Seated?.Game.Key, b.Seated?.Game.Key));
        return list;
    }

    /// <summary>Places of a game that nobody has, the most needed first.</summary>
    public IReadOnlyList<string> Open(CrewGame game)
    {
        var crew = CrewOf(game);
        return [.. CrewPlace.Of(game.Division).Where(p => crew.All(s => s.Place != p))];
    }

    /// <summary>The plan with one place given to somebody, or left open.</summary>
    public CrewPlan With(CrewGame game, string place, CrewPerson? person)
    {
        var (g, p) = (new Dictionary<string, Seated[]>(games), new Dictionary<string, Seated[]>(persons));
        if (CrewOf(game).FirstOrDefault(s => s.Place == place) is { } before)
        {
            g[game.Key] = [.. CrewOf(game).Where(s => s != before)];
            p[before.Person.Key] = [.. Of(before.Person).Where(s => s != before)];
        }
        if (person is not null)
        {
            var now = new Seated(game, place, person);
            g[game.Key] = [.. g.GetValueOrDefault(game.Key) ?? CrewOf(game), now];
            p[person.Key] = [.. p.GetValueOrDefault(person.Key) ?? Of(person), now];
        }
        return new(index, g, p);
    }

    /// <summary>The plan with nobody in the crews of these games.</summary>
    public CrewPlan Without(IEnumerable<CrewGame> emptied)
    {
        var gone = emptied.Select(g => g.Key).ToHashSet();
        var (g, p) = (new Dictionary<string, Seated[]>(games), new Dictionary<string, Seated[]>(persons));
        foreach (var key in gone)
        {
            foreach (var seat in CrewOf(index.Games[key])) p[seat.Person.Key] = [.. (p.GetValueOrDefault(seat.Person.Key) ?? Of(seat.Person)).Where(s => s.Game.Key != key)];
            g[key] = [];
        }
        return new(index, g, p);
    }

    /// <summary>The plan with many places given at once; they have to be open.</summary>
    public CrewPlan With(IEnumerable<(CrewGame Game, string Place, CrewPerson Person)> given)
    {
        var (g, p) = (new Dictionary<string, Seated[]>(games), new Dictionary<string, Seated[]>(persons));
        foreach (var (game, place, person) in given)
        {
            var now = new Seated(game, place, person);
            g[game.Key] = [.. g.GetValueOrDefault(game.Key) ?? CrewOf(game), now];
            p[person.Key] = [.. p.GetValueOrDefault(person.Key) ?? Of(person), now];
        }
        return new(index, g, p);
    }

    /// <summary>The plan as one on its own, so that many changes of it are made quickly.</summary>
    public CrewPlan Settled()
    {
        var byGame = index.Games.Values.Select(x => (x.Key, Seats: CrewOf(x))).Where(x => x.Seats.Count > 0).ToDictionary(x => x.Key, x => x.Seats.ToArray());
        var byPerson = byGame.Values.SelectMany(s => s).GroupBy(s => s.Person.Key).ToDictionary(s => s.Key, s => s.ToArray());
        return new(index with { ByGame = byGame, ByPerson = byPerson }, new Dictionary<string, Seated[]>(), new Dictionary<string, Seated[]>());
    }

    /// <summary>The same plan with a game at another start: to ask from when on somebody could.</summary>
    public CrewPlan At(CrewGame game, DateTime start)
    {
        var moved = game with { Game = game.Game with { Start = start }, End = start + (game.End - game.Start) };
        var all = new Dictionary<string, CrewGame>(index.Games) { [game.Key] = moved };
        var g = new Dictionary<string, Seated[]>(games) { [game.Key] = [.. CrewOf(game).Select(s => s with { Game = moved })] };
        var p = new Dictionary<string, Seated[]>(persons);
        foreach (var s in g[game.Key]) p[s.Person.Key] = [.. (p.GetValueOrDefault(s.Person.Key) ?? Of(s.Person)).Select(x => x.Game.Key == game.Key && x.Place == s.Place ? s : x)];
        return new(index with { Games = all }, g, p);
    }

    /// <summary>The plan's places as they are kept, open ones too.</summary>
    public IEnumerable<Assignment> Assignments(IEnumerable<CrewGame> of) => of.SelectMany(game =>
        CrewPlace.All.Where(p => CrewPlace.Of(game.Division).Contains(p) || CrewOf(game).Any(s => s.Place == p)).Select(place => new Assignment(game.Key, place, CrewOf(game).FirstOrDefault(s => s.Place == place)?.Person.Key)));
}
