using System.Globalization;
using Microsoft.AspNetCore.WebUtilities;

namespace Umpirage.Web;

/// <summary>A drill on its way: under which code, since when, and the answer being looked at. It lives in the page's address.</summary>
public sealed record Drilling(string Code, DateTime Since)
{
    public static readonly TimeSpan Length = TimeSpan.FromMinutes(5);

    public TimeSpan Left(DateTime now) => Since + Length - now;

    public string Next => Url();

    public string End => Url(("end", "true"));

    public string Answered(string question, DateTime asked) => Url(("q", question), ("asked", Seconds(asked)));

    private string Url(params (string Key, string Value)[] more) =>
        QueryHelpers.AddQueryString("/drill", [new("code", Code), new("since", Seconds(Since)), .. more.Select(m => new KeyValuePair<string, string?>(m.Key, m.Value))]);

    public static string Seconds(DateTime utc) => new DateTimeOffset(DateTime.SpecifyKind(utc, DateTimeKind.Utc)).ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture);

    /// <summary>The moment sent back by a page, when it can be true: not later than now and not longer ago than it may be; else now.</summary>
    public static DateTime Moment(string? seconds, DateTime now, TimeSpan most) =>
        long.TryParse(seconds, NumberStyles.None, CultureInfo.InvariantCulture, out var told) && told < 253402300800 && DateTime.UnixEpoch.AddSeconds(told) is var at && at <= now && at >= now - most ? at : now;
}
