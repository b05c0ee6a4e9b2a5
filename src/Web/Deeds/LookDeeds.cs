using Microsoft.AspNetCore.Mvc;

namespace Umpirage.Web.Deeds;

/// <summary>How the desk looks, and in the demonstration who sits at it.</summary>
internal static class LookDeeds
{
    public static void Map(WebApplication app)
    {
        app.MapPost("/theme", ([FromForm] string theme, [FromForm] string? to, HttpContext context) =>
        {
            context.Response.Cookies.Append("theme", theme == "night" ? "night" : "sun", new() { MaxAge = TimeSpan.FromDays(400), SameSite = SameSiteMode.Lax, HttpOnly = true, IsEssential = true });
            return Doors.Back(to);
        }).ForAnybody();
        app.MapPost("/seat", ([FromForm] string person, HttpContext context, Settings settings) =>
        {
            if (!settings.Demo) return Results.NotFound();
            context.Response.Cookies.Append(Sitting.SeatCookie, person, new() { SameSite = SameSiteMode.Lax, HttpOnly = true, IsEssential = true });
            return Results.Redirect("/ruling");
        }).ForAnybody();
    }
}
