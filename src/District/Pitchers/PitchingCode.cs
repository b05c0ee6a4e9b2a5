using System.Globalization;
using Umpirage.Rules.Codes;
using Umpirage.Rules.Ground;
using Umpirage.Rules.Plays;

namespace Umpirage.District.Pitchers;

/// <summary>What one rule code says of pitchers: its sheets on limits, rest, catching and two divisions, asked with the figures of a ledger.</summary>
public sealed class PitchingCode
{
    private static readonly string[] Names =
        ["pitcher limits", "rest after pitching", "pitcher and catcher", "pitching innings", "innings pitched", "pitching in two divisions", "pitching load", "pitching guideline by age"];

    private readonly AskedSheet day, rest, catching, outs, innings, divisions, load;
    private readonly AskedSheet? guideline;
    private readonly IReadOnlyList<string> order;
    private readonly int fullGame;

    private PitchingCode(Code code, IReadOnlyList<Table> sheets, IReadOnlyList<string> divisionsInOrder, int full)
    {
        (Code, order, fullGame) = (code, divisionsInOrder, full);
        (day, rest, catching, outs, innings, divisions, load) = (new(sheets[0]), new(sheets[1]), new(sheets[2]), new(sheets[3]), new(sheets[4]), new(sheets[5]), new(sheets[6]));
        guideline = sheets.Count > 7 ? new(sheets[7]) : null;
        var goesBy = divisions.Word("limit goes by");
        (ByAge, ByDivision) = (goesBy == "the player's age", goesBy == "the division of the game");
    }

    public Code Code { get; }

    /// <summary>The limits follow the player, not the game.</summary>
    public bool ByAge { get; }

    /// <summary>The limits are those of the game's division, and what was pitched in another division that day counts.</summary>
    public bool ByDivision { get; }

    /// <summary>The place of its division, the youngest being 0.</summary>
    public int Rank => Place(Code.Division);

    /// <summary>Works a code out by its address; null with the reasons when the address or a sheet cannot be used.</summary>
    public static PitchingCode? Of(Codebook book, string address, DateOnly day, List<Finding> findings)
    {
        var before = findings.Count;
        if (Casebook.Code(book, address, day, f => findings.Add(new(FindingKind.UnknownWord, address, 0, f))) is not { } code) return null;
        var tables = Names.Where(n => book.Sheet(n)?.Speaks(code.Game) != false).Select(n => Casebook.Table(book, address, n, day, address, findings)).ToList();
        if (findings.Count > before || Casebook.Table(book, address, "regulation game", day, address, findings) is not { } game) return null;
        return new(tables[0]!.Sheet.Code, tables!, book.Roster.Divisions, (int)game.Sheet.Values.First(v => Words.Same(v.Key.Name, "full game")).Value.Quantity!.Value);
    }

    /// <summary>Innings of a full game.</summary>
    public int FullGame => fullGame;

    /// <summary>The number of a unit that one day allows; none where the code sets none.</summary>
    public int? DayLimit(Unit unit) => unit switch { Unit.Pitches => day.Number("pitches a day"), Unit.Innings => innings.Number("innings a day"), _ => outs.Number("outs a day") };

    /// <summary>Whether the code limits or rests by this unit.</summary>
    public bool Counts(Unit unit) => DayLimit(unit) is not null || LastStep(unit) > 0;

    /// <summary>The highest number at which something changes; 0 where nothing does.</summary>
    internal int LastStep(Unit unit) => (unit switch
    {
        Unit.Pitches => ((string[])["one day from", "two days from", "three days from", "four days from"]).Max(rest.Number),
        Unit.Innings => innings.Number("innings that call for rest"),
        _ => outs.Number("outs in three days"),
    }) ?? 0;

    /// <summary>Whether the figures allow to pitch; who asks for reasons hands over lists for what bars and for what was rested.</summary>
    /// <param name="inTheFirst">Pitches in the day's first other game; none when there was no other game.</param>
    internal MayPitch MayPitch(DayCount[] days, Occasion occasion, int? inTheFirst, List<Bar>? bars, List<Bar>? rested)
    {
        DayCount today = default, last = default, yesterday = default;
        var (row, outsBefore) = (0, 0);
        for (var i = 0; i < days.Length && days[i].Day <= occasion.Day; i++)
        {
            var d = days[i];
            if (!d.Pitched && d.Caught == 0) continue;
            if (d.Day == occasion.Day) { today = d; continue; }
            if (!d.Pitched) continue;
            row = last.Pitched && last.Day.AddDays(1) == d.Day ? row + 1 : 1;
            last = d;
            if (d.Day.AddDays(1) == occasion.Day) yesterday = d;
            if (d.Day.AddDays(2) >= occasion.Day) outsBefore += d.Outs;
        }
        if (!yesterday.Pitched) row = 0;

        var answer = Day(today, occasion, inTheFirst, row, bars);
        var fine = true;
        // the sheet knows no rest beyond its last step
        for (var i = 0; i < days.Length && days[i].Day < occasion.Day; i++)
            if (days[i].Pitched && occasion.Day.DayNumber - days[i].Day.DayNumber <= RestSteps.Length) fine &= Rested(days[i], occasion.Day, bars, rested);
        fine &= Innings(today, last, occasion.Day, bars, rested);
        fine &= Outs(today, yesterday, outsBefore, bars);
        fine &= PitchAfterCatching(today, bars);
        return fine ? answer : Pitchers.MayPitch.No;
    }

