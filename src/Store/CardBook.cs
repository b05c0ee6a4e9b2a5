using Microsoft.EntityFrameworkCore;
using Umpirage.District.Calendar;
using Umpirage.District.Cards;
using Umpirage.District.Crews;
using Umpirage.District.Options;
using Umpirage.District.People;
using Umpirage.Rules.Ground;

namespace Umpirage.Store;

/// <summary>What a reader of cards may have on them beside what is open to everybody.</summary>
/// <param name="Crew">The crew, and whether by full name; a minor is a given name and a letter at most.</param>
/// <param name="Pitchers">Who may pitch.</param>
/// <param name="Sight">How far the reader sees crews.</param>
public sealed record CardReader(bool Crew, bool FullNames, bool Pitchers, CrewSight Sight)
{
    public static CardReader All { get; } = new(true, true, true, CrewSight.All);

    /// <summary>Whether a card may be handed out at all: one that names the crew or pitchers, only to whom they may be named.</summary>
    public bool May(CardPlan plan) => (Crew || !plan.Makes(CardPlan.OfCrew)) && (Pitchers || !plan.Makes(CardPlan.OfPitchers));
}

/// <summary>Draws a game for its cards from the store.</summary>
public static class CardBook
{
    /// <summary>Games of the season before this one that tell which code an umpire is used to.</summary>
    private const int Season = 120;

    public static CardGame Of(DistrictStore store, CardCodes codes, ScheduledGame game, CardReader reader)
    {
        var (home, visitor, division, diamond) = (store.Teams.Find(game.Home)!, store.Teams.Find(game.Visitor)!, store.Divisions.Find(game.Division)!, store.Diamonds.Find(game.Diamond)!);
        var (hosts, guests) = (store.Leagues.Find(home.League)!, store.Leagues.Find(visitor.League)!);
        var seats = reader.Sight.Of(store, [game]);
        return new(game, division, visitor, home, guests, hosts, diamond, store.Parks.Find(diamond.Park)!, store.District.AsNoTracking().Single().Zone, GameCode.Of(store, codes.Book, game))
        {
            Benches = hosts.Key == guests.Key ? [] : [.. new[] { guests, hosts }.Select(l => (l.Name, Governing.Code(codes.Book, division, l, l)))],
            Usual = UsedTo(store, codes, game, division, seats, reader.Sight),
            Crew = reader.Crew ? [.. seats.OrderBy(s => Place(s.Place)).Select(s => Seat(store, game, s, reader))] : [],
            Coordinator = reader.Crew ? store.People.Where(p => store.Coordinations.Any(c => c.Game == game.Key && c.Person == p.Key)).AsEnumerable().Select(p => reader.FullNames ? p.ListName : p.Given).FirstOrDefault() : null,
            Staffs = reader.Pitchers ? [.. PitchingBook.Of(store, codes.Pitching, game.Day, [game.Visitor, game.Home], game.Key, costs: false).OrderBy(s => s.Team.Key == game.Visitor ? 0 : 1)
                .Select(s => new CardStaff(s.Team.Name, [.. s.Arms.Select(a => new CardArm(a.Place.Jersey, a.Name, a.Answer))]))] : [],
        };
    }

    private static int Place(string place) => CrewPlace.All.TakeWhile(p => p != place).Count();

    /// <summary>The divisions that the plate umpire worked of late, the most worked first; then the one next to this among those of its game, and those of the other game nearest in age.</summary>
    private static IReadOnlyList<(string Name, string Address)> UsedTo(DistrictStore store, CardCodes codes, ScheduledGame game, Division division, IReadOnlyList<Assignment> seats, CrewSight sight)
    {
        var divisions = store.Divisions.AsNoTracking().Where(d => d.Crew > 0).AsEnumerable().OrderBy(d => Age(codes, d)).ThenBy(d => d.Key, StringComparer.Ordinal).ToList();
        var plate = seats.FirstOrDefault(s => s.Place == CrewPlace.Plate)?.Person;
        var (from, until) = (game.Start.AddDays(-Season), sight.Now < game.Start ? sight.Now.Value : game.Start);
        List<string> worked = plate is null ? [] : [.. store.Games.Where(g => g.Start < until && g.Start > from && g.Division != game.Division && store.Assignments.Any(a => a.Game == g.Key && a.Person == plate))
            .GroupBy(g => g.Division).Select(g => new { g.Key, Count = g.Count() }).AsEnumerable().OrderByDescending(g => g.Count).ThenBy(g => g.Key, StringComparer.Ordinal).Select(g => g.Key)];
        return [.. worked.Select(w => divisions.FirstOrDefault(d => d.Key == w)).Append(Next(divisions, division)).Append(Beside(divisions, division)).OfType<Division>().Where(d => d.Code != division.Code).DistinctBy(d => d.Code).Select(d => (d.Key, d.Code))];
    }

    /// <summary>The place of a division among those of the roster, youngest first.</summary>
    private static int Age(CardCodes codes, Division d) => codes.Book.Roster.PlaceOf(CodeAddress.Read(d.Code)?.Division ?? "");

    private static string Game(Division d) => CodeAddress.Read(d.Code)?.Game ?? "";

    /// <summary>The division of the other game for the same age.</summary>
    private static Division? Beside(List<Division> divisions, Division division) =>
        divisions.FirstOrDefault(d => Game(d) != Game(division) && CodeAddress.Read(d.Code)?.Division == CodeAddress.Read(division.Code)?.Division);

    private static Division? Next(List<Division> divisions, Division division)
    {
        var same = divisions.Where(d => Game(d) == Game(division)).ToList();
        var at = same.FindIndex(d => d.Key == division.Key);
        return same.Count < 2 ? null : same[at > 0 ? at - 1 : at + 1];
    }

    private static CardSeat Seat(DistrictStore store, ScheduledGame game, Assignment seat, CardReader reader)
    {
        if (seat.Person is null || store.People.Find(seat.Person) is not { } person) return new(seat.Place, null, false, null);
        var (start, end) = (game.Start.Date, game.Start);
        var earlier = store.Games.AsNoTracking().Where(g => g.Start >= start && g.Start < end).AsEnumerable().Where(g => g.Stands).ToDictionary(g => g.Key);
        var before = reader.Sight.Of(store, earlier.Values).Where(a => a.Person == seat.Person).Select(a => earlier[a.Game]).MaxBy(g => g.Start);
        return new(seat.Place, reader.FullNames ? person.ListName : person.Given, person.IsMinor, before is null ? null : $"before it: {before.Start:H:mm} on {store.Diamonds.Find(before.Diamond)!.Name}");
    }
}
