using NodaTime;

namespace Umpirage.District.Clock;

/// <summary>What may stand in a clock file. At the same minute they count in this order.</summary>
public enum ClockEventKind
{
    PlateMeetingOver, FirstPitch, InningBegins, Score, HalfOver, Resumed, Thunder, FlashToTheGround, FlashInTheClouds, DetectorWarning, Stopped, NotBefore, FieldFit, FieldNotFit, Heat, Globe,
    Note, StoppedForGood,
}

/// <summary>Why play was stopped. Storm, rain and heat are weather.</summary>
public enum StopReason { Storm, Rain, Heat, Ordered, Dark, Injury, Other }

/// <summary>A half-inning; <paramref name="Bottom"/> is the home side's.</summary>
public sealed record HalfInning(int Inning, bool Bottom) : IComparable<HalfInning>
{
    public static HalfInning First { get; } = new(1, false);

    public HalfInning Next => Bottom ? new(Inning + 1, false) : new(Inning, true);

    public int CompareTo(HalfInning? other) => other is null ? 1 : (Inning, Bottom).CompareTo((other.Inning, other.Bottom));

    public override string ToString() => $"{(Bottom ? "bottom" : "top")} {Inning}";
}

/// <summary>Runs, visitors first as the scorebook writes them.</summary>
public sealed record Runs(int Visitors, int Home)
{
    /// <summary>In the words of the sheets.</summary>
    public string Standing => Visitors > Home ? "visitors ahead" : Visitors < Home ? "home ahead" : "level";

    public override string ToString() => $"{Visitors}-{Home}";
}

/// <summary>One line of a clock file: when, what, and what goes with it.</summary>
/// <param name="Line">Counts from 1; 0 for what stands in the head of the file.</param>
public sealed record ClockEvent(Instant At, ClockEventKind Kind, int Line, string Text)
{
    public HalfInning? Half { get; init; }
    public Runs? Runs { get; init; }
    public StopReason? Reason { get; init; }
    /// <summary>The moment before which a site or an official lets nobody back.</summary>
    public Instant? Until { get; init; }
    public HeatIndex? Heat { get; init; }
    public GlobeTemperature? Globe { get; init; }

    public bool IsSign => Kind is ClockEventKind.Thunder or ClockEventKind.FlashToTheGround or ClockEventKind.FlashInTheClouds or ClockEventKind.DetectorWarning;

    public bool IsWeatherStop => Kind == ClockEventKind.Stopped && Reason is StopReason.Storm or StopReason.Rain or StopReason.Heat;
}
