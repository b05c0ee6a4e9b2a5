using System.Text;
using Microsoft.AspNetCore.Mvc;
using Umpirage.District.Diamonds;
using Umpirage.District.People;
using Umpirage.Paper;
using Umpirage.Store;

namespace Umpirage.Web.Deeds;

/// <summary>Drawings of a diamond; a survey and the direction it looks in, which are kept.</summary>
internal static class DiamondDeeds
{
    /// <summary>A drawing has its looks inside; nothing else in it may load or run anything.</summary>
    private const string Drawn = "default-src 'none'; style-src 'unsafe-inline'; frame-ancestors 'none'; base-uri 'none'";

    /// <summary>Text of a drawing in hundredths of its width: to be read on a desk, and on a phone.</summary>
    private const double OnDesk = 2.2, OnPhone = 4.2;

    public static void Map(WebApplication app)
    {
        app.MapGet("/diamonds/{key}/plan.svg", (string key, [AsParameters] DiamondAsked asked, string? large, DistrictStore store, Shelf shelf, Sitting sitting, HttpContext context) =>
            Laid(store, shelf, sitting, key, asked) is { } layout ? Svg(context, PlanSvg.Of(layout, Window.Infield(layout), asked.Told, letters: large == "yes" ? OnPhone : OnDesk)) : Results.NotFound()).Needs(Deed.SeeVenues);
        app.MapGet("/diamonds/{key}/sun.svg", (string key, [AsParameters] DiamondAsked asked, DistrictStore store, Shelf shelf, Sitting sitting, HttpContext context) =>
            DiamondSheet.Of(store, shelf, sitting, key, asked) is { Chosen: { } chosen } sheet && sheet.Sun(sheet.Hours(store), asked, sitting.District.Zone, []) is { } sun
                ? Svg(context, PlanSvg.Of(chosen.Layout, Window.Sky(chosen.Layout), sun: sun)) : Results.NotFound()).Needs(Deed.SeeVenues);
        app.MapGet("/diamonds/{key}/plan.pdf", (string key, [AsParameters] DiamondAsked asked, DistrictStore store, Shelf shelf, Sitting sitting) =>
            Laid(store, shelf, sitting, key, asked) is { } layout ? Results.File(PlanPdf.Of(layout, asked.Told), "application/pdf", $"{key}.pdf") : Results.NotFound()).Needs(Deed.SeeVenues);
        app.MapGet("/diamonds/{key}/plan.dxf", (string key, [AsParameters] DiamondAsked asked, DistrictStore store, Shelf shelf, Sitting sitting) =>
            Laid(store, shelf, sitting, key, asked) is { } layout ? Results.File(Encoding.ASCII.GetBytes(PlanDxf.Of(layout)), "image/vnd.dxf", $"{key}.dxf") : Results.NotFound()).Needs(Deed.SeeVenues);
        app.MapPost("/diamonds/{key}/survey", (string key, [FromForm] string text, [FromForm] string on, IFormCollection _, DistrictStore store, Shelf shelf, Sitting sitting) =>
        {
            if (DiamondSheet.Of(store, shelf, sitting, key, Nothing) is not { } sheet) return Results.NotFound();
            var read = SurveySheet.Of(sheet, [], [], text, shelf.Book);
            List<FieldFault> faults = [.. read.Faults.Select(f => new FieldFault("survey", f, "tapes that can be read and are of one field"))];
            if (read.Found is null && faults.Count == 0) faults.Add(new("survey", "nothing", "tapes that can be read and are of one field"));
            if (Typed.Day(on) is not { } day || day > sitting.Today) faults.Add(new("taped on", Typed.Cut(on, 20), "a day written 2026-05-16, not later than today"));
            else if (faults.Count == 0)
            {
                store.Actor = sitting.Actor;
                store.Put(new LastSurvey(key, day, read.Text));
                store.SaveChanges();
            }
            return faults.Count > 0 ? Doors.Faulty(faults) : Results.Redirect($"/diamonds/{Uri.EscapeDataString(key)}");
        }).Needs(Deed.LookOver);
        app.MapPost("/diamonds/{key}/bearing", (string key, [FromForm] string looks, IFormCollection _, DistrictStore store, Sitting sitting) =>
        {
            if (store.Diamonds.Find(key) is not { } diamond) return Results.NotFound();
            if (Compass.Read(Typed.Cut(looks, 20), []) is not { } degrees) return Doors.Faulty("direction", Typed.Cut(looks, 20), "0 to 360, degrees clockwise from true north in which second lies from home");
            store.Actor = sitting.Actor;
            store.Put(diamond with { Bearing = Compass.Turned(degrees) });
            store.SaveChanges();
            return Results.Redirect($"/diamonds/{Uri.EscapeDataString(key)}#sun");
        }).Needs(Deed.LookOver);
    }

    private static readonly DiamondAsked Nothing = new(null, null, null, null, null, null);

    private static Layout? Laid(DistrictStore store, Shelf shelf, Sitting sitting, string key, DiamondAsked asked) => DiamondSheet.Of(store, shelf, sitting, key, asked)?.Chosen?.Layout;

    private static IResult Svg(HttpContext context, string text)
    {
        context.Response.Headers.ContentSecurityPolicy = Drawn;
        return Results.Text(text, "image/svg+xml", Encoding.UTF8);
    }
}
