using Microsoft.AspNetCore.Mvc;
using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.People;
using Umpirage.Rules.Ground;
using Umpirage.Store;
using Umpirage.Web.Parts;

namespace Umpirage.Web.Deeds;

/// <summary>Gives a place of a crew to somebody by hand, or opens it. A rule bends only when it was shown and said again; safety never does.</summary>
internal static class CrewDeeds
{
    public static void Map(WebApplication app)
    {
        app.MapPost("/crews/place", ([FromForm] string game, [FromForm] string place, [FromForm] string? person, [FromForm] string? was, [FromForm] string? anyway, [FromForm] string? back, Sitting sitting, Shelf shelf, DistrictStore store) =>
        {
            var plan = CrewDesk.Plan(store, shelf, sitting.Sight);
            if (plan.Game(game) is not { } asked) return Doors.Faulty("game", game, "a game that is to be played, or was");
            List<string> places = [.. CrewPlace.Of(asked.Division), .. plan.CrewOf(asked).Select(s => s.Place)];
            if (!places.Contains(place)) return Doors.Faulty("place", place, Words.Or([.. places.Distinct()]));
            var holder = plan.CrewOf(asked).FirstOrDefault(s => s.Place == place)?.Person;
            if ((was ?? "") != (holder?.Key ?? "")) return Doors.Faulty(place, was ?? "", $"{holder?.Name ?? "nobody"}, since somebody changed it meanwhile; look at the week again");
            store.Actor = sitting.Actor;
            if (Typed.Cut(person, 120) is not { Length: > 0 } typed)
            {
                store.Put(new Assignment(game, place, null));
                return Save(store, back);
            }
            if (Who(plan, typed) is not { } who) return Doors.Faulty("person", typed, "an umpire on record, chosen from the list");
            var why = WhyNot.Of(plan, who, asked, place);
            if (why.Reasons.Any(r => r.Hold == Hold.Safety) || (!why.May && anyway != "yes")) return Doors.Show<PlaceRefused>(new { Why = why, Plan = plan, Was = was ?? "", Back = back ?? "/crews" }, StatusCodes.Status422UnprocessableEntity);
            foreach (var own in plan.CrewOf(asked).Where(s => s.Person.Key == who.Key && s.Place != place)) store.Put(new Assignment(game, own.Place, null));
            store.Put(new Assignment(game, place, who.Key));
            return Save(store, back);
        }).Needs(Deed.SetCrews);
    }

    /// <summary>How a person is written in a list to choose from: the name, and the key in brackets.</summary>
    public static string Written(CrewPerson person) => $"{person.Name} ({person.Key})";

    private static CrewPerson? Who(CrewPlan plan, string typed)
    {
        var open = typed.LastIndexOf('(');
        return plan.Person(open >= 0 ? typed[(open + 1)..].TrimEnd(')') : typed) is { Official: not null } person ? person : null;
    }

    private static IResult Save(DistrictStore store, string? back)
    {
        try { store.SaveChanges(); }
        catch (UnsafeCrewException unsafely)
        {
            store.ChangeTracker.Clear();
            return Doors.Faulty("crew", unsafely.Message, "a crew that keeps every safety rule");
        }
        return Doors.Back(back);
    }
}