    private MayPitch Day(DayCount today, Occasion occasion, int? inTheFirst, int daysInARow, List<Bar>? bars)
    {
        var asked = day.Ask();
        day.Put(asked, "pitches today", today.Pitches);
        var atTheStart = day.Band("pitches today", today.BeforeLastBatter);
        // a batter who came up when the limit was reached already is none that may be finished
        day.Put(asked, "batter", occasion.BatterUnderWay && atTheStart == 0 ? "under way" : "between batters");
        day.Put(asked, "game today", inTheFirst is null ? "first game she pitches in" : "second game she pitches in");
        day.Put(asked, "pitches in the first game", inTheFirst ?? 0);
        day.Put(asked, "days in a row before today", daysInARow switch { 0 => "none", 1 => "one", _ => "two or more" });
        day.Put(asked, "pitchers used", occasion.PitchersUsed);
        var line = day.Line(asked);
        var value = day.Value(line, "may pitch");
        if (value == "yes") return Pitchers.MayPitch.Yes;
        if (value == "no" && day.Value(line, "barred from this game") == "yes")
            bars?.Add(Bar.Of(day, line, "barred from this game", daysInARow > 1 ? $"pitched on {daysInARow} days in a row before" : inTheFirst is { } first ? $"{first} pitches in another game today" : $"{occasion.PitchersUsed} pitchers used"));
        else bars?.Add(Bar.Of(day, line, "may pitch", $"{today.Pitches} pitches today; the limit is {DayLimit(Unit.Pitches)}"));
        return value == "no" ? Pitchers.MayPitch.No : Pitchers.MayPitch.UntilThisBatterIsFinished;
    }

    private bool Rested(DayCount then, DateOnly now, List<Bar>? bars, List<Bar>? rested)
    {
        var between = now.DayNumber - then.Day.DayNumber - 1;
        var asked = rest.Ask();
        rest.Put(asked, "pitches when the last batter began", then.FirstToLastBatter);
        rest.Put(asked, "pitches in all", then.Pitches);
        rest.Put(asked, "full days since", RestSteps[Math.Min(between, RestSteps.Length - 1)]);
        var line = rest.Line(asked);
        var may = rest.Value(line, "may pitch") == "yes";
        if (may ? rested is not null && rest.Value(line, "rest needed") != "none" : bars is not null)
            (may ? rested! : bars!).Add(Bar.Of(rest, line, "rest needed",
                $"{then.Pitches} pitches on {Written(then.Day)}, the first to the last batter number {then.FirstToLastBatter}: rest needed {rest.Value(line, "rest needed")}, had {between}"));
        return may;
    }

    private bool Innings(DayCount today, DayCount last, DateOnly now, List<Bar>? bars, List<Bar>? rested)
    {
        var between = last.Pitched ? now.DayNumber - last.Day.DayNumber - 1 : 999;
        var asked = innings.Ask();
        innings.Put(asked, "innings today", today.Innings);
        innings.Put(asked, "innings on the last day", last.Innings);
        innings.Put(asked, "full days since", between);
        var line = innings.Line(asked);
        var may = innings.Value(line, "may pitch") == "yes";
        if (!may && bars is not null)
            bars.Add(Bar.Of(innings, line, "may pitch", between == 0 && innings.Value(line, "rest needed") != "none"
                ? $"a pitch in {last.Innings} innings on {Written(last.Day)}, and no day between" : $"a pitch in {today.Innings} innings today; the limit is {DayLimit(Unit.Innings)}"));
        else if (may && rested is not null && innings.Value(line, "rest needed") != "none")
            rested.Add(Bar.Of(innings, line, "rest needed", $"a pitch in {last.Innings} innings on {Written(last.Day)}: rest needed one day, had {between}"));
        return may;
    }

    private bool Outs(DayCount today, DayCount yesterday, int before, List<Bar>? bars)
    {
        var asked = outs.Ask();
        outs.Put(asked, "outs today", today.Outs);
        outs.Put(asked, "outs yesterday", yesterday.Outs);
        outs.Put(asked, "outs in three days", before + today.Outs);
        var line = outs.Line(asked);
        var may = outs.Value(line, "may pitch") == "yes";
        if (!may) bars?.Add(Bar.Of(outs, line, "may pitch", $"{today.Outs} outs today, {yesterday.Outs} yesterday, {before + today.Outs} in three days"));
        return may;
    }

