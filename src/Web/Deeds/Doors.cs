using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Http.HttpResults;
using Umpirage.District.People;
using Umpirage.Web.Parts;

namespace Umpirage.Web.Deeds;

/// <summary>
/// All doors through which something is done. Each names what it needs, and each takes a form, even an empty one: reading it is what checks
/// that it came from a page of the desk.
/// </summary>
public static class Doors
{
    public static void Map(WebApplication app)
    {
        LookDeeds.Map(app);
        QuestionDeeds.Map(app);
        DrillDeeds.Map(app);
        TrainingDeeds.Map(app);
        CertifyDeeds.Map(app);
        PitchingDeeds.Map(app);
        PlanDeeds.Map(app);
        DiamondDeeds.Map(app);
        GearDeeds.Map(app);
        CrewDeeds.Map(app);
        CrewHuntDeeds.Map(app);
        CrewPublishDeeds.Map(app);
        PersonDeeds.Map(app);
        OptionDeeds.Map(app);
        FileDeeds.Map(app);
        LetterDeeds.Map(app);
        LessonDeeds.Map(app);
        CallDeeds.Map(app);
        SwapDeeds.Map(app);
        MentorDeeds.Map(app);
        HoursDeeds.Map(app);
        EvaluationDeeds.Map(app);
        AccountDeeds.Map(app);
        Feeds.Map(app);
        OwnFeed.Map(app);
        CardFiles.Map(app);
    }

    /// <summary>Answers with a part in the frame of the desk.</summary>
    internal static RazorComponentResult Show<T>(object parameters, int status = 200) where T : IComponent
    {
        RenderFragment body = builder =>
        {
            builder.OpenComponent<T>(0);
            foreach (var property in parameters.GetType().GetProperties()) builder.AddComponentParameter(1, property.Name, property.GetValue(parameters));
            builder.CloseComponent();
        };
        return new RazorComponentResult<App>(new Dictionary<string, object?> { [nameof(App.Body)] = body }) { StatusCode = status };
    }

    /// <summary>Nothing was done, and why.</summary>
    internal static RazorComponentResult Faulty(params IReadOnlyList<FieldFault> faults) => Show<FaultList>(new { Faults = faults }, StatusCodes.Status422UnprocessableEntity);

    internal static RazorComponentResult Faulty(string field, string found, string allowed) => Faulty(new FieldFault(field, found, allowed));

    /// <summary>Only ever to a page of the desk itself.</summary>
    internal static RedirectHttpResult Back(string? to) =>
        TypedResults.Redirect(to is ['/', ..] && !to.StartsWith("//", StringComparison.Ordinal) && !to.Contains('\\') && !to.Any(char.IsControl) ? to : "/");

    internal static TBuilder Needs<TBuilder>(this TBuilder door, Deed deed) where TBuilder : IEndpointConventionBuilder => door.WithMetadata(new NeedsAttribute(deed));

    internal static TBuilder ForAnybody<TBuilder>(this TBuilder door) where TBuilder : IEndpointConventionBuilder => door.WithMetadata(new ForAnybodyAttribute());
}
