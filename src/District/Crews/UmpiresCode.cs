using Umpirage.District.People;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Crews;

/// <summary>What one code says of umpires on one day: the sheets on an umpire's day, heat, playing hours and a youth crew, asked with the figures of a plan.</summary>
public sealed class UmpiresCode
{
    private readonly AskedSheet day, heat, hours;
    private readonly Lazy<YouthCrew> youth;

    internal UmpiresCode(Code code, AskedSheet day, AskedSheet heat, AskedSheet hours, Lazy<YouthCrew> youth)
    {
        (Code, this.day, this.heat, this.hours, this.youth) = (code, day, heat, hours, youth);
        Speed = Set(day, "travel speed");
        ParkMinutes = (int)Set(day, "minutes to pack and park");
        FieldMinutes = (int)Set(day, "minutes to change fields");
        BreakMinutes = (int)Set(day, "minutes between games");
        PlannedMinutes = (int)Set(hours, "planned length");
        OldestPlayer = (int)Set(day, "oldest player");
        DangerFrom = Set(heat, "danger from");
        DivisionPlace = code.Book.Roster.PlaceOf(code.Division);
    }

    public Code Code { get; }
    /// <summary>What is done when somebody turns on a crew with a minor in it.</summary>
    public YouthCrew Youth => youth.Value;
    /// <summary>Kilometres an hour, in a straight line.</summary>
    public double Speed { get; }
    public int ParkMinutes { get; }
    public int FieldMinutes { get; }
    public int BreakMinutes { get; }
    public int PlannedMinutes { get; }
    /// <summary>Years.</summary>
    public int OldestPlayer { get; }
    /// <summary>Degrees Fahrenheit of heat index.</summary>
    public double DangerFrom { get; }
    /// <summary>The division's place in the roster's order, youngest first.</summary>
    public int DivisionPlace { get; }
    public bool NeedsBackgroundCheck => day.Word("background check of an adult") == "required";
    public bool NeedsAwareness => day.Word("abuse-awareness course") == "required";
    /// <summary>Whether an umpire of one of two leagues that meet is taken, avoided or not taken.</summary>
    public string OwnLeague => day.Word("umpire of one of two leagues");

    public Citation SourceOf(string parameter) => day.Source(parameter);
    public int GamesADay(AgeBand band) => (int)Set(day, band <= AgeBand.From13To15 ? "games a day under 16" : "games a day");
    public int PlatesADay(double? heatIndex) => (int)Set(day, InDanger(heatIndex) ? "plates a day in the danger band" : "plates a day");

    /// <summary>Never rounded: what lies a tenth below the band lies below it.</summary>
    public bool InDanger(double? heatIndex) => heatIndex is { } f && heat.Band("heat index", f) >= heat.ValueAt("heat index", "danger");

    private static string Age(AgeBand band) => band switch { AgeBand.Under13 => "under 13", AgeBand.From13To15 => "13 to 15", AgeBand.From16To17 => "16 to 17", _ => "adult" };

    /// <summary>A number that the code sets; without end where it sets none.</summary>
    private static double Set(AskedSheet sheet, string parameter) => sheet.Exactly(parameter) ?? double.PositiveInfinity;

    private Barred? When((string Value, BoundClause By) answer, params ReadOnlySpan<string> bad)
    {
        if (!bad.Contains(answer.Value)) return null;
        var (title, source) = day.Told(answer.By);
        return new(title, source);
    }

    /// <summary>Why there is no room for a further game; nothing when there is.</summary>
    public Barred? Games(AgeBand band, int before) => When(day.Ask("games", ("umpire", Age(band), 0), ("games before this one", null, before)), "full");

    public Barred? Plates(int before, double? heatIndex) => When(day.Ask("plate",
        ("place", "plate", 0), ("plates before this one", null, before), ("heat", InDanger(heatIndex) ? "danger band or above" : "below the danger band", 0)), "full", "full in this heat");

    public Barred? Break(double minutes) => When(day.Ask("rest", ("break", null, minutes)), "too short");

    public Barred? Players(AgeBand band, int olderBy) => When(day.Ask("players", ("umpire", Age(band), 0), ("older than the players by", null, olderBy)), "too close in age", "too young to umpire");

    public Barred? Hour(AgeBand band, double endHour) => When(day.Ask("hour", ("umpire", Age(band), 0), ("planned end", null, endHour)), "too late");

    /// <summary>What the heat asks of the crew besides; nothing below the danger band.</summary>
    public Barred? FurtherBreaks(double? heatIndex) => When(day.Ask("further breaks", ("heat", InDanger(heatIndex) ? "danger band or above" : "below the danger band", 0)), "one in each half-inning");
}
