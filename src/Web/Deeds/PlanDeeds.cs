using Microsoft.AspNetCore.Mvc;
using Umpirage.District.People;
using Umpirage.Store;

namespace Umpirage.Web.Deeds;

/// <summary>Keeps a plan of moved games that was shown, and takes one back.</summary>
internal static class PlanDeeds
{
    public static void Map(WebApplication app)
    {
        app.MapPost("/schedule/plans", ([FromForm] string plan, IFormCollection _, Plans plans, Sitting sitting, DistrictStore store) =>
        {
            if (plans.Find(plan) is not { } shown) return Doors.Faulty("plan", "a plan shown before the desk was opened anew", "a plan that is still shown; ask for new times again");
            store.Actor = sitting.Actor;
            var (_, faults) = Moving.Keep(store, shown.Plan, shown.Closed);
            return faults.Count > 0 ? Doors.Faulty("games", string.Join("; ", faults), "the games as they were when the plan was made; ask for new times again") : Results.Redirect("/schedule/rain");
        }).Needs(Deed.PlanSchedule);
        app.MapPost("/schedule/plans/back", ([FromForm] string plan, IFormCollection _, Sitting sitting, DistrictStore store) =>
        {
            store.Actor = sitting.Actor;
            var (_, faults) = Moving.TakeBack(store, Typed.Cut(plan, 60));
            return faults.Count > 0 ? Doors.Faulty("plan", string.Join("; ", faults), "a plan whose games nobody changed since") : Results.Redirect("/schedule/rain");
        }).Needs(Deed.PlanSchedule);
    }
}
