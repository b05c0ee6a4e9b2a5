using Microsoft.AspNetCore.Mvc;
using Umpirage.District.Calendar;
using Umpirage.District.People;
using Umpirage.Rules.Ground;
using Umpirage.Store;

namespace Umpirage.Web.Deeds;

/// <summary>Swaps of places: asked, answered, taken back, confirmed or refused.</summary>
internal static class SwapDeeds
{
    private const string Page = "/crews/swaps";

    public static void Map(WebApplication app)
    {
        app.MapPost(Page, ([FromForm] string person, [FromForm] string game, [FromForm] string place, [FromForm] string? other, [FromForm] string? name, [FromForm] string? otherGame, [FromForm] string? otherPlace, IFormCollection _, Sitting sitting, DistrictStore store) =>
        {
            var with = string.IsNullOrEmpty(other) ? Named(store, Typed.Cut(name, 80)) : other;
            if (with is null) return Doors.Faulty([new("name", Typed.Cut(name, 80), "the whole name of one umpire on record")]);
            store.Actor = sitting.Actor;
            var asked = new AskedSwap("", Typed.Cut(person, 64), Typed.Cut(game, 64), Typed.Cut(place, 20), Typed.Cut(with, 64), Some(otherGame), Some(otherPlace), default, SwapState.Asked);
            var (_, check, faults) = Swapping.Ask(store, asked, sitting.Viewer, sitting.Now);
            List<FieldFault> told = [.. faults, .. Swapping.Told(check, sitting.Viewer.May(Deed.SetCrews) ? null : sitting.Viewer)];
            return told.Count > 0 ? Doors.Faulty(told) : Results.Redirect(Page);
        }).Needs(Deed.SwapPlaces);
        app.MapPost(Page + "/{key}/answer", (string key, [FromForm] string say, IFormCollection _, Sitting sitting, DistrictStore store) =>
        {
            store.Actor = sitting.Actor;
            return After(say switch
            {
                "yes" or "no" => Swapping.Answer(store, key, say == "yes", sitting.Viewer, sitting.Now),
                "back" => Swapping.TakeBack(store, key, sitting.Viewer),
                _ => [new("say", Typed.Cut(say, 20), "yes, no or back")],
            });
        }).Needs(Deed.SwapPlaces);
        app.MapPost(Page + "/{key}/decide", (string key, [FromForm] string say, IFormCollection _, Sitting sitting, DistrictStore store) =>
        {
            store.Actor = sitting.Actor;
            return After(say is "yes" or "no" ? Swapping.Decide(store, key, say == "yes", sitting.Viewer, sitting.Now) : [new("say", Typed.Cut(say, 20), "yes or no")]);
        }).Needs(Deed.SetCrews);
    }

    private static IResult After(IReadOnlyList<FieldFault> faults) => faults.Count > 0 ? Doors.Faulty(faults) : Results.Redirect(Page);

    private static string? Some(string? text) => string.IsNullOrWhiteSpace(text) ? null : Typed.Cut(text, 64);

    /// <summary>One umpire by the whole name; who is found by half a name is nobody's to learn here.</summary>
    private static string? Named(DistrictStore store, string name)
    {
        var fits = store.People.Where(p => store.Officials.Any(o => o.Person == p.Key)).AsEnumerable().Where(p => Words.Same(p.ListName, name) || Words.Same($"{p.Given} {p.Family}", name)).Take(2).ToList();
        return fits.Count == 1 ? fits[0].Key : null;
    }
}
