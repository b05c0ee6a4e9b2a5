using System.Globalization;
using Umpirage.District.Pitchers;

namespace Umpirage.District.Cards;

/// <summary>Who may pitch, as both benches may read it: eligible or not, what is left, and why in a word; no history.</summary>
internal static class PitchingParts
{
    public static IEnumerable<CardPart> Staffs(Making m)
    {
        if (m.Game.Staffs.Count == 0) yield return new CardPart.Line("No roster is on record.");
        foreach (var staff in m.Game.Staffs)
        {
            yield return new CardPart.Heading(staff.Team);
            if (staff.Arms.Count == 0) { yield return new CardPart.Line("No roster is on record."); continue; }
            yield return new CardPart.Grid([new("#", 0.7), new("Pitcher", 2.1), new("May pitch?", 1.9), new("Left today, or why not", 3.6), new("Counted today", 2)], [.. staff.Arms.Select(Row)], Tall: 5.5);
        }
    }

    private static IReadOnlyList<string> Row(CardArm arm)
    {
        var e = arm.Answer;
        var may = e.Answer switch { MayPitch.Yes => "YES", MayPitch.UntilThisBatterIsFinished => "THIS BATTER ONLY", _ => "NO" };
        var left = string.Join(", ", e.Rooms.Where(r => r.Left is not null).Select(PitchingWords.Left));
        var why = e.Answer == MayPitch.Yes ? left == "" ? "no number in this code" : left : $"{string.Join(", ", e.Bars.Select(b => b.Sheet).Distinct())}; {(e.NextDay is { } next ? $"next {PitchingWords.Day(next)}" : "no day soon")}";
        return [arm.Jersey.ToString(CultureInfo.InvariantCulture), arm.Name, may, $"{why}{(e.NoCatching is null ? "" : "; no catching today")}{(e.Depends ? "; two counts differ" : "")}", ""];
    }

    /// <summary>The limit of pitches, and what becomes of it with a batter at bat; nothing where the code counts otherwise.</summary>
    public static IEnumerable<CardPart> Pitches(Making m)
    {
        if (m.Sheet("pitcher limits") is { } limits && limits.Number("pitches a day") is { } most)
            yield return new CardPart.Line($"At most {most} {PitchingWords.Unit(Unit.Pitches, most)} a day; with a batter at bat it may be passed: {limits.Word("limit with a batter at bat")}.");
    }

    public static IEnumerable<CardPart> Fresh(Making m)
    {
        if (m.Codes.Pitching.Of(m.Game.Address, m.Day, m.Findings) is not { } code) yield break;
        var costs = Eligible.Costs(Ledger.Of("", [], _ => null!), code, code, new(m.Day));
        foreach (var cost in costs) yield return new CardPart.Line(PitchingWords.Cost(cost));
        if (costs.Count == 0) yield return new CardPart.Line("This code asks for no rest by a count.");
    }
}
