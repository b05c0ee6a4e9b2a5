using Umpirage.Rules.Ground;

namespace Umpirage.District.Pitchers;

/// <summary>What studies and the guideline for the age say beside the rule. Never a permission: "nothing to add" is not "safe".</summary>
/// <param name="Says">One sentence for each thing that was found, with its source.</param>
public sealed record Advice(IReadOnlyList<Bar> Says)
{
    /// <summary>Stands wherever eligibility is shown.</summary>
    public const string Always = "Legal is not safe. A tired or hurting arm stops today, whatever the count; with pain, a physician is asked before the next outing.";

    /// <param name="own">The code of the player's own division.</param>
    /// <param name="inningsInAYear">Innings pitched in the twelve months before, all teams and sports.</param>
    /// <param name="teams">For how many teams the player pitches.</param>
    public static Advice Of(Ledger ledger, PitchingCode own, Occasion occasion, int inningsInAYear, int teams)
    {
        var day = occasion.Day;
        var says = new List<Bar>();
        bool Pitched(DateOnly d) => ledger.Outings.Any(o => o.Day == d && o.Pitched);
        var games = ledger.Outings.Count(o => o.Day == day && o.Game.Key != occasion.Game?.Key && o.Most.Pitches + o.Most.Innings > 0);
        own.Load(says, inningsInAYear, Pitched(day.AddDays(-1)), games, teams);
        own.Guideline(says, ledger, day);
        foreach (var other in ledger.Outings.Where(o => o.Game.Sport != own.Code.Game && o.Day > day.AddDays(-7) && o.Day <= day))
            says.Add(new("pitching load", "", "The other game counts for the arm", null, $"{other.Most.Pitches} pitches in {other.Game.Sport} on {PitchingCode.Written(other.Day)}; this code does not count them", new("common practice", Standing.CommonPractice)));
        return new(says);
    }
}