    private bool PitchAfterCatching(DayCount today, List<Bar>? bars)
    {
        var asked = catching.Ask();
        catching.Put(asked, "wants to", "pitch after catching");
        catching.Put(asked, "innings caught", today.Caught);
        var line = catching.Line(asked);
        var may = catching.Value(line, "may do so") == "yes";
        if (!may) bars?.Add(Bar.Of(catching, line, "may do so", $"{today.Caught} innings caught today"));
        return may;
    }

    /// <summary>Why a pitcher of today may not catch any more; nothing when the code allows it. One who caught before as well is asked both ways.</summary>
    internal Bar? NoCatching(DayCount today)
    {
        foreach (var way in today.Caught > 0 ? (string[])["catch after pitching", "catch again after catching then pitching"] : ["catch after pitching"])
        {
            if (!today.Pitched) return null;
            var asked = catching.Ask();
            catching.Put(asked, "wants to", way);
            catching.Put(asked, "pitches when the last batter began", today.FirstToLastBatter);
            catching.Put(asked, "innings caught", today.Caught);
            catching.Put(asked, "pitches after catching", today.Pitches);
            var line = catching.Line(asked);
            if (catching.Value(line, "may do so") == "no") return Bar.Of(catching, line, "may do so", $"{today.Pitches} pitches today, the first to the last batter number {today.FirstToLastBatter}; {today.Caught} innings caught");
        }
        return null;
    }

    /// <summary>Whether what was pitched earlier that day in a game of some division bars the player from a game under this code.</summary>
    internal bool BarsAfter(Count there, string division, int inningsToday, List<Bar>? bars)
    {
        var asked = divisions.Ask();
        var (then, now) = (Place(division), Place(Code.Division));
        divisions.Put(asked, "earlier game", then < now ? "in a younger division" : then > now ? "in an older division" : "in the same division");
        divisions.Put(asked, "pitched there", there.Innings >= fullGame ? "full game" : "part of a game");
        divisions.Put(asked, "innings of both together", DayLimit(Unit.Innings) is { } most && inningsToday >= most ? "at this game's limit" : "within this game's limit");
        var line = divisions.Line(asked);
        if (divisions.Value(line, "may pitch") != "no") return false;
        bars?.Add(Bar.Of(divisions, line, "may pitch", $"{there.Innings} innings in {division} earlier today"));
        return true;
    }

    /// <summary>What the studies of young pitchers name, with a fresh arm; nothing where they name nothing.</summary>
    internal void Load(List<Bar> says, int inningsInAYear, bool yesterday, int games, int teams)
    {
        void Ask(string title, Action<int[]> put)
        {
            var asked = load.Ask();
            load.Put(asked, "age", load.Number("age taken for the division")!.Value);
            put(asked);
            var line = load.Line(asked);
            if (load.Value(line, "advice") != "nothing to add") says.Add(Bar.Of(load, line, "advice", title));
        }
        Ask($"{inningsInAYear} innings in twelve months", a => load.Put(a, "innings in twelve months", inningsInAYear));
        if (yesterday) Ask("pitched yesterday", a => load.Put(a, "days in a row", "second day or later"));
        if (games > 0) Ask($"{games} {(games == 1 ? "game" : "games")} today already", a => load.Put(a, "games today", "second game or later"));
        if (teams > 1) Ask($"{teams} teams", a => load.Put(a, "teams", "several teams"));
    }

    /// <summary>Where the guideline for the age asks for more than the figures leave.</summary>
    internal void Guideline(List<Bar> says, Ledger ledger, DateOnly now)
    {
        if (guideline is null) return;
        foreach (var then in DayCount.Of(ledger, Code.Game, true).Where(d => d.Pitched && d.Day <= now))
        {
            var asked = guideline.Ask();
            guideline.Put(asked, "age", load.Number("age taken for the division")!.Value);
            guideline.Put(asked, "pitches", then.Pitches);
            var line = guideline.Line(asked);
            var days = Array.IndexOf(RestWords, guideline.Value(line, "rest"));
            var had = now.DayNumber - then.Day.DayNumber - 1;
            if (then.Day < now && had < days) says.Add(Bar.Of(guideline, line, "rest", $"{then.Pitches} pitches on {Written(then.Day)}; the guideline for the age asks for {RestWords[days]}, had {had}"));
            if (then.Day == now && guideline.Value(line, "day") == "limit reached") says.Add(Bar.Of(guideline, line, "day", $"{then.Pitches} pitches today"));
        }
    }

    private static readonly string[] RestSteps = ["none", "one", "two", "three", "four or more"];

    private static readonly string[] RestWords = ["none", "one day", "two days", "three days", "four days", "five days"];

    private int Place(string division)
    {
        for (var i = 0; i < order.Count; i++) if (order[i] == division) return i;
        return order.Count;
    }

    internal static string Written(DateOnly day) => day.ToString("ddd d MMM", CultureInfo.InvariantCulture);
}
