using System.Globalization;
using System.Text.RegularExpressions;
using NodaTime;
using NodaTime.Text;

namespace Umpirage.District.Clock;

/// <summary>Reads times as they are written at the field and finds the moment they mean, also on the nights when the clocks are put on or back.</summary>
public static partial class WallClock
{
    public const string Form = "17:32; after midnight 2026-05-17 00:10; where a time comes twice 01:30-05:00";

    [GeneratedRegex(@"^(?:(?<date>\d{4}-\d\d-\d\d) )?(?<time>\d{1,2}:\d\d)(?<offset>[+-]\d\d:\d\d)?$")]
    private static partial Regex Shape();

    /// <summary>The moment; null, with the reason, when the text is no time, never comes on that day, or comes twice.</summary>
    public static Instant? Read(string text, LocalDate date, DateTimeZone zone, List<string> faults)
    {
        var match = Shape().Match(text.Trim());
        if (!match.Success || !TimeOnly.TryParseExact(match.Groups["time"].Value, "H:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var time))
        {
            faults.Add($"'{text}' is not a time; write {Form}");
            return null;
        }
        if (match.Groups["date"] is { Success: true } named)
        {
            if (LocalDatePattern.Iso.Parse(named.Value) is not { Success: true } day) { faults.Add($"'{named.Value}' is not a day; write 2026-05-17"); return null; }
            if (Period.DaysBetween(date, day.Value) is < -1 or > 1) { faults.Add($"'{text}' is not of this game, which is on {date:uuuu-MM-dd}; it may be a day earlier or later"); return null; }
            date = day.Value;
        }
        var local = date.At(new LocalTime(time.Hour, time.Minute));
        var map = zone.MapLocal(local);
        var shown = map.Count == 0 ? "" : $"{text.Trim()}{Offset(map.First())} or {text.Trim()}{Offset(map.Last())}";
        if (match.Groups["offset"] is { Success: true } offset)
        {
            if (map.Count > 0 && Offset(map.First()) == offset.Value) return map.First().ToInstant();
            if (map.Count > 1 && Offset(map.Last()) == offset.Value) return map.Last().ToInstant();
            faults.Add($"'{text}' is not the time of {zone.Id} then; {(map.Count == 0 ? "the clocks skip it" : "it may be " + Offset(map.First()) + (map.Count > 1 ? " or " + Offset(map.Last()) : ""))}");
            return null;
        }
        if (map.Count == 1) return map.Single().ToInstant();
        faults.Add(map.Count == 0
            ? $"there is no {text} on that night in {zone.Id}: the clocks are put on from {map.EarlyInterval.IsoLocalEnd:HH:mm} to {map.LateInterval.IsoLocalStart:HH:mm}"
            : $"{text} comes twice on that night in {zone.Id}, since the clocks are put back; write {shown}");
        return null;
    }

    private static string Offset(ZonedDateTime at) => at.ToString("o<m>", CultureInfo.InvariantCulture);
}
