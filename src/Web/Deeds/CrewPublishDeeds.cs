using Microsoft.AspNetCore.Mvc;
using Umpirage.District.Crews.Constraints;
using Umpirage.District.People;
using Umpirage.Rules.Ground;
using Umpirage.Store;

namespace Umpirage.Web.Deeds;

/// <summary>Publishes a week's crews, and freezes and thaws them. Nothing is sent: letters are the publisher's own.</summary>
internal static class CrewPublishDeeds
{
    public static void Map(WebApplication app)
    {
        app.MapPost("/crews/publish", ([FromForm] string week, IFormCollection _, Sitting sitting, DistrictStore store) =>
        {
            if (Typed.Day(week) is not { } day) return Refused(["a day written 2026-05-18 was expected"]);
            store.Actor = sitting.Actor;
            var (at, faults) = Publishing.Publish(store, AsOffered.Monday(day), sitting.Now);
            return faults.Count > 0 ? Refused(faults) : Results.Redirect($"/crews/publish?week={CodeAddress.Day(AsOffered.Monday(day))}&at={Written(at)}");
        }).Needs(Deed.SetCrews);
        app.MapPost("/crews/freeze", (IFormCollection form, [FromForm] string freeze, [FromForm] string? back, Sitting sitting, DistrictStore store) =>
        {
            store.Actor = sitting.Actor;
            var faults = Publishing.Freeze(store, [.. form["game"].OfType<string>().Take(500)], freeze == "yes");
            return faults.Count > 0 ? Refused(faults) : Doors.Back(back);
        }).Needs(Deed.SetCrews);
    }

    /// <summary>A moment of publication in an address, UTC.</summary>
    public static string Written(DateTime at) => at.ToString("yyyy-MM-ddTHH:mm:ss", System.Globalization.CultureInfo.InvariantCulture);

    private static IResult Refused(IReadOnlyList<string> faults) =>
        Doors.Faulty([.. faults.Select(f => new FieldFault("crews", f, "crews that keep every safety rule, and games on record"))]);
}
