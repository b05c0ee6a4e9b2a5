using System.Security.Claims;
using Microsoft.EntityFrameworkCore;
using Umpirage.District.People;
using Umpirage.Store;

namespace Umpirage.Web;

/// <summary>One request at the desk: who sits there, and what time it is in the district.</summary>
public sealed class Sitting(DistrictStore store, Settings settings, IHttpContextAccessor http)
{
    public const string PersonClaim = "person", SeatCookie = "seat";

    private Viewer? viewer;
    private DistrictFacts? district;

    public Viewer Viewer => viewer ??= Find();
    /// <summary>How far who sits here sees crews.</summary>
    public CrewSight Sight => CrewSight.Of(Viewer, Now);

    public bool Demo => settings.Demo;
    public DistrictFacts District => district ??= store.District.AsNoTracking().FirstOrDefault() ?? new(DistrictFacts.Only, "New district", "Etc/UTC", 0, 0);

    /// <summary>The district's clock. The demonstration stands still on its Saturday.</summary>
    public DateTime Now => settings.StandsAt ?? TimeZoneInfo.ConvertTimeFromUtc(DateTime.UtcNow, Zone);
    public DateOnly Today => DateOnly.FromDateTime(Now);
    public DateTime UtcNow => settings.StandsAt is { } stands ? TimeZoneInfo.ConvertTimeToUtc(DateTime.SpecifyKind(stands, DateTimeKind.Unspecified), Zone) : DateTime.UtcNow;

    /// <summary>UTC to the second, and going on: the demonstration's day stands still, its minutes do not.</summary>
    public DateTime Passing => WholeSecond.Of(settings.StandsAt is null ? DateTime.UtcNow : UtcNow + (DateTime.UtcNow - Opened));

    private static readonly DateTime Opened = DateTime.UtcNow;

    /// <summary>An instant on the district's clock.</summary>
    public DateTime Here(DateTime utc) => TimeZoneInfo.ConvertTimeFromUtc(DateTime.SpecifyKind(utc, DateTimeKind.Utc), Zone);

    public TimeZoneInfo Zone => TimeZoneInfo.TryFindSystemTimeZoneById(District.Zone, out var zone) ? zone : TimeZoneInfo.Utc;

    public string Theme => http.HttpContext?.Request.Cookies["theme"] is "night" ? "night" : "sun";

    /// <summary>The name that goes into the trail.</summary>
    public string Actor => Viewer.Person is { } person ? $"{person.Given} {person.Family} ({person.Key})" : "nobody signed in";

    private Viewer Find()
    {
        var context = http.HttpContext;
        var key = context?.User.FindFirstValue(PersonClaim) ?? (settings.Demo ? context?.Request.Cookies[SeatCookie] ?? "chief" : null);
        if (key is null or "nobody" || store.People.Find(key) is not { } person) return Viewer.Nobody;
        return new(person, [.. store.Roles.AsNoTracking().Where(r => r.Person == key)], [.. store.Guardianships.AsNoTracking().Where(g => g.Guardian == key).Select(g => g.Child)]);
    }
}
