using Umpirage.District.People;

namespace Umpirage.Web;

/// <summary>Lets a request through only when the viewer may do what the door needs. A door that says nothing lets nobody in.</summary>
public static class Gate
{
    public static async Task Pass(HttpContext context, Func<Task> next)
    {
        var endpoint = context.GetEndpoint();
        if (endpoint is null || endpoint.Metadata.GetMetadata<ForAnybodyAttribute>() is not null) { await next(); return; }
        var viewer = context.RequestServices.GetRequiredService<Sitting>().Viewer;
        if (endpoint.Metadata.GetMetadata<NeedsAttribute>() is { } needs && viewer.May(needs.Deed)) { await next(); return; }
        if (viewer.Person is null && HttpMethods.IsGet(context.Request.Method))
        {
            if (FirstRun.Due(context.RequestServices.GetRequiredService<Umpirage.Store.DistrictStore>()) && !context.RequestServices.GetRequiredService<Settings>().Demo) { context.Response.Redirect("/first-run"); return; }
            context.Response.Redirect($"/sign-in?to={Uri.EscapeDataString(context.Request.Path + context.Request.QueryString)}");
            return;
        }
        context.Response.StatusCode = viewer.Person is null ? StatusCodes.Status401Unauthorized : StatusCodes.Status403Forbidden;
        await context.Response.WriteAsync(viewer.Person is null ? "Sign in first." : "Your role does not open this page.");
    }

    /// <summary>The page says that what was asked for is not there, and so does the answer's number: set at the last moment, since a page stops being made once it is.</summary>
    public static void Missing(this HttpContext? context) => context?.Response.OnStarting(() =>
    {
        context.Response.StatusCode = StatusCodes.Status404NotFound;
        return Task.CompletedTask;
    });

    /// <summary>Nothing from elsewhere is loaded, nothing is shown inside other sites, and pages with people in them are not kept by browsers.</summary>
    public static async Task Headers(HttpContext context, Func<Task> next)
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; connect-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'";
        headers.XContentTypeOptions = "nosniff";
        headers.XFrameOptions = "DENY";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Permissions-Policy"] = "camera=(), microphone=(), geolocation=()";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        context.Response.OnStarting(() =>
        {
            if (context.Response.ContentType?.StartsWith("text/html", StringComparison.Ordinal) == true) headers.CacheControl = "no-store";
            return Task.CompletedTask;
        });
        await next();
    }
}
