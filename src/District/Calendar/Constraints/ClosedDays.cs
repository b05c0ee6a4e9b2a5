using Umpirage.Rules.Ground;

namespace Umpirage.District.Calendar.Constraints;

/// <summary>A game on a day on which the district, a league, a team, the park or the diamond does not play.</summary>
public sealed class ClosedDays : Constraint
{
    public override string Name => "no game on a closed day";
    public override string Sentence => "Nothing is planned on days on which the district, a league, a team, a park or a diamond does not play.";
    public override IReadOnlyList<string> Sheets => [];

    public override IEnumerable<Violation> Find(Schedule schedule)
    {
        if (schedule.Surroundings.Blackouts.Count == 0) yield break;
        foreach (var game in schedule.Standing)
            if (schedule.Surroundings.Closing(game) is { } closed)
                yield return Broken(closed.Of, [game], $"{game.Key} is on {Said.Day(game.Day)}: {closed.Reason}", $"no game of the {closed.Kind.ToString().ToLowerInvariant()} '{closed.Of}' from {CodeAddress.Day(closed.From)} to {CodeAddress.Day(closed.Until)}", "the district's list of closed days");
    }
}
