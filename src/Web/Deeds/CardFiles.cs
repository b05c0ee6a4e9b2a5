using Umpirage.District.Cards;
using Umpirage.District.People;
using Umpirage.Paper;
using Umpirage.Rules.Ground;
using Umpirage.Store;

namespace Umpirage.Web.Deeds;

/// <summary>Cards of a game to print. Open to all as the schedule is; a card that names people only to whom they may be named.</summary>
internal static class CardFiles
{
    /// <summary>The name under which all cards come in one document.</summary>
    public const string All = "all";

    public static void Map(WebApplication app) => app.MapGet("/games/{key}/cards/{card}.pdf", Pdf).Needs(Deed.SeeVenues);

    private static IResult Pdf(string key, string card, Sitting sitting, Shelf shelf, DistrictStore store)
    {
        if (GameCards.Of(store, shelf, sitting.Viewer, sitting.Sight, key, plans => plans.Where(p => card == All || p.Name == card)) is not var (game, _, asked)) return Results.NotFound();
        var findings = new List<Finding>();
        var cards = asked.Select(p => GameCards.Make(shelf, p, game, findings)).OfType<Card>().ToList();
        if (asked.Count == 0) return Results.NotFound();
        if (findings.Count > 0) return Results.Text(string.Join('\n', findings.Select(f => f.ToString()).Distinct()), statusCode: StatusCodes.Status422UnprocessableEntity);
        return Results.File(CardPdf.Of(cards, Leaf.Usual), "application/pdf", $"{key}-{card}.pdf");
    }
}
