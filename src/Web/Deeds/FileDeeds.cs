using System.Text;
using Microsoft.AspNetCore.Mvc;
using Umpirage.District.People;
using Umpirage.Store;
using Umpirage.Store.Files;
using Umpirage.Web.Parts;

namespace Umpirage.Web.Deeds;

/// <summary>Files in and out.</summary>
internal static class FileDeeds
{
    public static void Map(WebApplication app)
    {
        app.MapPost("/files", async ([FromForm] string kind, [FromForm] string? deed, IFormFile file, Sitting sitting, Shelf shelf, DistrictStore store) =>
        {
            if (FileKind.Named(kind) is not { } known) return Results.BadRequest();
            using var bytes = new MemoryStream();
            await file.CopyToAsync(bytes);
            store.Actor = sitting.Actor;
            var imported = Import.Run(store, known, bytes.ToArray(), deed != "take", shelf.Book);
            if (deed == "take" && imported.Fine && known is LayerFile) shelf.Renew();
            return Doors.Show<ImportShown>(new { Kind = known.Name, Tried = deed != "take", Result = imported }, imported.Fine ? 200 : 422);
        }).Needs(Deed.MoveData);
        app.MapGet("/files/{kind}.csv", (string kind, DistrictStore store) =>
            FileKind.Named(kind) is { } known ? Results.File(Encoding.UTF8.GetBytes(Export.Run(store, known)), "text/csv", $"{known.Name}.csv") : Results.NotFound()).Needs(Deed.MoveData);
    }
}
