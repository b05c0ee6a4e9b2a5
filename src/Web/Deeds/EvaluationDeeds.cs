using Microsoft.AspNetCore.Mvc;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.Crews;
using Umpirage.District.People;
using Umpirage.District.Visits;
using Umpirage.Store;
using Umpirage.Web.Parts;
using Results = Microsoft.AspNetCore.Http.Results;

namespace Umpirage.Web.Deeds;

/// <summary>Files an evaluation, and takes what the umpire has to say to it.</summary>
internal static class EvaluationDeeds
{
    public static void Map(WebApplication app)
    {
        app.MapPost("/evaluations", ([FromForm] string game, [FromForm] string umpire, IFormCollection form, Sitting sitting, Shelf shelf, DistrictStore store) =>
        {
            var crew = store.Assignments.AsNoTracking().Where(a => a.Game == game && a.Person != null).ToList();
            if (store.Games.Find(game) is not { } played || crew.FirstOrDefault(a => a.Person == umpire) is not { } seat || store.People.Find(umpire) is not { } person) return Results.NotFound();
            var asked = shelf.Forms.For(CrewPlace.PositionOf(seat.Place));
            var draft = EvaluationDraft.Read(form, shelf.Forms, asked);
            var evaluation = draft.Of(asked, played, crew.Count, umpire, sitting.Viewer.Person!.Key);
            List<FieldFault> faults = [.. evaluation.Faults(shelf.Forms, [.. shelf.Book.Sheets.Select(s => s.Name)])];
            if (crew.Any(a => a.Person == evaluation.Evaluator)) faults.Add(new("evaluator", sitting.Viewer.Person.ListName, "somebody who is not in the crew of that game"));
            if (sitting.Viewer.Children.Contains(umpire)) faults.Add(new("evaluator", sitting.Viewer.Person.ListName, "somebody who is not the umpire's guardian"));
            if (played.Start > sitting.Now) faults.Add(new("game", $"begins {played.Start:ddd d MMM H:mm}", "a game that has begun"));
            if (store.Evaluations.Any(e => e.Key == evaluation.Key)) faults.Add(new("evaluation", "one of this umpire in this game by you", "one; it stays as it was filed"));
            if (faults.Count > 0) return Doors.Show<EvaluationForm>(new { Game = played, Umpire = person, Asked = asked, Draft = draft, Faults = (IReadOnlyList<FieldFault>)faults }, StatusCodes.Status422UnprocessableEntity);
            store.Actor = sitting.Actor;
            store.Add(evaluation);
            store.SaveChanges();
            return Results.Redirect(Address(evaluation));
        }).Needs(Deed.Evaluate);
        app.MapPost("/evaluations/{game}/{umpire}/{evaluator}/reply", (string game, string umpire, string evaluator, [FromForm] string? reply, Sitting sitting, DistrictStore store) =>
        {
            if (store.Evaluations.Find(Evaluation.KeyOf(game, umpire, evaluator)) is not { } evaluation || !sitting.Viewer.MayReply(evaluation)) return Results.StatusCode(StatusCodes.Status403Forbidden);
            store.Actor = sitting.Actor;
            store.Put(evaluation with { Reply = Typed.Cut(reply, 600) });
            store.SaveChanges();
            return Results.Redirect(Address(evaluation));
        }).Needs(Deed.SeeOwn);
    }

    /// <summary>The umpire has the word, for a minor the guardian.</summary>
    public static bool MayReply(this Viewer viewer, Evaluation evaluation) => viewer.Person is { } person && (viewer.Children.Contains(evaluation.Umpire) || (person.Key == evaluation.Umpire && !person.IsMinor));

    public static string Address(Evaluation evaluation) => $"/evaluations/{Uri.EscapeDataString(evaluation.Game)}/{Uri.EscapeDataString(evaluation.Umpire)}/{Uri.EscapeDataString(evaluation.Evaluator)}";
}
