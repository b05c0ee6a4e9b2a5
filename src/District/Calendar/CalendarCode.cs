using Umpirage.District.Pitchers;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Calendar;

/// <summary>What one rule code says of when and where games are played.</summary>
public sealed class CalendarCode
{
    internal static readonly string[] Names = ["playing hours", "games a day", "rained-out game", "field", "suspended game"];

    private readonly AskedSheet hours, day, wet, field, suspended;

    private CalendarCode(string address, IReadOnlyList<Table> tables)
    {
        Address = address;
        (hours, day, wet, field, suspended) = (new(tables[0]), new(tables[1]), new(tables[2]), new(tables[3]), new(tables[4]));
        Minutes = hours.Number("planned length") ?? 0;
        LatestHour = hours.Exactly("no play after");
        HasBreak = day.Number("break between games") is not null;
        CountsDoubleheaders = day.Number("doubleheaders in seven days") is not null;
        (KmAnHour, SpareMinutes) = (wet.Exactly("speed between parks") ?? double.PositiveInfinity, wet.Exactly("spare time between parks") ?? 0);
        (NotBefore, Within) = (wet.Number("make-up not before") ?? 0, wet.Number("make-up within"));
        NoticeHours = wet.Exactly("notice before the game") ?? 0;
        PitchersToStart = wet.Number("pitchers to start with") ?? 0;
        SuspendedFirst = suspended.Word("finished before the next meeting") == "yes";
    }

    /// <summary>Works a code out by its address; null with the reasons when the address or a sheet cannot be used.</summary>
    public static CalendarCode? Of(Codebook book, string address, DateOnly day, List<Finding> findings)
    {
        var before = findings.Count;
        var tables = Names.Select(n => Casebook.Table(book, address, n, day, address, findings)).ToList();
        return findings.Count > before ? null : new(address, tables!);
    }

    /// <summary>Without a day.</summary>
    public string Address { get; }

    /// <summary>Planned length of a game in minutes.</summary>
    public int Minutes { get; }

    /// <summary>The hour after which nothing is played; none where the code names none.</summary>
    public double? LatestHour { get; }

    public bool HasBreak { get; }
    public bool CountsDoubleheaders { get; }
    public double KmAnHour { get; }
    public double SpareMinutes { get; }

    /// <summary>Days after the planned one from which on, and to which, a game may be made up; no end where the code names none.</summary>
    public int NotBefore { get; }
    public int? Within { get; }

    public double NoticeHours { get; }
    public int PitchersToStart { get; }
    public bool SuspendedFirst { get; }

    public string Written(string parameter) => Sheet(parameter).Word(parameter);
    public string Source(string parameter) => $"'{parameter}': {Sheet(parameter).Source(parameter)}";

    /// <summary>Why a game may not be planned so late or so dark; nothing when it may.</summary>
    /// <param name="endHour">Hours after the midnight before the game at which it will be over.</param>
    /// <param name="daylight">Minutes from the planned end to sunset, negative after it.</param>
    internal (string Value, Bar Bar)? NotPlannedThen(double endHour, bool lit, double daylight)
    {
        var asked = hours.Ask();
        hours.Put(asked, "planned end", endHour);
        hours.Put(asked, "diamond", lit ? "lit" : "not lit");
        hours.Put(asked, "daylight left at the planned end", daylight);
        var line = hours.Line(asked);
        var value = hours.Value(line, "may be planned");
        return value == "yes" ? null : (value, Bar.Of(hours, line, "may be planned", ""));
    }

    /// <summary>What the code makes of a team's next game of a day.</summary>
    internal DayRuling Day(int playedToday, RestOfSuspended rest, int doubleheaders, int? minutesSince)
    {
        var asked = day.Ask();
        day.Put(asked, "played today", playedToday switch { 0 => "none", 1 => "one", 2 => "two", _ => "three or more" });
        day.Put(asked, "one of them", rest switch { RestOfSuspended.None => "all new games", RestOfSuspended.First => "rest of a suspended game, finished first", _ => "rest of a suspended game, not finished first" });
        day.Put(asked, "doubleheaders in seven days", doubleheaders);
        if (HasBreak && minutesSince is { } minutes) day.Put(asked, "break", minutes);
        var line = day.Line(asked);
        return new(day.Value(line, "counts as") == "second game", day.Value(line, "may be played") == "yes" ? null : Bar.Of(day, line, "may be played", ""),
            !HasBreak || minutesSince is null || day.Value(line, "start") == "at once" ? null : Bar.Of(day, line, "start", ""));
    }

    /// <summary>Whether bases so many feet apart are those the code plays on.</summary>
    internal bool Fits(int basePath) => field.Band("base distance found", basePath) == 1;

    /// <summary>What the code says of a game called off so many hours before its start, with or without the crew at the park.</summary>
    public CallOff CalledOff(double hoursBefore, bool crewHadCome)
    {
        var asked = wet.Ask();
        wet.Put(asked, "told before the start", hoursBefore);
        wet.Put(asked, "crew had come", crewHadCome ? "yes" : "no");
        var line = wet.Line(asked);
        return new(wet.Value(line, "notice") == "given in time", wet.Value(line, "owed to the crew"), Bar.Of(wet, line, "owed to the crew", ""));
    }

    /// <summary>Whether a make-up game may be played so many days after the planned day, and if not, why.</summary>
    internal Bar? NotMadeUp(int daysAfter)
    {
        var asked = wet.Ask();
        wet.Put(asked, "days to the make-up game", daysAfter);
        var line = wet.Line(asked);
        return wet.Value(line, "make-up game") == "may be played then" ? null : Bar.Of(wet, line, "make-up game", "");
    }

    private AskedSheet Sheet(string parameter) => parameter switch
    {
        "planned length" or "no play after" or "daylight to spare" => hours,
        "third game on one day" or "doubleheaders in seven days" or "break between games" => day,
        "base distance" => field,
        "finished before the next meeting" => suspended,
        _ => wet,
    };
}

internal enum RestOfSuspended { None, First, NotFirst }

/// <summary>Whether a game is its team's second of a day, what bars it, and what makes it wait.</summary>
internal readonly record struct DayRuling(bool Second, Bar? Barred, Bar? MustWait);

/// <summary>A call-off under a code: in time or not, what the crew is owed in the code's words, and the rule.</summary>
public sealed record CallOff(bool InTime, string Owed, Bar Because);
