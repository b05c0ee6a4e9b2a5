using Microsoft.AspNetCore.Mvc;
using Umpirage.District.Options;
using Umpirage.District.People;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Store;
using Umpirage.Web.Parts;

namespace Umpirage.Web.Deeds;

/// <summary>Proposes a layer of local options, and publishes one under a version that never changes again.</summary>
internal static class OptionDeeds
{
    public static void Map(WebApplication app)
    {
        app.MapPost("/options", ([FromForm] string league, [FromForm] string text, [FromForm] string? deed, Sitting sitting, Shelf shelf, DistrictStore store) =>
        {
            var viewer = sitting.Viewer;
            if (!viewer.May(Deed.ProposeOption, league: league)) return Results.StatusCode(StatusCodes.Status403Forbidden);
            text = Typed.Cut(text, 60_000).ReplaceLineEndings("\n") + "\n";
            var layer = LayerReader.Read("proposal.layer", text, shelf.Book.Roster, []);
            if (deed != "propose" || layer.Name == "") return Doors.Show<OptionShown>(new { Text = text, League = league, Leagues = Own(store, viewer) });
            // a league writes under its own name only: nobody proposes another league's layer, or the district's
            if (!viewer.Is(Role.Chief) && !Words.Same(layer.Name, league)) return Doors.Faulty("Layer", layer.Name, $"your own league's name: {league}");
            store.Actor = sitting.Actor;
            var known = store.Options.Where(o => o.Layer == layer.Name).OrderByDescending(o => o.Version).FirstOrDefault();
            var version = known is null ? 1 : known.Status == OptionStatus.Proposed ? known.Version : known.Version + 1;
            store.Put(new LocalOption(layer.Name, version, OptionStatus.Proposed, league, text, viewer.Person!.Key, sitting.UtcNow));
            store.SaveChanges();
            return Results.Redirect($"/options/{Uri.EscapeDataString(layer.Name)}");
        }).Needs(Deed.ProposeOption);
        app.MapPost("/options/{name}/publish", (string name, [FromForm] int version, Sitting sitting, Shelf shelf, DistrictStore store) =>
        {
            if (store.Options.Find(name, version) is not { Status: OptionStatus.Proposed } option) return Results.NotFound();
            var findings = OptionReading.Of(shelf, option.Text).Findings;
            if (findings.Count > 0) return Doors.Faulty([.. findings.Select(f => new FieldFault($"line {f.Line}", option.Layer, f.Message))]);
            store.Actor = sitting.Actor;
            store.Put(option with { Status = OptionStatus.Published, At = sitting.UtcNow });
            store.SaveChanges();
            shelf.Renew();
            return Results.Redirect($"/options/{Uri.EscapeDataString(name)}");
        }).Needs(Deed.PublishOption);
    }

    private static IReadOnlyList<League> Own(DistrictStore store, Viewer viewer) => [.. store.Leagues.OrderBy(l => l.Name).AsEnumerable().Where(l => viewer.May(Deed.ProposeOption, league: l.Key))];
}
