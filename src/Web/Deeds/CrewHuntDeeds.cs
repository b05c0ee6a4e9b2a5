using Microsoft.AspNetCore.Mvc;
using Umpirage.District.Crews;
using Umpirage.District.Crews.Constraints;
using Umpirage.District.People;
using Umpirage.Rules.Ground;
using Umpirage.Solve.Crews;
using Umpirage.Store;

namespace Umpirage.Web.Deeds;

/// <summary>Begins a search for a week's crews, stops it, and takes what it found.</summary>
internal static class CrewHuntDeeds
{
    public static void Map(WebApplication app)
    {
        app.MapPost("/crews/search", ([FromForm] string week, [FromForm] string? seconds, IFormCollection _, Sitting sitting, Shelf shelf, CrewHunts hunts, DistrictStore store) =>
        {
            if (Typed.Day(week) is not { } day) return Doors.Faulty("week", Typed.Cut(week, 20), "a day written 2026-05-18");
            var times = CrewHunts.Times.Where(t => CrewHunts.Written(t.Seconds) == (seconds ?? CrewHunts.Written(CrewHunts.Times[0].Seconds))).ToList();
            if (times.Count == 0) return Doors.Faulty("time", Typed.Cut(seconds, 20), Words.Or([.. CrewHunts.Times.Select(t => CrewHunts.Written(t.Seconds))]));
            var monday = AsOffered.Monday(day);
            var hunt = hunts.Begin(monday, () => CrewTask.Week(CrewDesk.Plan(store, shelf, CrewSight.All), monday, sitting.Now) with { Seconds = times[0].Seconds });
            return Results.Redirect(Page(hunt.Monday));
        }).Needs(Deed.SetCrews);
        app.MapPost("/crews/search/stop", ([FromForm] string search, IFormCollection _, CrewHunts hunts) =>
        {
            if (hunts.Find(search) is not { } hunt) return Gone(search);
            hunt.Stop();
            return Results.Redirect(Page(hunt.Monday));
        }).Needs(Deed.SetCrews);
        app.MapPost("/crews/search/take", ([FromForm] string search, IFormCollection _, CrewHunts hunts, Sitting sitting, DistrictStore store) =>
        {
            if (hunts.Find(search) is not { Result: { } result } hunt) return Gone(search);
            store.Actor = sitting.Actor;
            var faults = CrewKeeping.Keep(store, hunt.Task.Plan, result.Plan, hunt.Task.Games);
            if (faults.Count > 0) return Doors.Faulty([.. faults.Select(f => new FieldFault("plan", f, "crews as they were when the search began"))]);
            hunts.Forget(hunt);
            return Results.Redirect($"/crews?week={CodeAddress.Day(hunt.Monday)}");
        }).Needs(Deed.SetCrews);
    }

    private static string Page(DateOnly monday) => $"/crews/search?week={CodeAddress.Day(monday)}";

    private static IResult Gone(string search) => Doors.Faulty("search", Typed.Cut(search, 40), "a search that is still shown; begin it again");
}
