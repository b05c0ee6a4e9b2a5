using Umpirage.District.Calendar;
using Umpirage.District.Crews;
using Umpirage.District.People;
using Umpirage.Store;

namespace Umpirage.Web.Deeds;

/// <summary>Puts those who were called on their game: all of them, or nobody with every reason.</summary>
internal static class CallDeeds
{
    public static void Map(WebApplication app) =>
        app.MapPost("/crews/game/{key}/seats", (string key, IFormCollection form, Sitting sitting, Shelf shelf, DistrictStore store) =>
        {
            var faults = new List<string>();
            var heat = HeatTyped.Read(null, null, form["heat"], faults);
            if (store.Games.Find(key) is not { IsAhead: true } known) return Results.NotFound();
            var plan = CrewDesk.Plan(store, shelf, sitting.Sight, heat is { } f ? (known.Day, f) : null);
            var game = plan.Game(key)!;
            var minutes = form.Where(v => v.Key.StartsWith(CallSheet.MinutesOf, StringComparison.Ordinal)).Select(v => (Person: v.Key[CallSheet.MinutesOf.Length..], Minutes: Reached.Minutes(Typed.Cut(v.Value, 20)))).Where(v => v.Minutes is not null);
            var calling = new Calling(Minutes: minutes.DistinctBy(v => v.Person).ToDictionary(v => v.Person, v => v.Minutes!.Value));
            var told = new List<FieldFault>();
            var given = new List<Assignment>();
            foreach (var seat in form["seat"].OfType<string>().Take(CrewPlace.All.Count))
            {
                var parts = seat.Split('=');
                if (parts.Length != 2 || !CrewPlace.Of(game.Division).Contains(parts[0]) || plan.Person(parts[1]) is not { } person) { told.Add(new("seat", Typed.Cut(seat, 80), $"PLACE=PERSON, the place one of {Rules.Ground.Words.Or(CrewPlace.Of(game.Division))}")); continue; }
                var judged = Subs.Of(plan, game, parts[0], person, calling);
                if (judged.Standing != Standby.Legal) told.Add(new(parts[0], person.Name, $"somebody whom no rule bars; {Rules.Ground.Words.And([.. judged.Reasons.Select(r => r.Named), .. judged.Opens.Select(o => $"{o.Place} of {o.Game.Key} would fall open")])}"));
                plan = plan.With(game, parts[0], person);
                given.Add(new(key, parts[0], person.Key));
            }
            if (given.Count == 0 && told.Count == 0) told.Add(new("seat", "", "at least one place"));
            told.AddRange(faults.Select(x => new FieldFault("heat", x, "a heat index")));
            if (told.Count > 0) return Doors.Faulty(told);
            store.Actor = sitting.Actor;
            given.ForEach(store.Put);
            Publishing.Tell(store, given);
            try { store.SaveChanges(); }
            catch (UnsafeCrewException unsafeCrew) { return Doors.Faulty([new("crew", unsafeCrew.Message, "a crew that keeps every safety rule")]); }
            return Results.Redirect($"/crews/game/{Uri.EscapeDataString(key)}");
        }).Needs(Deed.SetCrews);
}
