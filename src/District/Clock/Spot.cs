using System.Globalization;
using NodaTime;
using Umpirage.Rules.Ground;

namespace Umpirage.District.Clock;

/// <summary>A place on the earth at sea level: degrees north (south is negative), degrees east (west is negative), and the zone its clocks keep.</summary>
public sealed record Spot(double Latitude, double Longitude, DateTimeZone Zone)
{
    /// <summary>How a place is written; also told when it is not.</summary>
    public const string Form = "41.40 N 88.10 W, America/Chicago";

    /// <summary>Reads a place as <see cref="Form"/> shows; every fault is added, and the place is null when there is one.</summary>
    public static Spot? Read(string text, List<string> faults)
    {
        var parts = text.Split(',', 2, StringSplitOptions.TrimEntries);
        var words = parts[0].Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length != 4) { faults.Add($"'{text}' is not a place; write {Form}"); return null; }
        var (north, east) = (Side(words[0], words[1], "N", "S", 90, faults), Side(words[2], words[3], "E", "W", 180, faults));
        var zone = parts.Length < 2 || parts[1] == "" ? Missing(faults) : ZoneOf(parts[1], faults);
        return north is { } latitude && east is { } longitude && zone is not null ? new(latitude, longitude, zone) : null;
    }

    /// <summary>Degrees with a sign, as a program types them; null, with the reason, when they are not degrees up to <paramref name="most"/>.</summary>
    public static double? Degrees(string text, string name, double most, List<string> faults)
    {
        if (double.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var value) && Math.Abs(value) <= most) return value;
        faults.Add($"{name} is '{text}'; it may be {-most} to {most} degrees, {(most > 90 ? "east positive, west negative" : "north positive, south negative")}");
        return null;
    }

    /// <summary>A zone by its name in the time zone database; null, with near names, when there is none.</summary>
    public static DateTimeZone? ZoneOf(string name, List<string> faults)
    {
        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(name) is { } zone) return zone;
        var (region, city) = (name.Split('/')[0], name.Split('/')[^1]);
        List<string> alike = [.. DateTimeZoneProviders.Tzdb.Ids.Where(id => city.Length > 2 && id.Split('/')[^1].StartsWith(city[..3], StringComparison.OrdinalIgnoreCase)).OrderByDescending(id => Words.Same(id.Split('/')[0], region))];
        var near = Words.Near(name, alike) is { Count: > 0 } slip ? slip : [.. alike.Take(3)];
        faults.Add($"there is no time zone '{name}'; {(near.Count > 0 ? Words.Meant(near) : "write it as America/Chicago")}");
        return null;
    }

    /// <summary>Clocks by longitude, in whole hours, for a place whose zone nobody named.</summary>
    public static DateTimeZone ByLongitude(double longitude) => DateTimeZone.ForOffset(Offset.FromHours((int)Math.Round(longitude / 15)));

    private static DateTimeZone? Missing(List<string> faults)
    {
        faults.Add($"the place names no time zone; write {Form}");
        return null;
    }

    private static double? Side(string number, string side, string plus, string minus, double most, List<string> faults)
    {
        var sign = Words.Same(side, plus) ? 1 : Words.Same(side, minus) ? -1 : 0;
        if (sign != 0 && double.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && value <= most) return sign * value;
        faults.Add($"'{number} {side}' is not a side of the earth; write 0 to {most} and {plus} or {minus}");
        return null;
    }

    /// <summary>"41.40 N 88.10 W, America/Chicago".</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"{Math.Abs(Latitude):0.00##} {(Latitude < 0 ? "S" : "N")} {Math.Abs(Longitude):0.00##} {(Longitude < 0 ? "W" : "E")}, {Zone.Id}");
}
