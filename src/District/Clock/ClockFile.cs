using NodaTime;

namespace Umpirage.District.Clock;

/// <summary>A game's clock as somebody wrote it down: where and under which code, and its events in the order of time, whatever the order of the lines.</summary>
/// <param name="Code">A code as played ("BB-12") or an address; the game's day is added when it names none.</param>
/// <param name="Dark">The site's own cut-off; null when it has none.</param>
public sealed record ClockFile(string File, string Code, LocalDate Date, Spot Spot, bool Lit, Instant? Scheduled, Instant? Dark, IReadOnlyList<ClockEvent> Events)
{
    public Moment Told(Instant at) => Moment.Of(at, Spot.Zone, Date);

    /// <summary>The code's address on the day of the game.</summary>
    public string Address => Code.Contains('@') ? Code : $"{Code}@{Date:uuuu-MM-dd}";
}
