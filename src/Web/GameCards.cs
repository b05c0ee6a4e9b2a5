using Microsoft.EntityFrameworkCore;
using Umpirage.District.Calendar;
using Umpirage.District.Cards;
using Umpirage.District.People;
using Umpirage.Rules.Ground;
using Umpirage.Store;

namespace Umpirage.Web;

/// <summary>The cards of a game as far as somebody may have them.</summary>
public static class GameCards
{
    /// <summary>Plans of the cards that may be handed out; those of the crew and of pitchers only to whom these may be named.</summary>
    /// <param name="choose">Those of them that are wanted; nothing is worked out for the others.</param>
    public static (CardGame Game, IReadOnlyList<CardPlan> Plans, IReadOnlyList<CardPlan> Chosen)? Of(DistrictStore store, Shelf shelf, Viewer viewer, CrewSight sight, string key, Func<IReadOnlyList<CardPlan>, IEnumerable<CardPlan>> choose)
    {
        if (store.Games.AsNoTracking().FirstOrDefault(g => g.Key == key) is not { } game) return null;
        var reader = Reader(store, viewer, sight, game);
        List<CardPlan> plans = [.. shelf.CardPlans.Where(reader.May)], chosen = [.. choose(plans)];
        return (CardBook.Of(store, shelf.Cards, game, reader with { Pitchers = reader.Pitchers && chosen.Exists(p => p.Makes(CardPlan.OfPitchers)) }), plans, chosen);
    }

    /// <summary>Who sees the crew of a game sees it on a card: those who set crews of the home league, and those in it with their guardians; full names only who may see people.</summary>
    private static CardReader Reader(DistrictStore store, Viewer viewer, CrewSight sight, ScheduledGame game)
    {
        var league = store.Teams.Find(game.Home)!.League;
        var own = sight.Of(store, [game]).Any(a => a.Person is { } who && viewer.May(Deed.SeeCrews, person: who));
        return new(own || viewer.May(Deed.SeeCrews, league: league), viewer.May(Deed.SeePeople, league: league), viewer.May(Deed.SeeEligibility), sight);
    }

    public static Card? Make(Shelf shelf, CardPlan plan, CardGame game, List<Finding> findings) => CardMaker.Of(plan, game, shelf.Cards, findings);
}
