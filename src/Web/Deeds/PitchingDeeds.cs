using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.People;
using Umpirage.Store;
using Umpirage.Store.Files;

namespace Umpirage.Web.Deeds;

/// <summary>Keeps a pitch count: the first one of a counter, or a correction beside it.</summary>
internal static class PitchingDeeds
{
    public static void Map(WebApplication app) =>
        app.MapPost("/pitchers/count", ([FromForm] string game, [FromForm] string player, [FromForm] string team, IFormCollection form, Sitting sitting, DistrictStore store) =>
        {
            var league = store.Teams.AsNoTracking().Where(t => t.Key == team).Select(t => t.League).FirstOrDefault();
            if (league is null || !sitting.Viewer.May(Deed.CountPitches, league: league, team: team)) return Results.StatusCode(StatusCodes.Status403Forbidden);
            if (!store.RosterPlaces.Any(r => r.Player == player && r.Team == team)) return Results.NotFound();
            string Cell(string name) => Typed.Cut(form[name], 60);
            var cells = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase)
            {
                ["game"] = Typed.Cut(game, 64), ["player"] = Typed.Cut(player, 64), ["team"] = Typed.Cut(team, 64), ["counter"] = Cell("counter"), ["pitches"] = Cell("pitches"), ["before last batter"] = Cell("before"),
                ["innings"] = Cell("innings"), ["innings caught"] = Cell("caught") is "" ? "0" : Cell("caught"), ["outs"] = Cell("outs"),
            };
            store.Actor = sitting.Actor;
            // the same door as a file's, with the same faults
            var kept = Import.Typed(store, new LogFile(), cells);
            if (!kept.Fine) return Doors.Faulty(kept.InFields);
            return Results.Redirect($"/pitchers/{Uri.EscapeDataString(team)}/{Uri.EscapeDataString(player)}?game={Uri.EscapeDataString(game)}");
        }).Needs(Deed.CountPitches);
}
