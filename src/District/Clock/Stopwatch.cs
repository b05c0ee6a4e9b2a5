using NodaTime;

namespace Umpirage.District.Clock;

/// <summary>Counts a game's clock in real time: what runs is elapsed time, also over a change of the clocks on the wall.</summary>
internal sealed class Stopwatch(Instant? start, GameSoFar game, bool weatherStops)
{
    private readonly List<Stop> held = [.. game.Stops.Where(s => weatherStops && s.Event.IsWeatherStop)];

    private Instant End => game.Ended?.At is { } end && end < game.At ? end : game.At;

    public Instant? Start => start is { } s && s <= game.At ? s : null;

    /// <summary>True while a stop holds the clock.</summary>
    public bool IsHeld => game.OpenStop is { } open && held.Contains(open);

    /// <summary>On the clock as the code counts it.</summary>
    public Duration OnClock => Start is { } s ? Running(s, End, held) : Duration.Zero;

    /// <summary>Between the first pitch and now without any stop.</summary>
    public Duration Played => game.FirstPitch?.At is { } first ? Running(first, End, game.Stops) : Duration.Zero;

    /// <summary>The moment at which the clock shows so many minutes, when play that is held now goes on at <paramref name="again"/>; null before the start, or when the game was over first.</summary>
    public Instant? Reaches(int minutes, Instant again)
    {
        if (Start is not { } at) return null;
        var left = Duration.FromMinutes(minutes);
        foreach (var stop in held)
        {
            var from = Instant.Max(stop.From, at);
            if (from - at >= left) break;
            left -= from - at;
            at = Instant.Max(stop.To ?? again, from);
        }
        var moment = at + left;
        return game.Ended is { } end && end.At < moment ? null : moment;
    }

    private static Duration Running(Instant from, Instant to, IEnumerable<Stop> without)
    {
        var sum = Duration.Max(to - from, Duration.Zero);
        foreach (var stop in without)
        {
            var (begin, end) = (Instant.Max(stop.From, from), Instant.Min(stop.To ?? to, to));
            if (end > begin) sum -= end - begin;
        }
        return sum;
    }
}
